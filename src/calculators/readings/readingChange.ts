import { z } from 'zod';
import { compareReadings, type ReadingChange } from '../../core/reading/compareReadings.ts';
import type { Calculator } from '../calculator.ts';
import { interval, positive } from '../fields.ts';

const input = z.strictObject({
  firstRlu: positive,
  secondRlu: positive,
  sdLogSingle: positive.describe('sd of ln(reading) on one occasion, day-to-day variation included'),
});

const output = z.strictObject({
  ratio: z.number().describe('second / first'),
  logRatio: z.number(),
  z: z.number(),
  pTwoSided: z.number(),
  ratioInterval: interval,
  verdict: z.enum(['rise', 'fall', 'within-noise']),
});

export const readingChange: Calculator<z.infer<typeof input>, ReadingChange> = {
  name: 'reading-change',
  summary: 'Two readings of one person on one meter: is the change larger than the noise?',
  input,
  output,
  run: ({ firstRlu, secondRlu, sdLogSingle }) => compareReadings(firstRlu, secondRlu, sdLogSingle),
};
