import { z } from 'zod';
import { interpretReading, type ReadingInput, type ReadingInterpretation } from '../../core/reading/interpretReading.ts';
import type { Calculator } from '../calculator.ts';
import { bound, count, cv, interval, nullableNumber, positive } from '../fields.ts';

const input = z.strictObject({
  readingRlu: z.number().nonnegative().describe('one reading, or the geometric mean of the replicates'),
  bound: bound.optional().describe('default exact'),
  cutoffRlu: positive,
  cv: cv.describe('of one reading, fraction'),
  replicates: count.optional().describe('default 1'),
  risk: z.number().gt(0).lt(0.5).optional().describe('one-sided chance of a wrong verdict, default 0.05'),
  prior: z.strictObject({ geometricMeanRlu: positive, sdLog: positive }).optional(),
});

const output = z.strictObject({
  sdLog: z.number(),
  intervalRlu: interval.nullable(),
  probabilityAbove: nullableNumber,
  probabilityBelow: nullableNumber,
  posterior: z.strictObject({ meanLog: z.number(), sdLog: z.number() }).nullable(),
  guardBand: z.strictObject({ lowAtMostRlu: z.number(), highAtLeastRlu: z.number() }),
  verdict: z.enum(['below', 'too-close', 'above']).nullable().describe('null: the bound does not decide'),
  settleChance: nullableNumber.describe('null when the reading is already outside the guard band, or a bound'),
  daysToDecide: nullableNumber.describe('null above 3'),
});

export const readingInterpretation: Calculator<ReadingInput, ReadingInterpretation> = {
  name: 'reading-interpretation',
  summary: 'One swab reading against the cut-off of its meter, with the noise allowed for',
  input,
  output,
  run: interpretReading,
};
