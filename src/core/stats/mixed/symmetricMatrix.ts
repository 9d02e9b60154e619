import { type CholeskyFactor, choleskyFactor, choleskySolve } from '../cholesky.ts';

/** A square matrix by rows. Sizes here are those of a few fixed effects and operators. */
export type Matrix = readonly (readonly number[])[];

/** What is left of a diagonal element that is rounding alone: its column is a combination of those before it. */
const ROUNDING = 1e-12;

/** undefined where a column is a combination of those before it. */
export const factorOf = (matrix: Matrix): CholeskyFactor | undefined => choleskyFactor(matrix, ROUNDING);

/** ln of the determinant of the matrix with this factor. */
export const logDeterminant = (factor: CholeskyFactor): number => 2 * factor.reduce((sum, row, i) => sum + Math.log(row[i] ?? 0), 0);

/** x with matrix x = right. */
export const solve = (factor: CholeskyFactor, right: readonly number[]): number[] => Array.from(choleskySolve(factor, right));

/** Inverse of the matrix with this factor. */
export const invert = (factor: CholeskyFactor): number[][] =>
  factor.map((_, i) =>
    solve(
      factor,
      factor.map((__, j) => (i === j ? 1 : 0)),
    ),
  );

export const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);

export const multiply = (matrix: Matrix, vector: readonly number[]): number[] => matrix.map((row) => dot(row, vector));
