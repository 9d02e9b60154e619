/**
 * Quantile of sorted values, linear between the two nearest (type 7 of Hyndman and Fan).
 * @param sorted  ascending, at least one
 * @param share   0..1
 * @throws RangeError for an empty list or a share outside 0..1
 */
export function quantileType7(sorted: ArrayLike<number>, share: number): number {
  if (sorted.length === 0) throw new RangeError('sorted must hold at least one value');
  if (!(share >= 0 && share <= 1)) throw new RangeError(`share must be 0..1: ${share}`);
  const place = (sorted.length - 1) * share;
  const below = sorted[Math.floor(place)] as number;
  const above = sorted[Math.ceil(place)] as number;
  return below + (above - below) * (place - Math.floor(place));
}
