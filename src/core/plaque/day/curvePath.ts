import type { Span } from './nightSpans.ts';

/** Where a value of the curve stands in a picture. */
export interface CurveScale {
  readonly x: (minute: number) => number;
  readonly y: (ph: number) => number;
}

/** How far a drawn line may pass a value, pH. */
const STRAIGHT_PH = 1e-3;

const point = ({ x, y }: CurveScale, minute: number, ph: number): string => `${x(minute).toFixed(1)} ${y(ph).toFixed(1)}`;

/** Path of a line through one value for each minute; minutes that a straight line passes anyway are left out. */
export function curvePath(ph: ArrayLike<number>, scale: CurveScale): string {
  return `M${listPoints(ph, scale).join('L')}`;
}

/** The same line in pieces of so many minutes, each beginning where the one before it ends: what stays the same need not be drawn again. */
export function curvePieces(ph: ArrayLike<number>, scale: CurveScale, minutes: number): readonly string[] {
  const count = Math.ceil((ph.length - 1) / minutes);
  return Array.from({ length: count }, (_, i) => {
    const span = { from: i * minutes, to: Math.min((i + 1) * minutes, ph.length - 1) };
    return `M${listPoints(ph, scale, span).join('L')}`;
  });
}

/** Path of the area between two such lines. */
export function bandPath(low: ArrayLike<number>, high: ArrayLike<number>, scale: CurveScale): string {
  return `M${[...listPoints(high, scale), ...listPoints(low, scale).reverse()].join('L')}Z`;
}

/**
 * Points of a line that leaves no value further off than the tolerance: from each point as far as one straight line still serves all
 * values on the way.
 */
function listPoints(ph: ArrayLike<number>, scale: CurveScale, span: Span = { from: 0, to: ph.length - 1 }): string[] {
  const points: string[] = [];
  let { from } = span;
  const draw = (minute: number) => {
    points.push(point(scale, minute, ph[minute] ?? Number.NaN));
    from = minute;
  };
  draw(from);
  let [lowest, highest] = ANY_SLOPE;
  for (let minute = from + 1; minute <= span.to; minute += 1) {
    const slope = slopeTo(ph, from, minute, 0);
    if (!(slope >= lowest && slope <= highest)) {
      draw(minute - 1);
      [lowest, highest] = ANY_SLOPE;
    }
    lowest = Math.max(lowest, slopeTo(ph, from, minute, -STRAIGHT_PH));
    highest = Math.min(highest, slopeTo(ph, from, minute, STRAIGHT_PH));
  }
  if (span.to > span.from) draw(span.to);
  return points;
}

const ANY_SLOPE = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;

/** Change of pH a minute from one value to beside another. */
const slopeTo = (ph: ArrayLike<number>, from: number, to: number, beside: number): number =>
  ((ph[to] ?? Number.NaN) + beside - (ph[from] ?? Number.NaN)) / (to - from);
