import { expect, it, test } from 'vitest';
import { correctDigits, listValues, nistSets } from '../../../../test/reference/statistics/nistSets.ts';
import { oneWayAnova } from './oneWayAnova.ts';
import { oneWayComponents } from './oneWayComponents.ts';

// NIST StRD, one-way analysis of variance, certified values (test/reference/statistics/nist.json).
// Tolerance: correct digits of F. The sets 04 and 05 share 7 leading digits, so that doubles hold about 9 digits of a deviation; those
// of SmLs07 share 13, so that 2 to 4 are all there can be.
test.each([
  { name: 'SiRstv', least: 12 },
  { name: 'SmLs01', least: 12 },
  { name: 'SmLs02', least: 12 },
  { name: 'SmLs04', least: 9 },
  { name: 'SmLs05', least: 9 },
  { name: 'SmLs07', least: 2 },
])('NIST $name', ({ name, least }) => {
  const set = nistSets.oneWay[name];
  if (!set) throw new Error(`no set ${name}`);
  const { between, within, total } = oneWayAnova(set.groups.map(listValues));
  const { ssBetween, ssWithin, f, r2 } = set.certified;
  const digits = {
    f: correctDigits(between.f ?? Number.NaN, f),
    between: correctDigits(between.sumSquares, ssBetween),
    within: correctDigits(within.sumSquares, ssWithin),
    r2: correctDigits(between.sumSquares / total.sumSquares, r2),
  };
  const list = Object.entries(digits).map(([key, value]) => `${key} ${value.toFixed(1)}`);
  console.log(`NIST ${name}, log relative error: ${list.join(', ')}`);
  for (const value of Object.values(digits)) expect(value).toBeGreaterThanOrEqual(least);
});

it('takes groups of different size', () => {
  // 1, 3 and 8: means 2 and 8, grand mean 4. By hand: between 2 x 4 + 16 = 24, within 2.
  const { between, within, total, groupMeans } = oneWayAnova([[1, 3], [8]]);
  expect(between).toMatchObject({ df: 1, meanSquare: 24, f: 12 });
  expect(within).toEqual({ sumSquares: 2, df: 1, meanSquare: 2 });
  expect(total).toEqual({ sumSquares: 26, df: 2, meanSquare: 13 });
  expect(groupMeans).toEqual([2, 8]);
});

it('says what is missing', () => {
  expect(() => oneWayAnova([[1, 2]])).toThrow(/at least two: 1/);
  expect(() => oneWayAnova([[1], [2]])).toThrow(/more values than/);
  expect(() => oneWayComponents([[1, 2], [3]])).toThrow(/groups\.1 must hold as many values as the first group: 1, not 2/);
  expect(() => oneWayComponents([[1], [2]])).toThrow(/at least two values each/);
  expect(() =>
    oneWayComponents([
      [2, 2],
      [3, 3],
    ]),
  ).toThrow(/must differ between repeats/);
  expect(
    oneWayAnova([
      [2, 2],
      [3, 3],
    ]).between,
  ).toMatchObject({ f: null, p: null });
});
