import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { normalCdf } from '../stats/normal.ts';
import { type BoundedReading, boundedPosterior } from './boundedPosterior.ts';

const sd = fc.oneof(fc.constantFrom(1e-3, 0.3, 3), fc.double({ min: 0.01, max: 3, noNaN: true }));
const reading: fc.Arbitrary<BoundedReading> = fc.record({
  priorMean: fc.double({ min: 4, max: 9, noNaN: true }),
  priorSd: sd,
  bound: fc.double({ min: 4, max: 11, noNaN: true }),
  noiseSd: sd,
  side: fc.constantFrom('at-most' as const, 'at-least' as const),
});

/** Mean from the distribution function alone: high end minus the area under it. Midpoint rule on 4,000 strips. */
function meanByArea(cdf: (x: number) => number, from: number, to: number): number {
  const strips = 4000;
  const width = (to - from) / strips;
  let area = 0;
  for (let i = 0; i < strips; i++) area += cdf(from + (i + 0.5) * width) * width;
  return to - area;
}

describe('boundedPosterior', () => {
  it('has a distribution function whose mean is the closed one', () => {
    fc.assert(
      fc.property(reading, (input) => {
        const { mean, sd: spread, cdf } = boundedPosterior(input);
        expect(meanByArea(cdf, mean - 12 * spread, mean + 12 * spread)).toBeCloseTo(mean, 4);
      }),
      { numRuns: 40 },
    );
  });

  it('has quantiles that undo the distribution function, in order, and a spread below that of the prior', () => {
    fc.assert(
      fc.property(reading, (input) => {
        const { cdf, quantile, sd: spread } = boundedPosterior(input);
        const points = [0.025, 0.25, 0.5, 0.975].map(quantile);
        points.forEach((x, i) => {
          expect(cdf(x)).toBeCloseTo([0.025, 0.25, 0.5, 0.975][i] ?? Number.NaN, 9);
        });
        expect([...points].sort((a, b) => a - b)).toEqual(points);
        expect(spread).toBeLessThanOrEqual(input.priorSd);
      }),
    );
  });

  it('is the truncated prior when the reading has next to no noise', () => {
    const { cdf } = boundedPosterior({ priorMean: 7, priorSd: 0.9, bound: 7.5, noiseSd: 1e-7, side: 'at-least' });
    const beyond = normalCdf((7 - 7.5) / 0.9);
    expect(cdf(7.5 - 1e-5)).toBeCloseTo(0, 9);
    expect(cdf(8)).toBeCloseTo(1 - normalCdf((7 - 8) / 0.9) / beyond, 6);
  });

  it('is the prior when the bound says nothing', () => {
    const { mean, sd: spread, cdf } = boundedPosterior({ priorMean: 7, priorSd: 0.9, bound: -20, noiseSd: 0.3, side: 'at-least' });
    expect(mean).toBeCloseTo(7, 12);
    expect(spread).toBeCloseTo(0.9, 12);
    expect(cdf(7.5)).toBeCloseTo(normalCdf(0.5 / 0.9), 12);
  });

  // Seeded simulation: levels from the prior, kept when their noisy reading is beyond the bound; at least 20,000 kept.
  // Tolerance: 4 standard errors of a proportion, 0.015.
  test.each([
    { priorMean: 7, priorSd: 0.9, bound: 7.6, noiseSd: 0.3, side: 'at-least' as const },
    { priorMean: 7, priorSd: 0.4, bound: 6.4, noiseSd: 0.5, side: 'at-most' as const },
  ])('agrees with a simulation: $side', (input) => {
    const { normal } = seededRandom(7);
    const kept: number[] = [];
    for (let i = 0; i < 300_000; i++) {
      const level = input.priorMean + input.priorSd * normal();
      const shown = level + input.noiseSd * normal();
      if (input.side === 'at-least' ? shown >= input.bound : shown <= input.bound) kept.push(level);
    }
    expect(kept.length).toBeGreaterThan(20_000);
    const { cdf, mean, sd: spread } = boundedPosterior(input);
    const average = kept.reduce((a, b) => a + b, 0) / kept.length;
    const spreadKept = Math.sqrt(kept.reduce((a, b) => a + (b - average) ** 2, 0) / kept.length);
    expect(Math.abs(mean - average)).toBeLessThan(0.015);
    expect(Math.abs(spread / spreadKept - 1)).toBeLessThan(0.02);
    for (const x of [6.2, 6.8, 7.2, 7.8]) {
      const share = kept.filter((level) => level <= x).length / kept.length;
      expect(Math.abs(cdf(x) - share)).toBeLessThan(0.015);
    }
  });

  it('stays finite when prior and bound are far apart', () => {
    const { mean, sd: spread, quantile } = boundedPosterior({ priorMean: 4, priorSd: 0.2, bound: 11, noiseSd: 0.2, side: 'at-least' });
    // Far out the level and the noise share the distance by their variances, half each.
    expect(mean).toBeGreaterThan(7.4);
    expect(mean).toBeLessThan(7.6);
    expect(spread).toBeGreaterThan(0);
    expect(quantile(0.5)).toBeCloseTo(mean, 2);
  });
});
