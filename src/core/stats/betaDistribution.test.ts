import { expect, test } from 'vitest';
import { betaCdf, betaQuantile } from './betaDistribution.ts';

// R 4.2.2, qbeta(p, shape1, shape2). Tolerance: 1e-12 relative.
test.each([
  { p: 0.025, shape1: 1, shape2: 29, x: 0.00087264688357992204 },
  { p: 0.975, shape1: 16, shape2: 133, x: 0.16165049034947898 },
  { p: 0.5, shape1: 0.5, shape2: 0.5, x: 0.5 },
  { p: 0.01, shape1: 3000, shape2: 2, x: 0.99779003020156198 },
])('quantile at $p with $shape1 and $shape2', ({ p, shape1, shape2, x }) => {
  expect(Math.abs(betaQuantile(p, shape1, shape2) / x - 1)).toBeLessThan(1e-12);
});

// R 4.2.2, pbeta(x, shape1, shape2). Tolerance: 1e-12 relative.
test.each([
  { x: 0.1, shape1: 1, shape2: 29, p: 0.95289871302753759 },
  { x: 0.999, shape1: 0.5, shape2: 0.5, p: 0.97986495836662257 },
])('cdf at $x with $shape1 and $shape2', ({ x, shape1, shape2, p }) => {
  expect(Math.abs(betaCdf(x, shape1, shape2) / p - 1)).toBeLessThan(1e-12);
});

test('refuses a shape of 0', () => expect(() => betaQuantile(0.5, 0, 1)).toThrow(/shape1 must be/));
