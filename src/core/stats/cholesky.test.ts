import fc from 'fast-check';
import { expect, test } from 'vitest';
import { choleskyFactor, choleskySolve } from './cholesky.ts';

test('solves what a product of a matrix with itself asks', () => {
  const entry = fc.oneof(fc.integer({ min: -2, max: 2 }), fc.double({ min: -5, max: 5, noNaN: true }));
  const squares = fc
    .integer({ min: 1, max: 5 })
    .chain((n) => fc.array(fc.array(entry, { minLength: n, maxLength: n }), { minLength: n, maxLength: n }));
  fc.assert(
    fc.property(squares, (rows) => {
      // Plus the identity, so that it is never singular.
      const matrix = rows.map((a, i) => rows.map((b, j) => a.reduce((sum, v, k) => sum + v * (b[k] ?? 0), i === j ? 1 : 0)));
      const want = rows.map((_, i) => i - 1);
      const right = matrix.map((row) => row.reduce((sum, v, j) => sum + v * (want[j] ?? 0), 0));
      const factor = choleskyFactor(matrix);
      expect(factor).toBeDefined();
      if (factor) for (const [i, x] of choleskySolve(factor, right).entries()) expect(x).toBeCloseTo(want[i] ?? 0, 8);
    }),
  );
});

test('has no factor where a pivot is 0, negative, or lost in rounding', () => {
  expect(choleskyFactor([[1], [1, 1]])).toBe(undefined);
  expect(choleskyFactor([[-1]])).toBe(undefined);
  expect(choleskyFactor([[Number.NaN]])).toBe(undefined);
  expect(choleskyFactor([[1], [1, 1 + 1e-10]], 1e-8)).toBe(undefined);
  expect(choleskyFactor([[1], [1, 1 + 1e-10]])).toBeDefined();
});
