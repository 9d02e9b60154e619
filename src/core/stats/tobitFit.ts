import type { CensoredValue } from './censoredNormalFit.ts';
import { censoredTerm, sideOf } from './censoredTerm.ts';
import { type CholeskyFactor, choleskyFactor, choleskySolve } from './cholesky.ts';
import type { Result } from './result.ts';

export interface TobitRow extends CensoredValue {
  /** One number for each predictor, the same predictors in each row. */
  readonly predictors: readonly number[];
}

export interface TobitFit {
  readonly intercept: Estimate;
  /** In the order of the predictors: change of the mean for each unit. */
  readonly slopes: readonly Estimate[];
  /** Maximum likelihood (divisor n without censoring). */
  readonly sd: number;
  readonly logSdSe: number;
  /** With all constants. */
  readonly logLikelihood: number;
}

export interface Estimate {
  readonly estimate: number;
  /** From the observed information, the sd being estimated too. */
  readonly se: number;
}

/**
 * `collinear`: one predictor follows from the others (or is constant); `no-spread`: the line goes through every exact value;
 * `no-finite-estimate`: the bounds let a slope or the sd run away, e.g. one group of which every value is only a bound.
 */
export type NoTobitReason = 'all-at-most' | 'all-at-least' | 'collinear' | 'no-spread' | 'no-finite-estimate';

/**
 * Linear regression on values some of which are only bounds (left, right or both), normal errors, by maximum likelihood.
 * Newton's method in (coefficients / sd, 1 / sd), where the log-likelihood is concave, so a damped step always converges to the one
 * maximum; without predictors it is `censoredNormalFit`. For readings give their natural logs: a slope is then the log of a ratio.
 * @param rows  at least one, all numbers finite
 * @returns the fit, or ok: false where no finite estimate with sd above 0 exists
 * @throws RangeError for no rows, rows of different length, or a number that is not finite
 * @accuracy 1e-6 against survreg of the R package survival 3.5-3 (its own stopping rule); score zero within rounding
 * @source tobin1958, olsen1978
 */
export function tobitFit(rows: readonly TobitRow[]): Result<TobitFit, NoTobitReason> {
  requireRows(rows);
  const exact = rows.filter(({ bound }) => bound === 'exact');
  if (exact.length === 0 && rows.every(({ bound }) => bound === 'at-most')) return { ok: false, reason: 'all-at-most' };
  if (exact.length === 0 && rows.every(({ bound }) => bound === 'at-least')) return { ok: false, reason: 'all-at-least' };

  const value = scaleOf(
    (exact.length > 0 ? exact : rows).map((row) => row.value),
    rows.map((row) => row.value),
  );
  const count = rows[0]?.predictors.length ?? 0;
  const scales = Array.from({ length: count }, (_, j) => scaleOf(rows.map((row) => row.predictors[j] as number)));
  const scaled = rows.map((row) => ({
    bound: row.bound,
    // The last entry belongs to 1 / sd: u = side · (theta · value - gamma · x) is side · (parameters · entries), with gamma negated here.
    entries: Float64Array.from([-1, ...row.predictors.map((x, j) => -scaled1(x, scales[j] as Scale)), scaled1(row.value, value)]),
  }));
  if (!choleskyFactor(crossProducts(scaled, count + 1), COLLINEAR)) return { ok: false, reason: 'collinear' };
  const top = climb(scaled, count + 2);
  return top.ok ? { ok: true, value: onOwnScale(top.value, { value, scales, exact: exact.length }) } : top;
}

function requireRows(rows: readonly TobitRow[]): void {
  if (rows.length === 0) throw new RangeError('rows must hold at least one row');
  const count = rows[0]?.predictors.length;
  for (const [i, row] of rows.entries()) {
    if (!Number.isFinite(row.value)) throw new RangeError(`rows.${i}.value must be finite: ${row.value}`);
    if (row.predictors.length !== count)
      throw new RangeError(`rows.${i}.predictors must be ${count} numbers, as in the first row: ${row.predictors.length}`);
    for (const [j, x] of row.predictors.entries())
      if (!Number.isFinite(x)) throw new RangeError(`rows.${i}.predictors.${j} must be finite: ${x}`);
  }
}

interface Scale {
  readonly centre: number;
  readonly unit: number;
}

/** Centred on the mean of `base`, in units of the largest distance from it; unit 1 where there is none. */
function scaleOf(base: readonly number[], all: readonly number[] = base): Scale {
  const centre = base.reduce((sum, v) => sum + v, 0) / base.length;
  const unit = all.reduce((most, v) => Math.max(most, Math.abs(v - centre)), 0);
  return { centre, unit: unit > 0 ? unit : 1 };
}
const scaled1 = (value: number, { centre, unit }: Scale): number => (value - centre) / unit;

interface ScaledRow {
  readonly bound: CensoredValue['bound'];
  readonly entries: Float64Array;
}

/** A predictor of which less than this share of its own spread is left beside the others has no digits for a slope. */
const COLLINEAR = 1e-12;

function crossProducts(rows: readonly ScaledRow[], size: number): Float64Array[] {
  const sums = Array.from({ length: size }, () => new Float64Array(size));
  for (const { entries } of rows) addOuter(sums, entries, 1, size);
  return sums;
}

/** Adds weight · v vᵀ to the lower triangle. */
function addOuter(matrix: readonly Float64Array[], v: Float64Array, weight: number, size: number): void {
  for (let i = 0; i < size; i++) {
    const row = matrix[i] as Float64Array;
    const own = weight * (v[i] as number);
    for (let j = 0; j <= i; j++) row[j] = (row[j] as number) + own * (v[j] as number);
  }
}

