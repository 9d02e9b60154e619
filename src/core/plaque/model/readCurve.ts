// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import type { DayCurve } from '../types.ts';

const HALVINGS = 40;

type Steps = Pick<DayCurve, 'stepMinutes' | 'stepPh'>;

/**
 * Slopes at the steps for a cubic between each two of them that never leaves their range: the curve has a kink where an exposure begins,
 * and a cubic through it would swing.
 * @source steffen1990
 */
function monotoneSlopes({ stepMinutes, stepPh }: Steps): Float64Array {
  const last = stepMinutes.length - 1;
  const slopes = new Float64Array(last + 1);
  const secant = (i: number) => (stepPh[i + 1]! - stepPh[i]!) / (stepMinutes[i + 1]! - stepMinutes[i]!);
  slopes[0] = secant(0);
  slopes[last] = secant(last - 1);
  for (let i = 1; i < last; i += 1) {
    const [left, right] = [secant(i - 1), secant(i)];
    const [before, after] = [stepMinutes[i]! - stepMinutes[i - 1]!, stepMinutes[i + 1]! - stepMinutes[i]!];
    const parabola = (left * after + right * before) / (before + after);
    const least = Math.min(Math.abs(left), Math.abs(right), Math.abs(parabola) / 2);
    slopes[i] = (Math.sign(left) + Math.sign(right)) * least;
  }
  return slopes;
}

/** Hermite's cubic in one stretch, at a share of it. */
function cubicAt({ stepMinutes, stepPh }: Steps, slopes: Float64Array, i: number, share: number): number {
  const width = stepMinutes[i + 1]! - stepMinutes[i]!;
  const rest = 1 - share;
  const start = stepPh[i]! * (1 + 2 * share) + width * slopes[i]! * share;
  const end = stepPh[i + 1]! * (3 - 2 * share) - width * slopes[i + 1]! * rest;
  return start * rest * rest + end * share * share;
}

/** The pH at the tooth at every minute. @param minutes  last minute, at most that of the last step */
export function phByMinute(steps: Steps, minutes: number): Float64Array {
  const slopes = monotoneSlopes(steps);
  const { stepMinutes } = steps;
  const ph = new Float64Array(Math.floor(minutes) + 1);
  let i = 0;
  for (let minute = 0; minute < ph.length; minute += 1) {
    while (i < stepMinutes.length - 2 && stepMinutes[i + 1]! <= minute) i += 1;
    ph[minute] = cubicAt(steps, slopes, i, (minute - stepMinutes[i]!) / (stepMinutes[i + 1]! - stepMinutes[i]!));
  }
  return ph;
}

/**
 * Minutes of the day for which the pH at the tooth is below a line, with the moments of crossing found between the steps.
 * @param linePh  2 to 12
 * @throws RangeError outside this range
 */
export function minutesBelow(curve: Steps, linePh: number): number {
  return minutesBelowEach(curve, [linePh])[0] ?? Number.NaN;
}

/** The same for several lines, in their order. @throws RangeError outside the range of a line */
export function minutesBelowEach(curve: Steps, linesPh: readonly number[]): readonly number[] {
  const slopes = monotoneSlopes(curve);
  return linesPh.map((linePh) => sumBelow(curve, slopes, linePh));
}

function sumBelow(curve: Steps, slopes: Float64Array, linePh: number): number {
  if (!(linePh >= 2 && linePh <= 12)) throw new RangeError(`linePh must be 2 to 12: ${linePh}`);
  const { stepMinutes, stepPh } = curve;
  let sum = 0;
  for (let i = 0; i < stepMinutes.length - 1; i += 1) {
    const startsBelow = stepPh[i]! < linePh;
    const width = stepMinutes[i + 1]! - stepMinutes[i]!;
    if (startsBelow !== stepPh[i + 1]! < linePh) {
      const share = crossing(curve, slopes, i, linePh);
      sum += width * (startsBelow ? share : 1 - share);
    } else if (startsBelow) sum += width;
  }
  return sum;
}

/** Where the cubic, which only rises or only falls in a stretch, meets the line. */
function crossing(curve: Steps, slopes: Float64Array, i: number, linePh: number): number {
  const startsBelow = curve.stepPh[i]! < linePh;
  let [low, high] = [0, 1];
  for (let round = 0; round < HALVINGS; round += 1) {
    const middle = (low + high) / 2;
    if (cubicAt(curve, slopes, i, middle) < linePh === startsBelow) low = middle;
    else high = middle;
  }
  return high;
}
