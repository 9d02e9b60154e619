import { z } from 'zod';
import { ICC_FORMS, type IccForm, intraclassCorrelation } from '../../core/stats/agreement/intraclassCorrelation.ts';
import type { Calculator } from '../calculator.ts';
import { interval, nullableNumber } from '../fields.ts';

const input = z.strictObject({
  matrix: z.array(z.array(z.number()).min(2)).min(2).describe('units x raters, complete'),
});

const output = z.strictObject({
  icc1: nullableNumber.describe(
    'other raters for each unit; a form is null where the variance that it is a share of is not estimated above 0',
  ),
  icc2: nullableNumber.describe('the same raters, a sample of many'),
  icc3: nullableNumber.describe('the same raters, only these'),
  icc1k: nullableNumber.describe('mean of the raters'),
  icc2k: nullableNumber,
  icc3k: nullableNumber,
  intervals: z
    .record(z.enum(ICC_FORMS), interval.nullable())
    .nullable()
    .describe('by F; null where raters differ by nothing but their level, or units by nothing, so that F has no value'),
  meanSquares: z.strictObject({ units: z.number(), raters: z.number(), within: z.number(), residual: z.number() }).nullable(),
  notDefined: z.enum(['no-spread']).nullable(),
});

const NONE: Readonly<Record<IccForm, null>> = { icc1: null, icc2: null, icc3: null, icc1k: null, icc2k: null, icc3k: null };

export const raterIcc: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'rater-icc',
  summary: 'Agreement of raters on a scale: intraclass correlations in six forms',
  input,
  output,
  run: ({ matrix }) => {
    const icc = intraclassCorrelation(matrix);
    if (!icc.ok) return { ...NONE, intervals: null, meanSquares: null, notDefined: icc.reason };
    return { ...icc.value.values, intervals: icc.value.intervals, meanSquares: icc.value.meanSquares, notDefined: null };
  },
};
