import type { SourceRef } from '../core/visit/answer.ts';

interface Minutes {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly source: SourceRef;
}

/**
 * Minutes without a key after which the screen hides, until the practice sets its own. Our proposal: longer than asking one question
 * takes, shorter than leaving the room.
 */
export const hideAfterMinutes: Minutes = {
  value: 5,
  least: 1,
  most: 60,
  source: { key: 'project', status: 'proposal', note: 'the number of minutes is our proposal' },
};
