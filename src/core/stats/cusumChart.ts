export interface CusumChart {
  /** Sum of what lies above +k; 0 or more. */
  readonly upper: readonly number[];
  /** Sum of what lies below -k; 0 or more. */
  readonly lower: readonly number[];
  /** Index of the first point at which one of the sums exceeds h; undefined without. */
  readonly firstSignal: number | undefined;
}

/**
 * Tabular cumulative sums to both sides. Both start at 0, are never negative, and go on unreset after a signal.
 * @param z  distance of each point from its target in sd, finite, oldest first
 * @param k  allowance in sd, 0 or more: half of the shift to be found
 * @param h  decision limit in sd, above 0
 * @throws RangeError naming z, k or h
 * @source page1954
 */
export function cusumChart(z: readonly number[], k: number, h: number): CusumChart {
  requireCusum(k, h);
  const [upper, lower]: [number[], number[]] = [[], []];
  let [up, down] = [0, 0];
  let firstSignal: number | undefined;
  for (const [i, value] of z.entries()) {
    if (!Number.isFinite(value)) throw new RangeError(`z.${i} must be finite: ${value}`);
    up = Math.max(0, up + value - k);
    down = Math.max(0, down - value - k);
    upper.push(up);
    lower.push(down);
    if (firstSignal === undefined && (up > h || down > h)) firstSignal = i;
  }
  return { upper, lower, firstSignal };
}

/** @throws RangeError naming k or h */
export function requireCusum(k: number, h: number): void {
  if (!(k >= 0 && Number.isFinite(k))) throw new RangeError(`k must be 0 or more: ${k}`);
  if (!(h > 0 && Number.isFinite(h))) throw new RangeError(`h must be above 0: ${h}`);
}
