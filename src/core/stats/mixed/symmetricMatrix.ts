/** A square matrix by rows. Sizes here are those of a few fixed effects and operators. */
export type Matrix = readonly (readonly number[])[];

/** Lower triangle of L with L L' = matrix, or undefined where the matrix is not positive definite to rounding. */
export function choleskyFactor(matrix: Matrix): number[][] | undefined {
  const factor: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const made: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j < i ? factor[j] : made;
      let sum = row[j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (made[k] ?? 0) * (other?.[k] ?? 0);
      if (j < i) made.push(sum / (other?.[j] ?? 0));
      else if (sum > ROUNDING * (row[i] ?? 0)) made.push(Math.sqrt(sum));
      else return undefined;
    }
    factor.push(made);
  }
  return factor;
}

/** What is left of a diagonal element that is rounding alone: its column is a combination of those before it. */
const ROUNDING = 1e-12;

/** ln of the determinant of the matrix with this factor. */
export const logDeterminant = (factor: Matrix): number => 2 * factor.reduce((sum, row, i) => sum + Math.log(row[i] ?? 0), 0);

/** x with matrix x = right. */
export function solveCholesky(factor: Matrix, right: readonly number[]): number[] {
  const x = [...right];
  for (const [i, row] of factor.entries()) {
    let sum = x[i] ?? 0;
    for (let k = 0; k < i; k++) sum -= (row[k] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (row[i] ?? 0);
  }
  for (let i = factor.length - 1; i >= 0; i--) {
    let sum = x[i] ?? 0;
    for (let k = i + 1; k < factor.length; k++) sum -= (factor[k]?.[i] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (factor[i]?.[i] ?? 0);
  }
  return x;
}

export const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);

export const multiply = (matrix: Matrix, vector: readonly number[]): number[] => matrix.map((row) => dot(row, vector));

/** Inverse of the matrix with this factor. */
export const invertCholesky = (factor: Matrix): number[][] =>
  factor.map((_, i) =>
    solveCholesky(
      factor,
      factor.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
