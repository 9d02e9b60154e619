import { expect, test } from 'vitest';
import { chiSquareQuantile } from './chiSquare.ts';

// R 4.2.2, qchisq(p, df). Tolerance: 1e-12 relative up to 1000 degrees of freedom.
test.each([
  { p: 0.025, df: 1, x: 0.00098206911717525617 },
  { p: 0.975, df: 60, x: 83.297674877173179 },
  { p: 0.05, df: 4.5, x: 0.92014265103240145 },
  { p: 0.999, df: 2, x: 13.815510557964272 },
  { p: 1e-6, df: 9, x: 0.22838484007344917 },
  { p: 0.975, df: 1000, x: 1089.5309127749135 },
])('quantile at $p with $df', ({ p, df, x }) => expect(Math.abs(chiSquareQuantile(p, df) / x - 1)).toBeLessThan(1e-12));

// R 4.2.2, qchisq(p, df); here the library would be off by up to 6e-4. Tolerance: 1e-10 relative.
test.each([
  { p: 0.000001, df: 1000.5, x: 802.07134966926719 },
  { p: 0.025, df: 1000.5, x: 914.73523977140098 },
  { p: 0.5, df: 1000.5, x: 999.83341236383683 },
  { p: 0.975, df: 1000.5, x: 1090.0528270754237 },
  { p: 0.999999, df: 1000.5, x: 1227.7055173865836 },
  { p: 0.000001, df: 3000, x: 2646.088899657811 },
  { p: 0.025, df: 3000, x: 2850.0849365197928 },
  { p: 0.5, df: 3000, x: 2999.3333596771927 },
  { p: 0.975, df: 3000, x: 3153.7034935989818 },
  { p: 0.999999, df: 3000, x: 3382.6989801491559 },
  { p: 0.000001, df: 10000, x: 9342.1019072328909 },
  { p: 0.025, df: 10000, x: 9724.7183773897978 },
  { p: 0.5, df: 10000, x: 9999.333341235144 },
  { p: 0.975, df: 10000, x: 10279.070179887591 },
  { p: 0.999999, df: 10000, x: 10686.689829866038 },
  { p: 0.000001, df: 1000000, x: 993292.03373739135 },
  { p: 0.025, df: 1000000, x: 997230.08714329009 },
  { p: 0.5, df: 1000000, x: 999999.3333334123 },
  { p: 0.975, df: 1000000, x: 1002773.701467926 },
  { p: 0.999999, df: 1000000, x: 1006736.7596362823 },
])('quantile at $p with $df', ({ p, df, x }) => expect(Math.abs(chiSquareQuantile(p, df) / x - 1)).toBeLessThan(1e-10));

test.each([0, 1, Number.NaN])('refuses p = %s', (p) => expect(() => chiSquareQuantile(p, 3)).toThrow(/p must be/));
test('refuses df = 0', () => expect(() => chiSquareQuantile(0.5, 0)).toThrow(/df must be/));
