import type { SwabLot } from '../../../core/reading/types.ts';
import type { VisitInput } from '../../../core/visit/types.ts';

/** The visit with one swab lot of the practice as it stands now. */
export const withLot = (input: VisitInput, lot: SwabLot): VisitInput => ({
  ...input,
  practice: { ...input.practice, lots: input.practice.lots.map((one) => (one.id === lot.id ? lot : one)) },
});
