import { z } from 'zod';

/** Fields that several calculators share. Ranges that the core checks again are here so that `--schema` shows them. */
export const positive = z.number().positive();
/** Coefficient of variation as a fraction, 0.3 = 30 %. */
export const cv = z.number().positive().max(10);
export const count = z.int().min(1);
export const bound = z.enum(['exact', 'at-most', 'at-least']);
export const interval = z.strictObject({ low: z.number(), high: z.number() });
export const nullableNumber = z.number().nullable();
