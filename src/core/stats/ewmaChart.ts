export interface EwmaChart {
  readonly values: readonly number[];
  /** Half-width of the limits at each point, in sd of one value: narrow at first, as the average then rests on few points. */
  readonly halfWidths: readonly number[];
  /** Index of the first average beyond its limits; undefined without. */
  readonly firstSignal: number | undefined;
}

/**
 * Exponentially weighted moving average from 0, with the exact limits of each point: limit · sqrt(lambda (1 - (1 - lambda)^2i) / (2 - lambda)).
 * @param z       distance of each point from its target in sd, finite, oldest first
 * @param lambda  weight of the newest point, above 0 up to 1 (1 is the chart of single values)
 * @param limit   in sd of the average, above 0
 * @throws RangeError naming z, lambda or limit
 * @source roberts1959
 */
export function ewmaChart(z: readonly number[], lambda: number, limit: number): EwmaChart {
  requireEwma(lambda, limit);
  const [values, halfWidths]: [number[], number[]] = [[], []];
  let average = 0;
  let firstSignal: number | undefined;
  for (const [i, value] of z.entries()) {
    if (!Number.isFinite(value)) throw new RangeError(`z.${i} must be finite: ${value}`);
    average = lambda * value + (1 - lambda) * average;
    const halfWidth = limit * Math.sqrt((lambda * (1 - (1 - lambda) ** (2 * (i + 1)))) / (2 - lambda));
    values.push(average);
    halfWidths.push(halfWidth);
    if (firstSignal === undefined && Math.abs(average) > halfWidth) firstSignal = i;
  }
  return { values, halfWidths, firstSignal };
}

/** @throws RangeError naming lambda or limit */
export function requireEwma(lambda: number, limit: number): void {
  if (!(lambda > 0 && lambda <= 1)) throw new RangeError(`lambda must be above 0 and at most 1: ${lambda}`);
  if (!(limit > 0 && Number.isFinite(limit))) throw new RangeError(`limit must be above 0: ${limit}`);
}
