import type { Bound } from '../reading/types.ts';
import { censoredTerm, sideOf } from './censoredTerm.ts';
import type { Result } from './result.ts';

export interface CensoredValue {
  readonly value: number;
  /** at-most: the true value is `value` or lower; at-least: `value` or higher. */
  readonly bound: Bound;
}

export interface CensoredNormalFit {
  readonly mean: number;
  /** Maximum likelihood (divisor n without censoring). */
  readonly sd: number;
  /** Standard error of the mean from the observed information, the sd being estimated too. */
  readonly meanSe: number;
  /** Sum of log densities (exact values) and log probabilities (bounds), with all constants. */
  readonly logLikelihood: number;
}

/** `no-spread`: every exact value is the same and no bound contradicts it, so the likelihood grows without limit as sd goes to 0. */
export type NoFitReason = 'all-at-most' | 'all-at-least' | 'no-spread' | 'no-finite-estimate';

/**
 * Mean and sd of a normal distribution from exact, left- and right-censored values, by maximum likelihood.
 * Newton's method in (mean / sd, 1 / sd), where the log-likelihood is concave, so a damped step always converges to the one maximum.
 * @param values  at least one, finite
 * @returns the fit, or ok: false where no finite estimate with sd above 0 exists
 * @throws RangeError for an empty list or a value that is not finite
 * @accuracy 1e-6 against survreg of the R package survival 3.5-3 (its own stopping rule); score zero within rounding
 * @source olsen1978
 */
export function censoredNormalFit(values: readonly CensoredValue[]): Result<CensoredNormalFit, NoFitReason> {
  if (values.length === 0) throw new RangeError('values must hold at least one value');
  for (const { value } of values) if (!Number.isFinite(value)) throw new RangeError(`values must be finite: ${value}`);
  const reason = whyNoFit(values);
  if (reason !== undefined) return { ok: false, reason };

  const exact = values.filter((v) => v.bound === 'exact');
  // Centred on the exact values: a far bound must not cost the digits of values that lie close together.
  const base = exact.length > 0 ? exact : values;
  const centre = base.reduce((sum, v) => sum + v.value, 0) / base.length;
  const scale = Math.max(...values.map((v) => Math.abs(v.value - centre)));
  if (!(scale > LEAST_SCALE)) return { ok: false, reason: exact.length > 0 ? 'no-spread' : 'no-finite-estimate' };
  const scaled = values.map((v) => ({ value: (v.value - centre) / scale, bound: v.bound }));
  const top = climb(scaled);
  if (top === undefined) return { ok: false, reason: 'no-finite-estimate' };

  const { eta, theta } = top.at;
  const { ee, et, tt } = top.information;
  // Delta method for eta / theta; at the maximum this equals the observed information in (mean, log sd).
  const variance = (tt + (2 * et * eta) / theta + (ee * eta ** 2) / theta ** 2) / ((ee * tt - et ** 2) * theta ** 2);
  return {
    ok: true,
    value: {
      mean: centre + (scale * eta) / theta,
      sd: scale / theta,
      meanSe: scale * Math.sqrt(variance),
      logLikelihood: top.logLikelihood - exact.length * (0.5 * Math.log(2 * Math.PI) + Math.log(scale)),
    },
  };
}

/** Values closer than this are one value: their spread has no digits left. */
const LEAST_SCALE = 1e-100;

function whyNoFit(values: readonly CensoredValue[]): NoFitReason | undefined {
  const of = (bound: Bound) => values.filter((v) => v.bound === bound).map((v) => v.value);
  const [exact, atMost, atLeast] = [of('exact'), of('at-most'), of('at-least')];
  const [lowestAtMost, highestAtLeast] = [Math.min(...atMost), Math.max(...atLeast)];
  const only = exact[0];
  if (only !== undefined) {
    const allAgree = exact.every((v) => v === only) && lowestAtMost >= only && highestAtLeast <= only;
    return allAgree ? 'no-spread' : undefined;
  }
  if (atLeast.length === 0) return 'all-at-most';
  if (atMost.length === 0) return 'all-at-least';
  // Bounds alone say something only where they overlap in both directions.
  const overlap = lowestAtMost < highestAtLeast && Math.min(...atLeast) < Math.max(...atMost);
  return overlap ? undefined : 'no-finite-estimate';
}

interface Point {
  /** mean / sd */
  readonly eta: number;
  /** 1 / sd */
  readonly theta: number;
}
interface Slope {
  readonly logLikelihood: number;
  readonly gradient: Point;
  /** Minus the second derivatives, by eta and theta. */
  readonly information: { readonly ee: number; readonly et: number; readonly tt: number };
}

/** Log-likelihood without its constants. NaN-free for every theta > 0; -Infinity where theta <= 0 and an exact value is present. */
function slopeAt(values: readonly CensoredValue[], { eta, theta }: Point): Slope {
  let logLikelihood = 0;
  let [ge, gt, ee, et, tt] = [0, 0, 0, 0, 0];
  for (const { value, bound } of values) {
    const side = sideOf(bound);
    const term = censoredTerm(bound, side * (theta * value - eta));
    const { slope: first, curvature } = term;
    logLikelihood += term.logLikelihood;
    if (bound === 'exact') {
      logLikelihood += theta > 0 ? Math.log(theta) : Number.NEGATIVE_INFINITY;
      gt += 1 / theta;
      tt += 1 / theta ** 2;
    }
    ge -= side * first;
    gt += side * first * value;
    ee += curvature;
    et -= curvature * value;
    tt += curvature * value ** 2;
  }
  return { logLikelihood, gradient: { eta: ge, theta: gt }, information: { ee, et, tt } };
}

const MOST_STEPS = 200;
/** Values lie within 1 of the centre here: a smaller 1 / sd is rounding about 0, an sd without limit. */
const LEAST_THETA = 1e-9;
/** Gain left to win (Newton decrement, in log-likelihood) below which the full step is safe and the line search only sees rounding. */
const CLOSE = 1e-6;
/** Gain below which only rounding is left; one more step is then taken. */
const DONE = 1e-16;

/** The maximum, or undefined when it is not at a positive theta or was not reached. */
function climb(values: readonly CensoredValue[]): (Slope & { readonly at: Point }) | undefined {
  let at: Point = { eta: 0, theta: 1 };
  let here = slopeAt(values, at);
  for (let step = 0; step < MOST_STEPS; step++) {
    const { ee, et, tt } = here.information;
    const determinant = ee * tt - et ** 2;
    if (!(determinant > 0)) return undefined;
    const { eta: ge, theta: gt } = here.gradient;
    const move = { eta: (tt * ge - et * gt) / determinant, theta: (ee * gt - et * ge) / determinant };
    const gain = ge * move.eta + gt * move.theta;
    let share = 1;
    let next = after(at, move, share);
    let there = slopeAt(values, next);
    while (gain > CLOSE && !(there.logLikelihood >= here.logLikelihood + 1e-4 * share * gain)) {
      share /= 2;
      if (share < 1e-12) return undefined;
      next = after(at, move, share);
      there = slopeAt(values, next);
    }
    at = next;
    here = there;
    if (gain <= DONE) return at.theta > LEAST_THETA ? { ...here, at } : undefined;
  }
  return undefined;
}

const after = (at: Point, move: Point, share: number): Point => ({
  eta: at.eta + share * move.eta,
  theta: at.theta + share * move.theta,
});
