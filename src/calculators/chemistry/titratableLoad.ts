import { z } from 'zod';
import { baseNeededMmolPerKg, titratableMmolPerL } from '../../core/chemistry/products/titratableLoad.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';
import { pairs, pH, totalsMmolPerKg } from './chemistryFields.ts';

const portionMl = z.number().positive().max(10_000).optional().describe('a glass, a sip, one rinse; for mmol in it');

const input = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('titration'),
    baseMl: z.number().min(0).max(1000).describe('base used until neutral'),
    baseMolPerL: z.number().positive().max(10).optional().describe('strength of the base; 1 when absent'),
    sampleMl: z.number().positive().max(10_000).optional().describe('of the drink or rinse that was titrated; 50 when absent'),
    portionMl,
  }),
  z.strictObject({
    by: z.literal('composition'),
    totalsMmolPerKg,
    fromPh: pH.describe('pH of the drink or rinse'),
    toPh: pH.optional().describe('7 when absent'),
    pairs,
    portionMl,
  }),
]);
const output = z.strictObject({
  titratableMmolPerL: z
    .number()
    .describe('strong base for a litre (for a kg of water where worked out from a composition); negative where acid is needed'),
  titratableMmolPerPortion: nullableNumber.describe('null without portionMl'),
  notCounted: z.string().nullable().describe('what the composition cannot hold; null for a titration, which counts everything'),
});

type Load = z.infer<typeof input>;

export const titratableLoad: Calculator<Load, z.infer<typeof output>> = {
  name: 'titratable-load',
  summary: 'Acid that a drink or rinse brings along, from a titration or from its composition, for a litre and a portion',
  input,
  output,
  run(given) {
    const perL = loadMmolPerL(given);
    return {
      titratableMmolPerL: perL,
      titratableMmolPerPortion: given.portionMl === undefined ? null : (perL * given.portionMl) / 1000,
      notCounted: given.by === 'titration' ? null : 'citric, malic and other acids that are not in the composition',
    };
  },
};

function loadMmolPerL(given: Load): number {
  if (given.by === 'titration') return titratableMmolPerL(given);
  return baseNeededMmolPerKg(given.totalsMmolPerKg, [given.fromPh, given.toPh ?? 7], { pairs: given.pairs });
}
