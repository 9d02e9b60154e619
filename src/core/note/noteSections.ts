/** Parts of a chart note, in the order in which they stand where a practice has set none. */
export const NOTE_SECTIONS = [
  'level',
  'findings',
  'reading',
  'mouth',
  'agreed',
  'declined',
  'signatures',
  'since-last-time',
  'goals',
  'acid-day',
  'speaker',
  'next',
  'bitewings',
  'private',
] as const;

export type NoteSection = (typeof NOTE_SECTIONS)[number];

/** Left out unless the practice chooses it: a chart is read by others too. */
export const DEFAULT_NOTE: readonly NoteSection[] = NOTE_SECTIONS.filter((section) => section !== 'private');
