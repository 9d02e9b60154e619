import { z } from 'zod';
import { fluorideTables, varnishAmounts } from '../../content/fluorideLimits.ts';
import { regimenSources } from '../../content/sources-regimen.ts';
import { weightDoubtOf } from '../../core/regimen/dose/weightDoubt.ts';
import { fluorideContentPpm } from '../../core/regimen/fluorideContentPpm.ts';
import { fluorideIntake as computeIntake, type FluorideSource } from '../../core/regimen/fluorideIntake.ts';
import { fluorideSentence } from '../../core/regimen/fluorideSentence.ts';
import type { SourceRef } from '../../core/visit/answer.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';
import { compound, percent, source } from './regimenFields.ts';

const MONTHS_PER_YEAR = 12;
const DAYS_PER_YEAR = 365;
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
  salt: z
    .strictObject({ fluorideMgPerKg: notNegative.max(10_000).nullish(), gPerDay: notNegative.max(1_000).nullish() })
    .nullish()
    .describe('salt with fluoride, strength as on its pack; absent = not in the sum; null = not known; 0 g = none'),
  supplementMgPerDay: notNegative.max(100).nullish().describe('fluoride of drops or tablets; absent = not in the sum; null = not known'),
  varnish: z
    .strictObject({
      daysPerYear: notNegative.max(366).nullish(),
      mgPerApplication: notNegative.max(1_000).nullish().describe('absent = the most varnish for the teeth of the age, all swallowed'),
    })
    .nullish()
    .describe('absent = not in the sum; null = not known'),
});

const output = z.strictObject({
  complete: z.boolean().describe('false: the sums are lower bounds and no share is given'),
  unknownSources: z.array(z.string()),
  covers: z.string().describe('what the sum is of'),
  notCovered: z.array(z.string()).describe('what nobody asked this sum about; food is never in it'),
  parts: z.array(
    z.strictObject({
      name: z.string(),
      mgPerDay: nullableNumber.describe('over a year where it is not daily; null while a part of it is not known'),
      onItsDay: z
        .strictObject({ mg: z.number(), mgPerKg: nullableNumber, daysPerYear: z.number() })
        .nullable()
        .describe('of what is not used every day, on the day of its use'),
      sources: z.array(source).describe('of what was not told'),
    }),
  ),
  mgPerDay: z.number(),
  mgPerKgPerDay: nullableNumber,
  weightKg: nullableNumber,
  weightAssumed: z.boolean().describe('the 5th percentile for the age, for the sum a day alone and never for an emergency'),
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
  summary: 'Fluoride swallowed a day from every source against named limits, and what to do when it is swallowed by accident',
  input,
  output,
  run(given) {
    const { ageYears, products } = given;
    const weightKg = given.weightKg ?? undefined;
    const ageMonths = Math.floor(ageYears * MONTHS_PER_YEAR);
    const doubt = weightDoubtOf({ weightKg, ageMonths }, fluorideTables.weights);
    if (doubt !== undefined) throw new RangeError(`weightKg: ${doubt}`);
    const others = othersOf(given);
    const sources = [...products.map(toSource), ...others.flatMap(({ source: from }) => from ?? [])];
    const intake = computeIntake({ ageMonths, weightKg, sources, tables: fluorideTables });
    const known = sources.map((s) => s.name).filter((name) => !intake.unknownSources.includes(name));
    const notCovered = others.filter(({ source: from }) => from === undefined).map(({ name }) => name);
    const covered = others.filter(({ source: from }) => from !== undefined).map(({ name }) => name);
    return {
      complete: intake.complete,
      unknownSources: [...intake.unknownSources],
      covers: sayCovers(covered, notCovered),
      notCovered,
      parts: (intake.parts ?? []).map((part) => ({ ...part, sources: part.sources.map(cited) })),
      mgPerDay: intake.mgPerDay,
      mgPerKgPerDay: intake.mgPerKgPerDay,
      weightKg: intake.weightKg,
      weightAssumed: intake.weightAssumed,
      limits: intake.limits.map((l) => ({ ...l, source: cited(l.source) })),
      acute: { ...intake.acute },
      sentence: fluorideSentence(intake, known),
    };
  },
};

const cited = ({ key, status, note }: SourceRef): z.infer<typeof source> => ({
  key,
  status,
  ...(note === undefined ? {} : { note }),
  cite: regimenSources[key]?.cite ?? key,
});

const sayCovers = (covered: readonly string[], notCovered: readonly string[]): string =>
  `${listed(['the products listed', ...covered])}; ${[...notCovered, 'food'].map((name) => `not ${name}`).join(', ')}`;

/** What was not mentioned is not in the sum; what was mentioned without a value is not known. */
function othersOf(given: z.infer<typeof input>): readonly { readonly name: string; readonly source: FluorideSource | undefined }[] {
  const { waterFluorideMgPerL: water, salt, supplementMgPerDay: supplement, varnish } = given;
  return [
    { name: 'drinking water', source: water === undefined ? undefined : waterSource(water, given.waterLitresPerDay ?? undefined) },
    { name: 'salt', source: salt === undefined ? undefined : saltSource(salt) },
    {
      name: 'drops or tablets',
      source: supplement === undefined ? undefined : { name: 'drops or tablets', mgPerUse: supplement ?? undefined, ...SWALLOWED },
    },
    { name: 'varnish', source: varnish === undefined ? undefined : varnishSource(varnish, Math.floor(given.ageYears)) },
  ];
}

const SWALLOWED = { perDay: 1, swallowedFraction: 1, isNoAccident: true } as const;

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
  return { name: 'water', ppm: mgPerL ?? undefined, amountMl, ...SWALLOWED };
}

/** No salt eaten needs no strength. */
function saltSource(salt: z.infer<typeof input>['salt']): FluorideSource {
  const { fluorideMgPerKg, gPerDay } = salt ?? {};
  if (gPerDay === 0) return { name: 'salt', mgPerUse: 0, ...SWALLOWED };
  return { name: 'salt', ppm: fluorideMgPerKg ?? undefined, amountG: gPerDay ?? undefined, ...SWALLOWED };
}

function varnishSource(varnish: z.infer<typeof input>['varnish'], ageYears: number): FluorideSource {
  const { daysPerYear, mgPerApplication } = varnish ?? {};
  const row = varnishAmounts.find((r) => ageYears >= r.fromAgeYears && ageYears < r.belowAgeYears);
  const name = 'varnish';
  if (daysPerYear === 0) return { name, mgPerUse: 0, ...SWALLOWED };
  const perDay = daysPerYear == null ? undefined : daysPerYear / DAYS_PER_YEAR;
  if (mgPerApplication != null) return { name, mgPerUse: mgPerApplication, ...SWALLOWED, perDay };
  const mgPerUse = row && row.amountMl * fluorideTables.varnishMgPerMl;
  return { name, mgPerUse, ...SWALLOWED, perDay, sources: row && [row.source] };
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
