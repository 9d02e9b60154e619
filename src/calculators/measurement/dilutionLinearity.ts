import { z } from 'zod';
import { dilutionLinearity as compute } from '../../core/stats/dilutionLinearity.ts';
import { type Calculator, NotDefinedError } from '../calculator.ts';
import { interval, nullableNumber, positive, wouldHelp } from '../fields.ts';

const input = z.strictObject({
  points: z.array(z.strictObject({ level: positive, value: positive })).describe('unlogged; log10 of both is taken here'),
});

const noLine = ['too-few-points', 'one-level', 'no-spread'] as const;
const output = z.strictObject({
  intercept: z.number(),
  slope: z.number(),
  slopeInterval: interval,
  r2: z.number(),
  residualSd: z.number(),
  pSlopeOne: nullableNumber.describe('two-sided, of a slope of 1'),
  lackOfFit: z.strictObject({ f: z.number(), dfLack: z.number(), dfError: z.number(), p: z.number() }).nullable(),
  quadratic: z.strictObject({ coefficient: z.number(), se: z.number(), p: z.number() }).nullable(),
  notDefined: z
    .strictObject({
      lackOfFit: z.enum([...noLine, 'two-levels', 'no-replicates', 'replicates-equal']).nullable(),
      quadratic: z.enum([...noLine, 'two-levels', 'exact-fit']).nullable(),
    })
    .describe('why a test is null, if it is'),
  wouldHelp,
});

const WHY = {
  'too-few-points': 'points must be at least three for a line and its spread',
  'one-level': 'points must be of at least two levels, or there is no line',
  'no-spread': 'points must differ in their values, or there is no line',
  'two-levels': 'points must be of at least three levels to see a bend',
  'no-replicates': 'points must hold at least two values of one level to tell a bend from noise',
  'replicates-equal': 'points are the same at each level, so they have no noise to compare with: enter them with all their digits',
  'exact-fit': 'points lie exactly on the curve, so they have no noise to compare with: enter them with all their digits',
} as const;

export const dilutionLinearity: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'dilution-linearity',
  summary: 'Does the reading follow the amount over a series of dilutions? Slope, lack of fit, curvature',
  input,
  output,
  run: ({ points }) => {
    const fit = compute(points);
    if (!fit.ok) throw new NotDefinedError(WHY[fit.reason], 'points');
    const { lackOfFit, quadratic, pSlopeOne, ...line } = fit.value;
    const reasons = new Set([lackOfFit, quadratic].flatMap((part) => (part.ok ? [] : [part.reason])));
    return {
      ...line,
      pSlopeOne: pSlopeOne ?? null,
      lackOfFit: lackOfFit.ok ? lackOfFit.value : null,
      quadratic: quadratic.ok ? quadratic.value : null,
      notDefined: { lackOfFit: lackOfFit.ok ? null : lackOfFit.reason, quadratic: quadratic.ok ? null : quadratic.reason },
      wouldHelp: [...reasons].map((reason) => WHY[reason]),
    };
  },
};
