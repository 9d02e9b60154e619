import type { StudyPersonLine, StudyView } from '../../../../api/swabChecks.ts';
import { partsOf } from '../../../../core/checks/study.ts';
import { joinWords } from '../../../format.ts';

/** Everybody of a study under their label, in the order of the labels; linked to nobody until somebody says so. */
export function peopleOf({ study, people }: Pick<StudyView, 'study' | 'people'>): StudyPersonLine[] {
  const byNumber = new Intl.Collator('en', { numeric: true });
  return partsOf(study)
    .sort(byNumber.compare)
    .map((part) => people.find((person) => person.part === part) ?? { part, name: null, version: 0 });
}

/** Whose 24 hours nobody but the person at the chair can look after; undefined where that is nobody, or a study without people. */
export function sayNotChecked(record: Pick<StudyView, 'study' | 'people'>): string | undefined {
  if (record.study.kind !== 'paired-days') return undefined;
  const people = peopleOf(record);
  const open = people.filter(({ name }) => name === null).map(({ part }) => part);
  if (open.length === 0) return undefined;
  const who = open.length === people.length ? 'these people' : joinWords(open);
  return `Ebbline cannot check the 24 hours between a swab for this study and one at a visit for ${who}, because no chart is linked: whoever takes the swab asks first when the last one was.`;
}
