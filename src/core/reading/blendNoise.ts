import { keepByTable } from '../keep/keepByTable.ts';
import { logVarianceOfCv } from './logSdOfCv.ts';
import type { NoiseTable } from './noiseTable.ts';
import { type Meter, NOISE_PARTS, type NoisePart, type OwnEstimate } from './types.ts';

/** The practice's own studies of one part, taken together. */
export interface PooledOwn {
  /** Of ln RLU, 0 where the studies together saw less than chance. */
  readonly variance: number;
  readonly degreesOfFreedom: number;
  /** null where a study did not say how many. */
  readonly readings: number | null;
  readonly studies: number;
}

export interface BlendedPart {
  readonly part: NoisePart;
  /** Variance of ln RLU that is used. null = nobody measured it and no source gives it: left out by name, never taken as nothing. */
  readonly variance: number | null;
  readonly prior: { readonly variance: number; readonly degreesOfFreedom: number; readonly from: 'assumed' | 'typed' };
  readonly own: PooledOwn | null;
  /** Weight of the own studies in the variance, 0 to 1. */
  readonly ownWeight: number;
}

export type MeterNoise = Readonly<Record<NoisePart, BlendedPart>>;

/**
 * Each part of a meter's noise from what is assumed or typed of it and from the practice's own studies: the conjugate blend of
 * variances, (nu0 s0^2 + nu s^2) / (nu0 + nu), with the degrees of freedom as weights (scaled inverse chi-square).
 * Several studies of one part are pooled as computed, so that a variance that came out below 0 by chance is not lost; only their sum is
 * kept at 0 or above. The prior keeps its weight, so no part that was once assumed ever becomes nothing.
 * @returns variances of ln RLU; without own studies the figures of the meter exactly as they stand
 * @throws RangeError naming the field: degrees of freedom or a variance that are not numbers
 * @source gelman-bda3
 */
export function blendNoise(table: NoiseTable, meter: Meter): MeterNoise {
  const blended = NOISE_PARTS.map((part) => [part, blendPart(table, meter, part)] as const);
  return Object.fromEntries(blended) as Record<NoisePart, BlendedPart>;
}

/** The same, kept for as long as the table and the meter. */
export const noiseOfMeter = (table: NoiseTable, meter: Meter): MeterNoise => keptByTable(table)(meter);
const keptByTable = keepByTable((table: NoiseTable) => keepByTable((meter: Meter) => blendNoise(table, meter)));

function blendPart(table: NoiseTable, meter: Meter, part: NoisePart): BlendedPart {
  const prior = priorOf(table, meter, part);
  const own = poolOwn((meter.own ?? []).filter((o) => o.component === part));
  const isCarried = table.parts[part].cv === null;
  if (own === null) return { part, variance: isCarried ? prior.variance : null, prior, own, ownWeight: 0 };
  const ownWeight = own.degreesOfFreedom / (prior.degreesOfFreedom + own.degreesOfFreedom);
  return { part, variance: (1 - ownWeight) * prior.variance + ownWeight * own.variance, prior, own, ownWeight };
}

function priorOf(table: NoiseTable, meter: Meter, part: NoisePart): BlendedPart['prior'] {
  const { cv, degreesOfFreedom } = table.parts[part];
  if (cv !== null) return { variance: logVarianceOfCv(cv, `noise.${part}.cv`), degreesOfFreedom, from: 'assumed' };
  const figure =
    part === 'withinPerson'
      ? { cv: meter.cvWithinPerson, isAssumed: meter.cvWithinPersonAssumed }
      : { cv: meter.cvAnalytical, isAssumed: meter.cvAnalyticalAssumed };
  return {
    variance: logVarianceOfCv(figure.cv, part === 'withinPerson' ? 'cvWithinPerson' : 'cvAnalytical'),
    degreesOfFreedom: figure.isAssumed ? degreesOfFreedom : table.typed.degreesOfFreedom,
    from: figure.isAssumed ? 'assumed' : 'typed',
  };
}

function poolOwn(studies: readonly OwnEstimate[]): PooledOwn | null {
  if (studies.length === 0) return null;
  let [degreesOfFreedom, sum, readings]: [number, number, number | null] = [0, 0, 0];
  for (const { variance, degreesOfFreedom: df, readings: count, studyId } of studies) {
    if (!(df > 0 && df < Number.POSITIVE_INFINITY)) throw new RangeError(`degreesOfFreedom of ${studyId} must be above 0: ${df}`);
    if (!Number.isFinite(variance)) throw new RangeError(`variance of ${studyId} must be a number: ${variance}`);
    degreesOfFreedom += df;
    sum += df * variance;
    readings = readings === null || count === undefined ? null : readings + count;
  }
  return { variance: Math.max(0, sum / degreesOfFreedom), degreesOfFreedom, readings, studies: studies.length };
}
