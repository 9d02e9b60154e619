import type { Bound } from '../reading/types.ts';
import { choleskyFactor, choleskySolve } from './cholesky.ts';
import { inverseMills, normalLogCdf } from './normal.ts';
import type { Result } from './result.ts';

export interface NoisyValue {
  readonly value: number;
  /** at-most: the noisy value is `value` or lower; at-least: `value` or higher. */
  readonly bound: Bound;
  /** What multiplies each fixed coefficient. */
  readonly fixed: readonly number[];
  /** Which random effects are in it, by index. */
  readonly effects: readonly number[];
}

export interface KnownNoiseInput {
  readonly values: readonly NoisyValue[];
  /** sd of the noise of one value, above 0. */
  readonly noiseSd: number;
  /** Variance of each random effect, above 0. */
  readonly effectVariances: readonly number[];
}

export interface KnownNoiseFit {
  readonly coefficients: readonly number[];
  /** Of the fixed coefficients. */
  readonly covariance: readonly (readonly number[])[];
  /** Squared residuals over their variances at the fit, effects and noise together; chi-square where nothing is a bound. */
  readonly chiSquare: number;
}

/** A pivot this small beside its own diagonal is rounding: the coefficient is not determined. */
const LEAST_PIVOT = 1e-12;
const MOST_STEPS = 100;
/** Gain left to win, beside the log-likelihood: the step that wins it is the last, since steps near the top square the error. */
const DONE = 1e-12;

/**
 * Fixed coefficients of values whose noise and random-effect variances are known, some values being only bounds.
 * The penalised likelihood (Henderson's mixed-model equations) is concave, so damped Newton steps reach its one maximum. Without bounds
 * that is generalised least squares exactly, in one step; with bounds the covariance is that of the curvature at the maximum.
 * @returns `not-determined` where the values leave a coefficient free
 * @throws RangeError naming the parameter: a value or variance that is no number, a list of coefficients of another length
 * @accuracy 1e-10 against generalised least squares by its closed form
 * @source henderson1975
 */
export function knownNoiseFit(input: KnownNoiseInput): Result<KnownNoiseFit, 'not-determined'> {
  const size = check(input);
  let at: number[] = new Array<number>(size + input.effectVariances.length).fill(0);
  let here = slopeAt(input, at, size);
  for (let step = 0; step < MOST_STEPS; step++) {
    const factor = choleskyFactor(here.information, LEAST_PIVOT);
    if (factor === undefined) return { ok: false, reason: 'not-determined' };
    const move = [...choleskySolve(factor, here.gradient)];
    const gain = dot(move, here.gradient);
    let share = 1;
    let next = stepFrom(at, move, share);
    let there = slopeAt(input, next, size);
    while (gain > 1e-6 && !(there.logLikelihood >= here.logLikelihood + 1e-4 * share * gain)) {
      share /= 2;
      if (share < 1e-12) return { ok: false, reason: 'not-determined' };
      next = stepFrom(at, move, share);
      there = slopeAt(input, next, size);
    }
    at = next;
    here = there;
    if (gain <= DONE * (1 + Math.abs(here.logLikelihood))) return fitAt(at, here, size);
  }
  return { ok: false, reason: 'not-determined' };
}

function check({ values, noiseSd, effectVariances }: KnownNoiseInput): number {
  const size = values[0]?.fixed.length ?? 0;
  if (size === 0) throw new RangeError('values must hold at least one value with a coefficient');
  if (!(noiseSd > 0 && noiseSd < Number.POSITIVE_INFINITY)) throw new RangeError(`noiseSd must be above 0: ${noiseSd}`);
  for (const v of effectVariances)
    if (!(v > 0 && v < Number.POSITIVE_INFINITY)) throw new RangeError(`effectVariances must be above 0: ${v}`);
  for (const { value, fixed, effects } of values) {
    if (!Number.isFinite(value)) throw new RangeError(`values must be finite: ${value}`);
    if (fixed.length !== size || !fixed.every(Number.isFinite)) throw new RangeError(`fixed must hold ${size} finite numbers`);
    if (!effects.every((e) => Number.isInteger(e) && e >= 0 && e < effectVariances.length)) throw new RangeError(`effects: ${effects}`);
  }
  return size;
}

interface Slope {
  readonly logLikelihood: number;
  readonly gradient: readonly number[];
  readonly information: readonly (readonly number[])[];
}

function slopeAt({ values, noiseSd, effectVariances }: KnownNoiseInput, at: readonly number[], size: number): Slope {
  const gradient = at.map(() => 0);
  const information = at.map(() => at.map(() => 0));
  let logLikelihood = 0;
  for (const { value, bound, fixed, effects } of values) {
    const terms = [...fixed.map((x, i) => [i, x] as const), ...effects.map((e) => [size + e, 1] as const)];
    const middle = terms.reduce((sum, [i, x]) => sum + x * (at[i] ?? 0), 0);
    const side = bound === 'at-least' ? -1 : 1;
    const u = (side * (value - middle)) / noiseSd;
    const pull = bound === 'exact' ? u : -inverseMills(u);
    const curvature = bound === 'exact' ? 1 : pull * (pull - u);
    logLikelihood += bound === 'exact' ? -0.5 * u * u : normalLogCdf(u);
    for (const [i, x] of terms) {
      gradient[i] = (gradient[i] ?? 0) + (side * pull * x) / noiseSd;
      const row = information[i];
      for (const [j, y] of terms) if (row) row[j] = (row[j] ?? 0) + (curvature * x * y) / noiseSd ** 2;
    }
  }
  effectVariances.forEach((variance, e) => {
    const [i, effect] = [size + e, at[size + e] ?? 0];
    logLikelihood -= (0.5 * effect ** 2) / variance;
    gradient[i] = (gradient[i] ?? 0) - effect / variance;
    const row = information[i];
    if (row) row[i] = (row[i] ?? 0) + 1 / variance;
  });
  return { logLikelihood, gradient, information };
}

function fitAt(at: readonly number[], { logLikelihood, information }: Slope, size: number): Result<KnownNoiseFit, 'not-determined'> {
  const factor = choleskyFactor(information, LEAST_PIVOT);
  if (factor === undefined) return { ok: false, reason: 'not-determined' };
  const columns = at.slice(0, size).map((_, i) =>
    choleskySolve(
      factor,
      at.map((_coefficient, j) => (i === j ? 1 : 0)),
    ),
  );
  const covariance = columns.map((column) => [...column.slice(0, size)]);
  return { ok: true, value: { coefficients: at.slice(0, size), covariance, chiSquare: -2 * logLikelihood } };
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);
const stepFrom = (at: readonly number[], move: readonly number[], share: number): number[] => at.map((x, i) => x + share * (move[i] ?? 0));
