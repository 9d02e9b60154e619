import type { Choice } from '../../../core/visit/question.ts';

const OTHER = 'other';

/** Why something is declined, stopped, used less or not begun. One key each; the words are what is kept. */
export const REASONS: readonly Choice[] = [
  { id: 'taste', label: 'taste' },
  { id: 'price', label: 'price' },
  { id: 'stain', label: 'stain' },
  { id: 'time', label: 'time' },
  { id: 'worry about an ingredient', label: 'worry about an ingredient' },
  { id: 'does not want', label: 'does not want' },
  { id: OTHER, label: 'other' },
];

export const isListedReason = (why: string): boolean => why !== OTHER && REASONS.some(({ id }) => id === why);

/** "other" asks for its words. */
export const isOtherReason = (why: string): boolean => why === OTHER;
