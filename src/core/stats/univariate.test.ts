import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { correctDigits, listValues, nistSets } from '../../../test/reference/statistics/nistSets.ts';
import { centredValues } from './centredValues.ts';
import { compensatedSum } from './compensatedSum.ts';
import { lagOneAutocorrelation } from './lagOneAutocorrelation.ts';
import { sampleSd } from './sampleSd.ts';

// NIST StRD, univariate, certified values (test/reference/statistics/nist.json). Tolerance: correct digits of mean, sd and lag-1
// autocorrelation; the sets NumAcc3 differ in the seventh digit, so that doubles hold about nine digits of a deviation.
test.each([
  { name: 'NumAcc1', least: [15, 15, 15] },
  { name: 'NumAcc2', least: [14, 14, 14] },
  { name: 'NumAcc3', least: [15, 9, 9] },
])('NIST $name', ({ name, least }) => {
  const set = nistSets.univariate[name];
  if (!set) throw new Error(`no set ${name}`);
  const values = listValues(set.values);
  const { mean, sd, lagOne } = set.certified;
  const digits = [
    correctDigits(centredValues(values).mean, mean),
    correctDigits(sampleSd(values), sd),
    correctDigits(lagOneAutocorrelation(values), lagOne),
  ];
  console.log(`NIST ${name}, log relative error of mean, sd, autocorrelation: ${digits.map((d) => d.toFixed(1)).join(', ')}`);
  digits.forEach((d, i) => {
    expect(d).toBeGreaterThanOrEqual(least[i] ?? 15);
  });
});

describe('sums, means and spreads', () => {
  it('keep what a plain sum drops', () => {
    expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
    expect(compensatedSum([])).toBe(0);
  });

  const value = fc.oneof(fc.constantFrom(0, 1e9, -1e9), fc.double({ min: -1e9, max: 1e9, noNaN: true }));
  const lists = fc.array(value, { minLength: 2, maxLength: 30 });

  it('do not depend on the origin, and mirror', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 30 }),
        fc.constantFrom(0, 1e6, 2 ** 40),
        (list, by) => {
          const moved = list.map((x) => x + by);
          expect(sampleSd(moved)).toBeCloseTo(sampleSd(list), 9);
          expect(centredValues(moved).mean - by).toBeCloseTo(centredValues(list).mean, 3);
          expect(sampleSd(list.map((x) => -x))).toBeCloseTo(sampleSd(list), 12);
        },
      ),
    );
  });

  it('have deviations that sum to nothing, and an autocorrelation within its bounds', () => {
    fc.assert(
      fc.property(lists, (list) => {
        expect(Math.abs(compensatedSum(centredValues(list).deviations))).toBeLessThan(1e-5);
        fc.pre(sampleSd(list) > 1e-3);
        expect(Math.abs(lagOneAutocorrelation(list))).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('refuse too few values', () => {
    expect(sampleSd([4.1, 4.1, 4.1])).toBe(0);
    expect(() => centredValues([])).toThrow(/must not be empty/);
    expect(() => sampleSd([1])).toThrow(/at least two/);
    expect(() => lagOneAutocorrelation([2, 2])).toThrow(/must not all be equal/);
  });
});
