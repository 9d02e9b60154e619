import type { Bound } from '../reading/types.ts';
import { inverseMills, normalLogCdf } from './normal.ts';

/** One value's part of a censored normal log-likelihood, as a function of u = ± (value - mean) / sd; without constants and log sd. */
export interface CensoredTerm {
  readonly logLikelihood: number;
  /** d/du and -d²/du². */
  readonly slope: number;
  readonly curvature: number;
}

/** -1 for `at-least`: u then counts from the other side, so that a bound is always the log of cdf(u). */
export const sideOf = (bound: Bound): 1 | -1 => (bound === 'at-least' ? -1 : 1);

export function censoredTerm(bound: Bound, u: number): CensoredTerm {
  if (bound === 'exact') return { logLikelihood: -0.5 * u * u, slope: -u, curvature: 1 };
  const slope = inverseMills(u);
  return { logLikelihood: normalLogCdf(u), slope, curvature: slope * (u + slope) };
}
