import { z } from 'zod';

export const log = z.boolean().optional().describe('true takes the natural logarithm of every value first; default false');

export const anovaRow = z.strictObject({ sumSquares: z.number(), df: z.number(), meanSquare: z.number() });
export const testedRow = z.strictObject({
  ...anovaRow.shape,
  f: z.number().nullable(),
  p: z.number().nullable(),
});
