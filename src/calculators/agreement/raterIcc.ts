import { z } from 'zod';
import { ICC_FORMS, type IccForm, intraclassCorrelation } from '../../core/stats/agreement/intraclassCorrelation.ts';
import type { Calculator } from '../calculator.ts';
import { interval, measured, nullableNumber, wouldHelp } from '../fields.ts';

const input = z.strictObject({
  matrix: z.array(z.array(measured).min(2)).min(2).describe('units x raters, complete'),
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
  wouldHelp,
});

const NONE: Readonly<Record<IccForm, null>> = { icc1: null, icc2: null, icc3: null, icc1k: null, icc2k: null, icc3k: null };

const NO_SPREAD = 'matrix holds one value only, so there is no spread to share out: units that differ would do';
const NO_FORM = 'matrix gives no variance above 0 for some form: units that differ more than their raters would do';
const NO_INTERVAL = 'matrix leaves some interval open, since raters differ by nothing but their level, or units by nothing';

export const raterIcc: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'rater-icc',
  summary: 'Agreement of raters on a scale: intraclass correlations in six forms',
  input,
  output,
  run: ({ matrix }) => {
    const icc = intraclassCorrelation(matrix);
    if (!icc.ok) return { ...NONE, intervals: null, meanSquares: null, notDefined: icc.reason, wouldHelp: [NO_SPREAD] };
    const { values, intervals, meanSquares } = icc.value;
    const wouldHelp = [
      ...(Object.values(values).includes(null) ? [NO_FORM] : []),
      ...(Object.values(intervals).includes(null) ? [NO_INTERVAL] : []),
    ];
    return { ...values, intervals, meanSquares, notDefined: null, wouldHelp };
  },
};
