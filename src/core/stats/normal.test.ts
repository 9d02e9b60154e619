import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { inverseMills, normalCdf, normalLogCdf, normalQuantile, Z_95 } from './normal.ts';

// Quantiles of the standard normal distribution to 16 digits, computed with R 4.2.2 (qnorm). Tolerance: 4e-16 relative.
test.each([
  { p: 0.975, z: 1.959963984540054 },
  { p: 0.95, z: 1.6448536269514722 },
  { p: 0.9, z: 1.2815515655446004 },
  { p: 0.995, z: 2.5758293035489004 },
  { p: 0.025, z: -1.959963984540054 },
  { p: 1e-10, z: -6.361340902404056 },
])('quantile at $p', ({ p, z }) => {
  expect(Math.abs(normalQuantile(p) / z - 1)).toBeLessThan(4e-16);
});

describe('normalQuantile', () => {
  const tails = fc.oneof(fc.constantFrom(1e-300, 1e-20, 1e-8, 0.5 - 1e-9), fc.double({ min: 1e-300, max: 0.5, noNaN: true }));

  it('is the inverse of the distribution function, far into the tail', () => {
    fc.assert(
      fc.property(tails, (p) => {
        expect(Math.abs(Math.expm1(normalLogCdf(normalQuantile(p)) - Math.log(p)))).toBeLessThan(1e-12);
      }),
    );
  });

  it('mirrors about one half', () => {
    fc.assert(
      fc.property(fc.oneof(fc.constantFrom(0.5, 0.05, 0.25), fc.double({ min: 0.01, max: 0.5, noNaN: true })), (p) => {
        expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(p), 12);
      }),
    );
  });

  test.each([0, 1, -0.1, Number.NaN])('refuses %s', (p) => expect(() => normalQuantile(p)).toThrow(RangeError));
});

it('keeps its digits where the distribution function itself is 0', () => {
  expect(normalCdf(-40)).toBe(0);
  // log cdf(-40) = -804.608442..., by the asymptotic series -z^2/2 - ln(z sqrt(2 pi)) + ln(1 - 1/z^2 + 3/z^4). Tolerance 1e-6 absolute.
  const series = -800 - Math.log(40 * Math.sqrt(2 * Math.PI)) + Math.log1p(-1 / 1600 + 3 / 1600 ** 2);
  expect(normalLogCdf(-40)).toBeCloseTo(series, 6);
  expect(inverseMills(-40)).toBeCloseTo(40 / (1 - 1 / 1600 + 3 / 1600 ** 2), 5);
});

it('has the exact 95 % point', () => expect(Z_95).toBeCloseTo(1.959963984540054, 15));