interface Top {
  readonly logLikelihood: number;
  readonly gradient: Float64Array;
  /** Minus the second derivatives, lower triangle. */
  readonly information: readonly Float64Array[];
}

/** The parameters are coefficients / sd, and last theta = 1 / sd. */
function slopeAt(rows: readonly ScaledRow[], at: Float64Array): Top {
  const size = at.length;
  const theta = at[size - 1] as number;
  const gradient = new Float64Array(size);
  const information = Array.from({ length: size }, () => new Float64Array(size));
  const last = information[size - 1] as Float64Array;
  let logLikelihood = 0;
  for (const { bound, entries } of rows) {
    const side = sideOf(bound);
    let u = 0;
    for (let j = 0; j < size; j++) u += (at[j] as number) * (entries[j] as number);
    const term = censoredTerm(bound, side * u);
    logLikelihood += term.logLikelihood;
    for (let j = 0; j < size; j++) gradient[j] = (gradient[j] as number) + side * term.slope * (entries[j] as number);
    addOuter(information, entries, term.curvature, size);
    if (bound === 'exact') {
      logLikelihood += theta > 0 ? Math.log(theta) : Number.NEGATIVE_INFINITY;
      gradient[size - 1] = (gradient[size - 1] as number) + 1 / theta;
      last[size - 1] = (last[size - 1] as number) + 1 / theta ** 2;
    }
  }
  return { logLikelihood, gradient, information };
}

interface Reached extends Top {
  readonly at: Float64Array;
  readonly factor: CholeskyFactor;
}

const MOST_STEPS = 200;
/** Values lie within 1 of the centre: a smaller 1 / sd is an sd without limit; a search that fails beyond the larger one went to sd 0. */
const [LEAST_THETA, LARGE_THETA] = [1e-9, 1e5];
/** As in `censoredNormalFit`: gain below which the full step is safe, and below which only rounding is left. */
const [CLOSE, DONE] = [1e-6, 1e-16];
/** A direction in which the likelihood is as flat as this goes on for ever: its bounds are all but certain already. */
const FLAT = 1e-10;

function climb(rows: readonly ScaledRow[], size: number): Result<Reached, 'no-spread' | 'no-finite-estimate'> {
  const none = (theta: number) => ({ ok: false, reason: theta > LARGE_THETA ? 'no-spread' : 'no-finite-estimate' }) as const;
  let at = new Float64Array(size);
  at[size - 1] = 1;
  let here = slopeAt(rows, at);
  for (let step = 0; step < MOST_STEPS; step++) {
    const theta = at[size - 1] as number;
    const factor = choleskyFactor(here.information);
    if (!factor) return none(theta);
    const move = choleskySolve(factor, here.gradient);
    const gain = move.reduce((sum, m, j) => sum + m * (here.gradient[j] as number), 0);
    if (gain <= DONE) {
      const isFlat = factor.some((row, j) => (row[j] as number) ** 2 < FLAT * Math.min(1, theta ** -2));
      return isFlat || !(theta > LEAST_THETA) ? none(theta) : { ok: true, value: { ...here, at, factor } };
    }
    let share = 1;
    let next = after(at, move, share);
    let there = slopeAt(rows, next);
    while (gain > CLOSE && !(there.logLikelihood >= here.logLikelihood + 1e-4 * share * gain)) {
      share /= 2;
      if (share < 1e-12) return none(theta);
      next = after(at, move, share);
      there = slopeAt(rows, next);
    }
    at = next;
    here = there;
  }
  return none(at[size - 1] as number);
}

const after = (at: Float64Array, move: Float64Array, share: number): Float64Array<ArrayBuffer> =>
  Float64Array.from(at, (a, j) => a + share * (move[j] as number));

interface Scales {
  readonly value: Scale;
  readonly scales: readonly Scale[];
  readonly exact: number;
}

/** Back from scaled values and predictors; standard errors by the delta method, as each coefficient is a sum of gamma / theta. */
function onOwnScale({ at, factor, logLikelihood }: Reached, { value, scales, exact }: Scales): TobitFit {
  const theta = at[at.length - 1] as number;
  const estimateOf = (weights: readonly number[], offset = 0): Estimate => {
    const estimate = weights.reduce((sum, w, j) => sum + (w * (at[j] as number)) / theta, 0);
    const slope = Float64Array.from([...weights.map((w) => w / theta), -estimate / theta]);
    const spread = choleskySolve(factor, slope);
    return { estimate: offset + estimate, se: Math.sqrt(slope.reduce((sum, s, j) => sum + s * (spread[j] as number), 0)) };
  };
  const unit = (j: number) =>
    Array.from({ length: scales.length + 1 }, (_, i) => (i === j ? value.unit / (scales[j - 1] as Scale).unit : 0));
  const logSd = Float64Array.from(at, (_, j) => (j === at.length - 1 ? -1 / theta : 0));
  return {
    intercept: estimateOf([value.unit, ...scales.map(({ centre, unit }) => (-value.unit * centre) / unit)], value.centre),
    slopes: scales.map((_, j) => estimateOf(unit(j + 1))),
    sd: value.unit / theta,
    logSdSe: Math.sqrt(logSd.reduce((sum, s, j) => sum + s * (choleskySolve(factor, logSd)[j] as number), 0)),
    logLikelihood: logLikelihood - exact * (0.5 * Math.log(2 * Math.PI) + Math.log(value.unit)),
  };
}
