import type { SourceRef } from '../visit/answer.ts';
import { fluorideMg } from './fluorideMg.ts';
import { plannerWeightKg } from './plannerWeightKg.ts';
import type { FluorideLimit, FluorideTables, SwallowedShare } from './tables.ts';
import type { FluorideIntake, FluoridePart } from './types.ts';

/** One thing that fluoride comes from. What is not known stays undefined. */
export interface FluorideSource {
  /** Short: "paste", "rinse", "water". */
  readonly name: string;
  /** mg F per kg, or per L for an amount in mL. */
  readonly ppm?: number | undefined;
  /** One use, where it is known as fluoride: instead of strength and amount. */
  readonly mgPerUse?: number | undefined;
  readonly amountG?: number | undefined;
  /** Taken as ppm in mg/L; give pastes in grams. */
  readonly amountMl?: number | undefined;
  readonly perDay?: number | undefined;
  /** 0..1; absent = the planner's share for the age. */
  readonly swallowedFraction?: number | undefined;
  /** Meant to be swallowed, or put on at the practice: no part of a swallowing by accident at home. */
  readonly isNoAccident?: boolean | undefined;
  /** Where strength, amount and number of uses come from; absent = told. */
  readonly sources?: readonly SourceRef[] | undefined;
}

export interface FluorideIntakeInput {
  readonly ageMonths: number;
  readonly weightKg?: number | undefined;
  readonly sources: readonly FluorideSource[];
  readonly tables: FluorideTables;
}

const MONTHS_PER_YEAR = 12;
/** Shares of limits compare sums of products of decimals: anything closer than this is the same number. */
export const SAME_WITHIN = 1e-9;

/**
 * Fluoride swallowed in a day, against each named limit, and what to do when more than one use is swallowed.
 * A source with an unknown part makes every sum a lower bound: `complete` is false and no share is given. Without a weight the planner's
 * weight for the age is assumed and flagged; it can only raise the acute action, never lower it.
 * @param input.ageMonths  completed months, 0 or more
 * @param input.weightKg   kg, above 0; undefined = not weighed
 * @param input.sources    ppm 0..1e6, amounts and perDay 0 or more, swallowedFraction 0..1
 * @returns mg of F, not rounded; `acute.mgIfAllSwallowed`: all of one day's uses, at least one use of each; `acute.mgPerKg` null where the
 *          weight is assumed and the result is below the emergency dose. The action is never "wait".
 * @throws RangeError naming the value outside its range (NaN included)
 * @source whitford1987, iom1997, efsa2025, smpcHighFluoride
 */
export function fluorideIntake({ ageMonths, weightKg, sources, tables }: FluorideIntakeInput): FluorideIntake {
  checkRange('weightKg', weightKg, Number.MIN_VALUE, 1_000);
  for (const source of sources) checkSource(source);
  const assumedKg = weightKg === undefined ? plannerWeightKg(ageMonths, tables.weights) : undefined;
  const kg = weightKg ?? assumedKg ?? null;
  const share = swallowedShare(ageMonths, tables);
  const parts = sources.map((s) => partOf(s, share, kg));
  const unknownSources = parts.filter((p) => p.mgPerDay === null).map((p) => p.name);
  const complete = unknownSources.length === 0;
  const mgPerDay = sum(parts.map((p) => p.mgPerDay ?? 0));
  const mgPerKgPerDay = kg === null ? null : mgPerDay / kg;
  return {
    complete,
    unknownSources,
    mgPerDay,
    mgPerKgPerDay,
    weightKg: kg,
    weightAssumed: assumedKg !== undefined,
    limits: limitsAt(ageMonths, tables.limits).map(({ name, kind, value, unit, source, shownOnly }) => {
      const taken = unit === 'mg/day' ? mgPerDay : mgPerKgPerDay;
      return { name, kind, value, unit, share: complete && taken !== null ? taken / value : null, source, ...(shownOnly && { shownOnly }) };
    }),
    acute: acuteOf(sum(sources.filter((s) => s.isNoAccident !== true).map(mgIfSwallowed)), weightKg, assumedKg, tables.emergencyMgPerKg),
    parts,
  };
}

/**
 * Limits that hold at an age; the bands are half-open in completed months.
 * @source iom1997, efsa2025, smpcHighFluoride
 */
export function limitsAt(ageMonths: number, limits: readonly FluorideLimit[]): readonly FluorideLimit[] {
  return limits.filter((l) => ageMonths >= l.fromAgeMonths && ageMonths < l.belowAgeMonths);
}

