import { z } from 'zod';
import { criticalPh as computeCriticalPh } from '../../core/chemistry/criticalPh.ts';
import { MINERALS } from '../../core/chemistry/types.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';
import { pairs, totalsMmolPerKg } from './chemistryFields.ts';

const input = z.strictObject({ totalsMmolPerKg, mineral: z.enum(MINERALS), pairs });
const output = z.strictObject({
  criticalPh: nullableNumber.describe('pH 2 to 12 at which the fluid is just saturated, totals held; null if there is none'),
});

export const criticalPh: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'critical-ph',
  summary: 'The pH below which a fluid dissolves a mineral, from its calcium, phosphate and fluoride',
  input,
  output,
  run: ({ totalsMmolPerKg: totals, mineral, pairs: set }) => ({ criticalPh: computeCriticalPh(totals, mineral, { pairs: set }) }),
};
