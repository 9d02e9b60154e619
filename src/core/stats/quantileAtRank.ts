/**
 * The value at a rank that need not be whole, linear between the two nearest.
 * @param values  at least one, any order
 * @param rank    1 (smallest) to n (largest)
 * @throws RangeError for a rank outside 1..n
 */
export function quantileAtRank(values: readonly number[], rank: number): number {
  if (!(rank >= 1 && rank <= values.length)) throw new RangeError(`rank must be 1..${values.length}: ${rank}`);
  const sorted = [...values].sort((a, b) => a - b);
  const below = sorted[Math.floor(rank) - 1] as number;
  const above = sorted[Math.ceil(rank) - 1] as number;
  return below + (above - below) * (rank - Math.floor(rank));
}
