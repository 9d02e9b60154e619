import { expect, test } from 'vitest';
import { gaussLegendre } from './gaussLegendre.ts';

// Exact moments of (-1, 1): 2 / (degree + 1) for an even degree up to 2n - 1. Tolerance: 2e-14.
test.each([1, 2, 3, 5, 16, 33, 200])('%i nodes integrate every power up to 2n - 1', (n) => {
  const { nodes, weights } = gaussLegendre(n);
  for (let degree = 0; degree < 2 * n; degree++) {
    const sum = nodes.reduce((total, x, i) => total + (weights[i] ?? 0) * x ** degree, 0);
    expect(Math.abs(sum - (degree % 2 === 0 ? 2 / (degree + 1) : 0))).toBeLessThan(2e-14);
  }
  expect([...nodes]).toEqual([...nodes].sort((a, b) => a - b));
});

test.each([0, 1.5, 2001, Number.NaN])('refuses %s nodes', (n) => expect(() => gaussLegendre(n)).toThrow(RangeError));
