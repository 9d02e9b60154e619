import { expect, test } from 'vitest';
import { fQuantile, fUpperP } from './fDistribution.ts';

// R 4.2.2, qf(p, df1, df2); above 4e5 R itself takes the limit for df2, so no such row. Tolerance: 1e-12 relative.
test.each([
  { p: 0.025, df1: 2, df2: 60, f: 0.025328494180221206 },
  { p: 0.975, df1: 9, df2: 18, f: 2.9291124931232648 },
  { p: 0.975, df1: 60, df2: 1e4, f: 1.3900496852360757 },
  { p: 0.05, df1: 18, df2: 9, f: 0.40711951901038612 },
  { p: 0.5, df1: 3, df2: 3.5, f: 0.9654159324550019 },
])('quantile at $p with $df1 and $df2', ({ p, df1, df2, f }) => expect(Math.abs(fQuantile(p, df1, df2) / f - 1)).toBeLessThan(1e-12));

// R 4.2.2, pf(f, df1, df2, lower.tail = FALSE). Tolerance: 1e-11 relative.
test.each([
  { f: 492.29142266407524, df1: 9, df2: 18, p: 1.1630639949259966e-19 },
  { f: 0.433721030135103, df1: 18, df2: 60, p: 0.97410640432904616 },
  { f: 1, df1: 5, df2: 5, p: 0.5 },
  { f: 0, df1: 2, df2: 3, p: 1 },
])('p of $f with $df1 and $df2', ({ f, df1, df2, p }) => expect(Math.abs(fUpperP(f, df1, df2) / p - 1)).toBeLessThan(1e-11));

test('refuses what is no F ratio', () => {
  expect(() => fUpperP(-1, 2, 3)).toThrow(/f must be/);
  expect(() => fUpperP(Number.NaN, 2, 3)).toThrow(/f must be/);
  expect(() => fUpperP(1, 0, 3)).toThrow(/df1 must be/);
  expect(() => fQuantile(0.5, 2, 0)).toThrow(/df2 must be/);
});
