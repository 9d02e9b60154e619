import { requirePositive } from '../reading/requirePositive.ts';
import { centredValues } from '../stats/centredValues.ts';
import type { Interval } from '../stats/interval.ts';
import { normalQuantile } from '../stats/normal.ts';
import type { Result } from '../stats/result.ts';

export interface LotComparison {
  /** Geometric mean of the new lot over that of the old one. */
  readonly ratio: number;
  /** Its 90 % interval: each side errs at most 5 times in 100. */
  readonly ratioInterval: Interval;
  /**
   * `agrees`: the whole interval lies within what is allowed, up or down; `differs`: the whole interval lies outside; `not-decided`:
   * more swabs would have to tell.
   */
  readonly verdict: 'agrees' | 'differs' | 'not-decided';
  /** What to hold the controls of the new lot against until it has controls of its own. */
  readonly target: { readonly meanLn: number; readonly sdLn: number; readonly count: number } | undefined;
}

export interface LotsCompared {
  /** Readings of one solution on one meter on one day, RLU, above 0. */
  readonly oldRlu: readonly number[];
  readonly newRlu: readonly number[];
  /** Sd of ln(RLU) of one control with the practice's own meter and swabs, above 0: a handful of swabs cannot tell it. */
  readonly sdLn: number;
  /** Largest ratio that makes no difference, less 1: 0.3 allows 1.3 times as much, and 1.3 times as little. */
  readonly allowedFraction: number;
  /** Of the old lot, ln(RLU); absent = none was set. */
  readonly oldTargetLn?: number | undefined;
}

const Z_ONE_SIDED = normalQuantile(0.95);

/**
 * Does a new lot of swabs read like the old one? Both lots are tried on one solution before the new one is used on people.
 * @returns the comparison, or ok: false without a swab of each lot
 * @throws RangeError naming the field
 * @accuracy closed form; each verdict errs in at most 5 of 100 simulated comparisons (compareLots.test.ts)
 * @source schuirmann1987
 */
export function compareLots({ oldRlu, newRlu, sdLn, allowedFraction, oldTargetLn }: LotsCompared): Result<LotComparison, 'too-few-swabs'> {
  requirePositive(sdLn, 'sdLn');
  requirePositive(allowedFraction, 'allowedFraction');
  const oldMean = meanLog('oldRlu', oldRlu);
  const newMean = meanLog('newRlu', newRlu);
  if (oldMean === undefined || newMean === undefined) return { ok: false, reason: 'too-few-swabs' };
  const difference = newMean - oldMean;
  const reach = Z_ONE_SIDED * sdLn * Math.sqrt(1 / oldRlu.length + 1 / newRlu.length);
  const [low, high] = [difference - reach, difference + reach];
  const allowed = Math.log1p(allowedFraction);
  const agrees = low > -allowed && high < allowed;
  const differs = low > allowed || high < -allowed;
  return {
    ok: true,
    value: {
      ratio: Math.exp(difference),
      ratioInterval: { low: Math.exp(low), high: Math.exp(high) },
      verdict: agrees ? 'agrees' : differs ? 'differs' : 'not-decided',
      target: oldTargetLn === undefined ? undefined : { meanLn: oldTargetLn + difference, sdLn, count: newRlu.length },
    },
  };
}

/**
 * Swabs of each lot for a comparison that finds two equal lots to agree 9 times in 10.
 * @param sdLn             of ln(RLU) of one control, above 0
 * @param allowedFraction  as in `compareLots`, above 0
 * @returns whole number, at least 1
 * @throws RangeError naming the parameter
 * @source schuirmann1987
 */
export function swabsForLotComparison(sdLn: number, allowedFraction: number): number {
  requirePositive(sdLn, 'sdLn');
  requirePositive(allowedFraction, 'allowedFraction');
  // Equal lots can miss on either side, 5 in 100 each.
  return Math.max(1, Math.ceil(2 * ((2 * Z_ONE_SIDED * sdLn) / Math.log1p(allowedFraction)) ** 2));
}

function meanLog(name: string, rlus: readonly number[]): number | undefined {
  for (const [i, rlu] of rlus.entries()) requirePositive(rlu, `${name}.${i}`);
  return rlus.length === 0 ? undefined : centredValues(rlus.map(Math.log)).mean;
}
