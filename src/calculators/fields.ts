import { z } from 'zod';

/** Fields that several calculators share. Ranges that the core checks again are here so that `--schema` shows them. */
export const positive = z.number().positive();
/** Coefficient of variation as a fraction, 0.3 = 30 %. */
export const cv = z.number().positive().max(10);
export const count = z.int().min(1);
export const bound = z.enum(['exact', 'at-most', 'at-least']);
export const interval = z.strictObject({ low: z.number(), high: z.number() });
/** A measured value; the bound keeps sums of squares finite. */
export const measured = z.number().min(-1e100).max(1e100);
export const nullableNumber = z.number().nullable();
/** Beside the reasons for programs: the same for people. */
export const wouldHelp = z
  .array(z.string())
  .describe('a sentence for each part that is null: the field that falls short, and what would make it work');
