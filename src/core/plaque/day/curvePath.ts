/** Where a value of the curve stands in a picture. */
export interface CurveScale {
  readonly x: (minute: number) => number;
  readonly y: (ph: number) => number;
}

/** A neighbour off the straight line by less than this is not drawn, pH. */
const STRAIGHT_PH = 1e-3;

const point = ({ x, y }: CurveScale, minute: number, ph: number): string => `${x(minute).toFixed(1)} ${y(ph).toFixed(1)}`;

/** Path of a line through one value for each minute; minutes that a straight line passes anyway are left out. */
export function curvePath(ph: ArrayLike<number>, scale: CurveScale): string {
  return `M${listPoints(ph, scale).join('L')}`;
}

/** Path of the area between two such lines. */
export function bandPath(low: ArrayLike<number>, high: ArrayLike<number>, scale: CurveScale): string {
  return `M${[...listPoints(high, scale), ...listPoints(low, scale).reverse()].join('L')}Z`;
}

function listPoints(ph: ArrayLike<number>, scale: CurveScale): string[] {
  const points: string[] = [];
  let [drawnAt, drawn] = [-1, Number.NaN];
  for (let minute = 0; minute < ph.length; minute += 1) {
    const [here = Number.NaN, next] = [ph[minute], ph[minute + 1]];
    const slope = (here - drawn) / (minute - drawnAt);
    if (next !== undefined && drawnAt >= 0 && Math.abs(here + slope - next) < STRAIGHT_PH) continue;
    points.push(point(scale, minute, here));
    [drawnAt, drawn] = [minute, here];
  }
  return points;
}
