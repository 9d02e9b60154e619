export interface PairMoments {
  readonly n: number;
  readonly meanA: number;
  readonly meanB: number;
  /** Sums of squares and of products about the means. */
  readonly saa: number;
  readonly sbb: number;
  readonly sab: number;
}

/**
 * Means, sums of squares and sum of products of paired values.
 * Measured from the first pair, so that equal values give a sum of squares of exactly 0 and a far-off level costs no digits.
 * @param a  n values, finite
 * @param b  n values, finite, b[i] belongs to a[i]
 * @throws RangeError naming the value, or for lists of different length or none
 */
export function pairMoments(a: readonly number[], b: readonly number[]): PairMoments {
  requirePairs(a, b);
  const n = a.length;
  const [originA = 0, originB = 0] = [a[0], b[0]];
  let [sumA, sumB] = [0, 0];
  for (let i = 0; i < n; i++) {
    sumA += (a[i] as number) - originA;
    sumB += (b[i] as number) - originB;
  }
  const [shiftA, shiftB] = [sumA / n, sumB / n];
  let [saa, sbb, sab] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const da = (a[i] as number) - originA - shiftA;
    const db = (b[i] as number) - originB - shiftB;
    saa += da * da;
    sbb += db * db;
    sab += da * db;
  }
  return { n, meanA: originA + shiftA, meanB: originB + shiftB, saa, sbb, sab };
}

/** @throws RangeError naming the value, or for lists of different length or none */
export function requirePairs(a: readonly number[], b: readonly number[]): void {
  if (a.length === 0) throw new RangeError('a must hold at least one value');
  if (a.length !== b.length) throw new RangeError(`b must hold as many values as a: ${b.length} instead of ${a.length}`);
  a.forEach((value, i) => {
    if (!Number.isFinite(value)) throw new RangeError(`a.${i} must be finite: ${value}`);
  });
  b.forEach((value, i) => {
    if (!Number.isFinite(value)) throw new RangeError(`b.${i} must be finite: ${value}`);
  });
}
