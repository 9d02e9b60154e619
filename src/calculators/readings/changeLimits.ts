import { z } from 'zod';
import { type ChangeLimits, type ChangeLimitsInput, changeLimits as computeChangeLimits } from '../../core/reading/changeLimits.ts';
import type { Calculator } from '../calculator.ts';
import { count, positive } from '../fields.ts';

const cvOrZero = z.number().nonnegative().max(10);

const input = z.strictObject({
  cvAnalytical: cvOrZero.describe('repeatability, fraction'),
  cvWithinPerson: cvOrZero.describe('day-to-day variation within a person, fraction'),
  z: positive.optional().describe('default 1.959963984540054'),
  assaysPerSample: count.optional().describe('default 1'),
  samplesPerOccasion: count.optional().describe('default 1'),
});

const output = z.strictObject({
  normalFraction: z.number().describe('symmetric limit on the plain scale'),
  sdLog: z.number(),
  riseFraction: z.number(),
  fallFraction: z.number().describe('negative'),
});

export const changeLimits: Calculator<ChangeLimitsInput, ChangeLimits> = {
  name: 'change-limits',
  summary: 'The smallest rise and fall between two occasions that noise alone rarely gives',
  input,
  output,
  run: computeChangeLimits,
};
