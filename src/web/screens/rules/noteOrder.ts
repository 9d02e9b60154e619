import { DEFAULT_NOTE, NOTE_SECTIONS, type NoteSection } from '../../../core/note/noteSections.ts';

export const SECTION_NAMES: Readonly<Record<NoteSection, string>> = {
  level: 'Level and list, by whom confirmed',
  findings: 'Findings',
  reading: 'Swab reading, or why there is none',
  mouth: 'Mouth notes',
  agreed: 'What was agreed and offered',
  declined: 'Declined with the reason, not affordable',
  signatures: 'Signed by whom, or waiting',
  'since-last-time': 'What was used since last time',
  goals: 'Goals',
  'acid-day': 'The day as it was told',
  speaker: 'Who spoke, interpreter',
  next: 'Next visit',
  bitewings: 'Bitewings',
  private: 'Private answers',
};

/** The parts in use, in their order, and those left out in the usual one. */
export function listParts(chosen: readonly NoteSection[] = DEFAULT_NOTE): readonly { readonly id: NoteSection; readonly isIn: boolean }[] {
  const leftOut = NOTE_SECTIONS.filter((id) => !chosen.includes(id));
  return [...chosen.map((id) => ({ id, isIn: true })), ...leftOut.map((id) => ({ id, isIn: false }))];
}

/** The part one place up or down; at an end it stays. */
export function movePart<T extends string>(chosen: readonly T[], id: T, by: -1 | 1): readonly T[] {
  const at = chosen.indexOf(id);
  const other = chosen[at + by];
  if (at === -1 || other === undefined) return chosen;
  return chosen.map((part, i) => (i === at ? other : i === at + by ? id : part));
}
