import type { StudyLine } from '../../../api/swabChecks.ts';
import type { Training, TrainingEvent } from '../../../core/checks/training.ts';
import { formatDate } from '../../format.ts';

export const isDue = (training: Training | undefined, today: string): boolean => training?.dueOn !== undefined && training.dueOn <= today;

/** "13 November 2026, overdue": what is due is a swab side by side, not the person. */
export function sayDue(training: Training | undefined, today: string): string {
  const dueOn = training?.dueOn;
  if (dueOn === undefined) return 'no date set';
  if (dueOn > today) return formatDate(dueOn);
  return dueOn === today ? 'due today' : `${formatDate(dueOn)}, overdue`;
}

export const STEP_WORDS = {
  'read-card': 'read the card',
  watched: 'watched',
  'supervised-swab': 'supervised swab',
  'qualified-by-study': 'qualified by a study of hands',
  'qualified-by-lead': 'qualified by a lead',
} as const satisfies Readonly<Record<TrainingEvent['kind'], string>>;

/** "read the card, 2 supervised swabs; qualified by a lead on 13 November 2025". */
export function sayEvents(events: readonly TrainingEvent[]): string {
  const swabs = events.filter(({ kind }) => kind === 'supervised-swab').length;
  const before = [
    events.some(({ kind }) => kind === 'read-card') && STEP_WORDS['read-card'],
    events.some(({ kind }) => kind === 'watched') && STEP_WORDS.watched,
    swabs > 0 && `${swabs} supervised ${swabs === 1 ? 'swab' : 'swabs'}`,
  ].filter(Boolean);
  const qualified = events.findLast(({ kind }) => kind.startsWith('qualified'));
  const said = qualified && `${STEP_WORDS[qualified.kind]} on ${formatDate(qualified.onDate)}`;
  return [before.join(', '), said].filter(Boolean).join('; ');
}

/** "13 November 2025: supervised swab with Ines Marrow; noted by Wim Tansy". */
export function sayEvent(event: TrainingEvent, studies: readonly Pick<StudyLine, 'id' | 'report'>[]): string {
  return `${formatDate(event.onDate)}: ${sayStep(event, studies)}; noted by ${event.notedBy}`;
}

function sayStep(event: TrainingEvent, studies: readonly Pick<StudyLine, 'id' | 'report'>[]): string {
  const words = STEP_WORDS[event.kind];
  switch (event.kind) {
    case 'supervised-swab':
      return `${words} with ${event.with}`;
    case 'qualified-by-lead':
      return `${words}: ${event.reason}`;
    case 'qualified-by-study': {
      const report = studies.find(({ id }) => id === event.studyId)?.report;
      return report ? `${words}, reported on ${formatDate(report.onDate)}` : words;
    }
    default:
      return words;
  }
}
