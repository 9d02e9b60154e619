/** Lower triangle L with L Lᵀ = the matrix, row by row. */
export type CholeskyFactor = readonly Float64Array[];

/**
 * Cholesky factor of a symmetric matrix, of which the lower triangle is read.
 * @param leastPivot  relative to the diagonal entry: a pivot that loses more digits counts as 0
 * @returns undefined unless every pivot is above that, NaN included
 */
export function choleskyFactor(matrix: readonly ArrayLike<number>[], leastPivot = 0): CholeskyFactor | undefined {
  const factor: Float64Array[] = [];
  for (const [i, row] of matrix.entries()) {
    const own = new Float64Array(i + 1);
    for (let j = 0; j <= i; j++) {
      const other = j === i ? own : (factor[j] as Float64Array);
      let left = row[j] as number;
      for (let k = 0; k < j; k++) left -= (own[k] as number) * (other[k] as number);
      if (j === i && !(left > leastPivot * (row[i] as number) && left < Number.POSITIVE_INFINITY)) return undefined;
      own[j] = j === i ? Math.sqrt(left) : left / (other[j] as number);
    }
    factor.push(own);
  }
  return factor;
}

/** The solution of matrix · x = right. */
export function choleskySolve(factor: CholeskyFactor, right: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(right);
  for (const [i, row] of factor.entries()) {
    for (let k = 0; k < i; k++) x[i] = (x[i] as number) - (row[k] as number) * (x[k] as number);
    x[i] = (x[i] as number) / (row[i] as number);
  }
  for (let i = factor.length - 1; i >= 0; i--) {
    const row = factor[i] as Float64Array;
    x[i] = (x[i] as number) / (row[i] as number);
    for (let k = 0; k < i; k++) x[k] = (x[k] as number) - (row[k] as number) * (x[i] as number);
  }
  return x;
}
