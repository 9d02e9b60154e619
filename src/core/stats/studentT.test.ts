import { describe, expect, it, test } from 'vitest';
import { studentTQuantile, studentTTwoSidedP } from './studentT.ts';

// R 4.2.2, qt(p, df). Tolerance: 1e-13 relative.
test.each([
  { p: 0.975, df: 1, t: 12.706204736174694 },
  { p: 0.95, df: 4, t: 2.131846786326649 },
  { p: 0.995, df: 12.5, t: 3.0324366528705617 },
  { p: 0.975, df: 1e6, t: 1.9599663568141066 },
  { p: 1e-8, df: 7, t: -27.802283188119898 },
])('quantile at $p with $df', ({ p, df, t }) => expect(Math.abs(studentTQuantile(p, df) / t - 1)).toBeLessThan(1e-13));

// R 4.2.2, 2 * pt(-|t|, df). Tolerance: 1e-12 relative.
test.each([
  { t: 2, df: 3, p: 0.13932596855884313 },
  { t: -30, df: 10, p: 3.9617923420313195e-11 },
  { t: 0.5, df: 1e4, p: 0.61708607932323334 },
])('two-sided p of $t with $df', ({ t, df, p }) => expect(Math.abs(studentTTwoSidedP(t, df) / p - 1)).toBeLessThan(1e-12));

describe('studentT', () => {
  it('mirrors about one half', () => expect(studentTQuantile(0.025, 9)).toBeCloseTo(-studentTQuantile(0.975, 9), 12));
  it('is certain at 0', () => expect(studentTTwoSidedP(0, 3)).toBe(1));
  test.each([0, 1, Number.NaN])('refuses p = %s', (p) => expect(() => studentTQuantile(p, 3)).toThrow(/p must be/));
  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses df = %s', (df) => {
    expect(() => studentTQuantile(0.5, df)).toThrow(/df must be/);
    expect(() => studentTTwoSidedP(1, df)).toThrow(/df must be/);
  });
});
