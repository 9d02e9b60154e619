import { requirePositive } from '../reading/requirePositive.ts';
import { normalQuantile, Z_95 } from '../stats/normal.ts';
import type { Result } from '../stats/result.ts';
import { studentTQuantile } from '../stats/studentT.ts';
import { FEWEST_PAIRS } from './comparePairs.ts';

export interface PairNoise {
  /** sd of ln(reading) of one swab of one solution, above 0. */
  readonly sdLogSingle: number;
  /** Whether the comparison will rest on this noise (`knownSdLog`) or on the scatter of its own pairs, the default. */
  readonly isKnown?: boolean | undefined;
}

export interface PairsForWidth {
  readonly pairs: number;
  /** What that number is expected to give: ratio times or divided by 1 + this. */
  readonly expectedFraction: number;
}

/** Beyond this nobody will do it; the swab is then too noisy for the width. */
export const MOST_PAIRS_PLANNED = 500;

/**
 * Number of pairs for a wanted width of the interval of a ratio: the smallest whose expected half width on the log scale is no wider than
 * ln(1 + halfWidthFraction). Half width = quantile x sqrt(2) sdLogSingle / sqrt(pairs); with the noise of the pairs themselves the quantile
 * is of t, and the seen sd is expected a little under the true one.
 * @param halfWidthFraction  above 0: 0.1 = from 10 % below to 10 % above, on the log scale
 * @returns `too-noisy` above 500 pairs; never under the five that a comparison needs
 * @throws RangeError naming the field
 * @accuracy expected width within 2 % of 4,000 simulated studies (test beside this file)
 * @source project
 */
export function pairsForWidth(noise: PairNoise, halfWidthFraction: number): Result<PairsForWidth, 'too-noisy'> {
  requirePositive(halfWidthFraction, 'halfWidthFraction');
  requirePositive(noise.sdLogSingle, 'sdLogSingle');
  const wanted = Math.log1p(halfWidthFraction);
  for (let pairs = FEWEST_PAIRS; pairs <= MOST_PAIRS_PLANNED; pairs++) {
    const expected = expectedHalfWidth(noise, pairs);
    if (expected <= wanted) return { ok: true, value: { pairs, expectedFraction: Math.expm1(expected) } };
  }
  return { ok: false, reason: 'too-noisy' };
}

/**
 * Number of pairs that a comparison needs to end with "same" in `chance` of all studies where the two are the same.
 * @param withinFraction  what counts as the same, above 0
 * @param chance          above 0 and below 1, e.g. 0.8
 * @returns `too-noisy` above 500 pairs
 * @throws RangeError naming the field
 * @accuracy chance within 0.04 of 4,000 simulated studies (test beside this file)
 * @source project
 */
export function pairsForSame(
  noise: PairNoise,
  { withinFraction, chance }: { readonly withinFraction: number; readonly chance: number },
): Result<{ readonly pairs: number }, 'too-noisy'> {
  requirePositive(withinFraction, 'withinFraction');
  requirePositive(noise.sdLogSingle, 'sdLogSingle');
  if (!(chance > 0 && chance < 1)) throw new RangeError(`chance must be between 0 and 1, exclusive: ${chance}`);
  const reach = Math.log1p(withinFraction);
  const sd = Math.SQRT2 * noise.sdLogSingle;
  for (let pairs = FEWEST_PAIRS; pairs <= MOST_PAIRS_PLANNED; pairs++) {
    // Same is said when the seen ratio lies within what the interval leaves of the limits, on both sides.
    const room = (reach * Math.sqrt(pairs)) / sd - quantileAt(noise, 0.975, pairs);
    if (room >= quantileAt(noise, (1 + chance) / 2, pairs)) return { ok: true, value: { pairs } };
  }
  return { ok: false, reason: 'too-noisy' };
}

const quantileAt = ({ isKnown = false }: PairNoise, p: number, pairs: number): number =>
  isKnown ? normalQuantile(p) : studentTQuantile(p, pairs - 1);

function expectedHalfWidth({ sdLogSingle, isKnown = false }: PairNoise, pairs: number): number {
  const sd = Math.SQRT2 * sdLogSingle;
  if (isKnown) return (Z_95 * sd) / Math.sqrt(pairs);
  // Mean of a sample sd over the true one, to 1 in 1,000 from five pairs on.
  const meanSd = (4 * pairs - 4) / (4 * pairs - 3);
  return (studentTQuantile(0.975, pairs - 1) * meanSd * sd) / Math.sqrt(pairs);
}