/** A limit that must not be passed: upper intake levels and safe levels. Label caps and targets are shown, and weighed by the prescriber. */
export interface PassedLimit {
  readonly name: string;
  readonly value: number;
  readonly unit: FluorideLimit['unit'];
  readonly mg: number;
  readonly source: SourceRef;
}

/** The first upper level that the sum, even as a lower bound, is above; undefined when it is above none. */
export function findPassedLimit({ limits, mgPerDay, mgPerKgPerDay }: FluorideIntake): PassedLimit | undefined {
  for (const { name, kind, value, unit, source, shownOnly } of limits) {
    if ((kind !== 'upper-intake-level' && kind !== 'safe-level') || shownOnly) continue;
    const mg = unit === 'mg/day' ? mgPerDay : mgPerKgPerDay;
    if (mg !== null && mg > value * (1 + SAME_WITHIN)) return { name, value, unit, mg, source };
  }
  return undefined;
}

function acuteOf(
  mg: number,
  weightKg: number | undefined,
  assumedKg: number | undefined,
  emergencyMgPerKg: number,
): FluorideIntake['acute'] {
  const kg = weightKg ?? assumedKg;
  const mgPerKg = kg === undefined ? null : mg / kg;
  const isEmergency = mgPerKg !== null && mgPerKg >= emergencyMgPerKg * (1 - SAME_WITHIN);
  return {
    mgIfAllSwallowed: mg,
    mgPerKg: weightKg !== undefined || isEmergency ? mgPerKg : null,
    action: isEmergency ? 'emergency-care-now' : 'poison-centre-now',
  };
}

const DAYS_PER_YEAR = 365;

function partOf(source: FluorideSource, share: SwallowedShare | undefined, kg: number | null): FluoridePart {
  const { name, perDay, swallowedFraction, sources = [] } = source;
  // Above and below the table everything counts as swallowed: the cautious end.
  const mg = mgOfOneUse(source);
  const swallowed = mg === undefined ? undefined : mg * (swallowedFraction ?? share?.fraction ?? 1);
  const isShared = swallowedFraction === undefined && share !== undefined;
  const all = isShared ? [...sources, share.source] : sources;
  if (swallowed === 0) return { name, mgPerDay: 0, onItsDay: null, sources: all };
  if (swallowed === undefined || perDay === undefined) return { name, mgPerDay: null, onItsDay: null, sources: all };
  const isRare = perDay > 0 && perDay < 1;
  const mgPerKg = kg === null ? null : swallowed / kg;
  const onItsDay = isRare ? { mg: swallowed, mgPerKg, daysPerYear: perDay * DAYS_PER_YEAR } : null;
  return { name, mgPerDay: swallowed * perDay, onItsDay, sources: all };
}

/** mg F, or undefined while a part is unknown. Water without fluoride needs no amount. */
function mgOfOneUse(source: FluorideSource): number | undefined {
  const { ppm, mgPerUse } = source;
  if (mgPerUse !== undefined || ppm === 0) return mgPerUse ?? 0;
  const amount = amountOf(source);
  return ppm === undefined || amount === undefined ? undefined : fluorideMg(ppm, amount);
}

/** All of a day's uses, at least one: what is used weekly is swallowed a whole use at a time. Unknown parts add nothing, so a lower bound. */
const mgIfSwallowed = (source: FluorideSource): number => (mgOfOneUse(source) ?? 0) * Math.max(1, source.perDay ?? 1);

const amountOf = ({ amountG, amountMl }: FluorideSource): number | undefined => amountG ?? amountMl;
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function swallowedShare(ageMonths: number, { swallowed }: FluorideTables): SwallowedShare | undefined {
  const ageYears = Math.floor(ageMonths / MONTHS_PER_YEAR);
  return swallowed.find((s) => ageYears >= s.fromAgeYears && ageYears < s.belowAgeYears);
}

function checkSource({ name, ppm, mgPerUse, amountG, amountMl, perDay, swallowedFraction }: FluorideSource): void {
  checkRange(`ppm of ${name}`, ppm, 0, 1e6);
  checkRange(`mgPerUse of ${name}`, mgPerUse, 0, 1e6);
  checkRange(`amountG of ${name}`, amountG, 0, 1e6);
  checkRange(`amountMl of ${name}`, amountMl, 0, 1e6);
  checkRange(`perDay of ${name}`, perDay, 0, 1e3);
  checkRange(`swallowedFraction of ${name}`, swallowedFraction, 0, 1);
}

function checkRange(what: string, value: number | undefined, low: number, high: number): void {
  if (value !== undefined && !(value >= low && value <= high)) throw new RangeError(`${what} must be ${low}..${high}: ${value}`);
}
