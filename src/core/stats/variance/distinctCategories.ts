/**
 * How many groups of parts the gauge can tell apart: sqrt(2) x sd of the parts / sd of the gauge, rounded down, at least 1.
 * @param partVariance   0 or more
 * @param gaugeVariance  above 0
 * @throws RangeError for a gauge without variance
 * @source aiag-msa4
 */
export function distinctCategories(partVariance: number, gaugeVariance: number): number {
  if (!(gaugeVariance > 0)) throw new RangeError(`gaugeVariance must be above 0: ${gaugeVariance}`);
  return Math.max(1, Math.floor(Math.SQRT2 * Math.sqrt(partVariance / gaugeVariance)));
}
