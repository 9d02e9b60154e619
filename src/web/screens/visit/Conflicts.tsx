import type { SwabLot, SwabReading } from '../../../core/reading/types.ts';
import type { Answer } from '../../../core/visit/answer.ts';
import { applyField } from '../../../core/visit/applyField.ts';
import { findQuestion } from '../../content.ts';
import type { Conflict } from '../../data/saveQueue.ts';
import { useSaveQueue, useSaveState } from '../../data/saving.ts';
import { unknownWords, valueText } from './questionLines.ts';
import { sayWholeReading } from './swabLines.ts';
import type { VisitDraft } from './useVisitDraft.ts';

interface ConflictsProps {
  readonly visitId: string;
  readonly lots: readonly SwabLot[];
  readonly show: VisitDraft['show'];
}

/** Two people answered the same thing. Both values stand here until one is chosen. */
export function Conflicts({ visitId, lots, show }: ConflictsProps) {
  const queue = useSaveQueue();
  const { conflicts, refused } = useSaveState();
  const here = conflicts.filter((c) => c.visitId === visitId);
  const keep = (conflict: Conflict, whose: 'yours' | 'theirs') => {
    if (whose === 'theirs') show((input) => applyField(input, conflict.path, conflict.theirs));
    queue.resolve(conflict, whose);
  };
  return (
    <>
      {here.map((conflict) => (
        <div key={conflict.path} className="conflict" role="alert">
          <p>
            <strong>{fieldName(conflict.path)}</strong> was saved elsewhere while you worked. Yours:{' '}
            <strong>{sayValue(conflict.path, conflict.value, lots)}</strong>. Theirs:{' '}
            <strong>{sayValue(conflict.path, conflict.theirs, lots)}</strong>.
          </p>
          <p className="actions">
            <button type="button" className="action" onClick={() => keep(conflict, 'yours')}>
              Keep yours
            </button>
            <button type="button" className="action" onClick={() => keep(conflict, 'theirs')}>
              Keep theirs
            </button>
          </p>
        </div>
      ))}
      {refused
        .filter((r) => r.visitId === visitId)
        .map((r) => (
          <p key={r.path} className="conflict" role="alert">
            <strong>{fieldName(r.path)}</strong> is not saved: {r.message}
          </p>
        ))}
    </>
  );
}

const FIELD_NAMES: Readonly<Record<string, string>> = {
  reading: 'The reading',
  findings: 'The findings',
  allExamined: 'Whole mouth examined',
  agreed: 'What was agreed',
  stopUsing: 'What to stop using',
  nextOn: 'The next visit',
  language: 'The language of the leaflet',
  meterId: 'The meter',
};

function fieldName(path: string): string {
  const question = path.startsWith('answers.') ? findQuestion(path.slice('answers.'.length)) : undefined;
  return question?.label ?? FIELD_NAMES[path] ?? path;
}

function sayValue(path: string, value: unknown, lots: readonly SwabLot[]): string {
  if (path.startsWith('answers.')) {
    const answer = value as Answer;
    if (answer.how !== 'asked' && answer.how !== 'carried') return unknownWords(answer.how);
    return valueText(findQuestion(path.slice('answers.'.length)) ?? {}, answer.value);
  }
  if (path === 'reading') return sayWholeReading(value as SwabReading | null, lots);
  if (path === 'findings') return `${(value as readonly unknown[]).length} findings`;
  return sayPlain(value);
}

const sayPlain = (value: unknown) => (typeof value === 'object' ? JSON.stringify(value) : String(value));
