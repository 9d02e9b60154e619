import { z } from 'zod';
import { fluorideTables } from '../../content/fluorideLimits.ts';
import { regimenSources } from '../../content/sources-regimen.ts';
import { weightDoubtOf } from '../../core/regimen/dose/weightDoubt.ts';
import { fluorideContentPpm } from '../../core/regimen/fluorideContentPpm.ts';
import { fluorideIntake as computeIntake, type FluorideSource } from '../../core/regimen/fluorideIntake.ts';
import { fluorideSentence } from '../../core/regimen/fluorideSentence.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';
import { compound, percent, source } from './regimenFields.ts';

const MONTHS_PER_YEAR = 12;
const notNegative = z.number().min(0);
const fraction = z.number().min(0).max(1);

const product = z
  .strictObject({
    name: z.string().trim().min(1).max(200).optional().describe('default "product 1", "product 2", ...'),
    compound: compound.nullish(),
    percent: percent.nullish().describe('without a compound the strength is not known'),
    ppm: notNegative.max(1e6).nullish().describe('mg F per kg, or per L for an amount in mL'),
    amountG: notNegative.max(1e6).nullish().describe('one use'),
    amountMl: notNegative.max(1e6).nullish().describe('one use; taken as ppm in mg/L, so give pastes in grams'),
    perDay: notNegative.max(1000).nullish(),
    swallowedFraction: fraction.nullish().describe('absent = the planner’s share for the age'),
  })
  .refine((p) => p.ppm == null || p.percent == null, { error: 'give percent or ppm, not both', path: ['ppm'] })
  .refine((p) => p.amountG == null || p.amountMl == null, { error: 'give amountG or amountMl, not both', path: ['amountMl'] });

const input = z.strictObject({
  ageYears: notNegative.max(130).describe('age; a fraction counts as completed months'),
  weightKg: z.number().positive().max(1000).nullish().describe('absent or null = not weighed'),
  products: z.array(product).max(100),
  waterFluorideMgPerL: notNegative.max(100).nullish().describe('absent = the sum is of the products alone; null = not known'),
  waterLitresPerDay: notNegative.max(20).nullish(),
});

const output = z.strictObject({
  complete: z.boolean().describe('false: the sums are lower bounds and no share is given'),
  unknownSources: z.array(z.string()),
  covers: z.string().describe('what the sum is of'),
  mgPerDay: z.number(),
  mgPerKgPerDay: nullableNumber,
  weightKg: nullableNumber,
  weightAssumed: z.boolean(),
  limits: z.array(
    z.strictObject({
      name: z.string(),
      kind: z.enum(['upper-intake-level', 'safe-level', 'label-cap', 'intake-target']),
      value: z.number(),
      unit: z.enum(['mg/day', 'mg/kg/day']),
      share: nullableNumber,
      source,
    }),
  ),
  acute: z
    .strictObject({
      mgIfAllSwallowed: z.number().describe('all of one day’s uses of the products, at least one use of each'),
      mgPerKg: nullableNumber.describe('null where the weight is assumed and the result is below the emergency dose'),
      action: z.enum(['poison-centre-now', 'emergency-care-now']),
    })
    .describe('what to do when more than one use is swallowed; a smaller figure is not declared harmless'),
  sentence: z.string(),
});

export const fluorideIntake: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'fluoride-intake',
  summary: 'Fluoride swallowed a day against named limits, and what to do when it is swallowed by accident',
  input,
  output,
  run({ ageYears, weightKg, products, waterFluorideMgPerL, waterLitresPerDay }) {
    const ageMonths = Math.floor(ageYears * MONTHS_PER_YEAR);
    const doubt = weightDoubtOf({ weightKg: weightKg ?? undefined, ageMonths }, fluorideTables.weights);
    if (doubt !== undefined) throw new RangeError(`weightKg: ${doubt}`);
    const isWaterGiven = waterFluorideMgPerL !== undefined;
    const sources = [
      ...products.map(toSource),
      ...(isWaterGiven ? [waterSource(waterFluorideMgPerL, waterLitresPerDay ?? undefined)] : []),
    ];
    const intake = computeIntake({
      ageMonths,
      weightKg: weightKg ?? undefined,
      sources,
      tables: fluorideTables,
    });
    const known = sources.map((s) => s.name).filter((name) => !intake.unknownSources.includes(name));
    return {
      complete: intake.complete,
      unknownSources: [...intake.unknownSources],
      covers: isWaterGiven ? 'the products listed and drinking water; not food' : 'the products listed; not drinking water, not food',
      mgPerDay: intake.mgPerDay,
      mgPerKgPerDay: intake.mgPerKgPerDay,
      weightKg: intake.weightKg,
      weightAssumed: intake.weightAssumed,
      limits: intake.limits.map((l) => ({ ...l, source: { ...l.source, cite: regimenSources[l.source.key]?.cite ?? l.source.key } })),
      acute: { ...intake.acute },
      sentence: fluorideSentence(intake, known),
    };
  },
};

function toSource(
  { name, compound: of, percent: share, ppm, amountG, amountMl, perDay, swallowedFraction }: z.infer<typeof product>,
  i: number,
): FluorideSource {
  const fromPercent = of != null && share != null ? fluorideContentPpm(of, share) : undefined;
  return {
    name: name ?? `product ${i + 1}`,
    ppm: ppm ?? fromPercent,
    amountG: amountG ?? undefined,
    amountMl: amountMl ?? undefined,
    perDay: perDay ?? undefined,
    swallowedFraction: swallowedFraction ?? undefined,
  };
}

function waterSource(mgPerL: number | null, litresPerDay: number | undefined): FluorideSource {
  const amountMl = litresPerDay === undefined ? undefined : litresPerDay * 1000;
  return { name: 'water', ppm: mgPerL ?? undefined, amountMl, perDay: 1, swallowedFraction: 1, isNoAccident: true };
}
