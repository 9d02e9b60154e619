import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { noncentralTCdf, noncentralTQuantile } from './noncentralT.ts';
import { normalCdf } from './normal.ts';
import { studentTQuantile } from './studentT.ts';

// R 4.2.2, qt(c(.025, .5, .975), df, ncp), whose series warns beyond about 37. Tolerance: 1e-9 relative.
test.each([
  { df: 1, noncentrality: 1, quantiles: [-2.59049267223888, 1.32021309938874, 34.5562176538677] },
  { df: 2, noncentrality: 8.7, quantiles: [4.33629360204989, 10.423697995619, 55.019144351161] },
  { df: 5, noncentrality: 1, quantiles: [-1.12145674606883, 1.05285104094817, 4.31308254238662] },
  { df: 19, noncentrality: 8.7, quantiles: [6.01289502095746, 8.84234739540239, 13.3878537813446] },
  { df: 99, noncentrality: 37, quantiles: [32.1360135135217, 37.1210962606721, 43.3548310067488] },
  { df: 499, noncentrality: 1, quantiles: [-0.961351927605875, 1.0005012947782, 2.97007799045937] },
])('df $df, noncentrality $noncentrality', ({ df, noncentrality, quantiles }) => {
  [0.025, 0.5, 0.975].forEach((p, i) => {
    expect(Math.abs(noncentralTQuantile(p, df, noncentrality) / (quantiles[i] ?? 0) - 1)).toBeLessThan(1e-9);
  });
});

describe('noncentral t', () => {
  const df = fc.oneof(fc.constantFrom(1, 2, 5000), fc.double({ min: 1, max: 500, noNaN: true }));
  const noncentrality = fc.oneof(fc.constantFrom(0, 100, -100), fc.double({ min: -20, max: 20, noNaN: true }));

  it('without noncentrality is t', () => {
    for (const p of [0.01, 0.975]) expect(noncentralTQuantile(p, 7, 0)).toBeCloseTo(studentTQuantile(p, 7), 9);
  });

  it('is at 0 the normal distribution function, mirrors, and rises', () => {
    fc.assert(
      fc.property(df, noncentrality, fc.double({ min: -30, max: 30, noNaN: true }), (freedom, shift, t) => {
        expect(noncentralTCdf(0, freedom, shift)).toBeCloseTo(normalCdf(-shift), 12);
        const here = noncentralTCdf(t, freedom, shift);
        expect(here + noncentralTCdf(-t, freedom, -shift)).toBeCloseTo(1, 11);
        expect(noncentralTCdf(t + 1, freedom, shift)).toBeGreaterThanOrEqual(here - 1e-12);
      }),
      { numRuns: 40 },
    );
  });

  it('names what is out of range', () => {
    expect(() => noncentralTCdf(1, 0, 1)).toThrow(/^df/);
    expect(() => noncentralTCdf(Number.NaN, 3, 1)).toThrow(/^t /);
    expect(() => noncentralTCdf(1, 3, Number.POSITIVE_INFINITY)).toThrow(/^noncentrality/);
    expect(() => noncentralTQuantile(1, 3, 1)).toThrow(/^p /);
  });
});
