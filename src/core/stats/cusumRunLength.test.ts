import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { cusumRunLength } from './cusumRunLength.ts';
import { normalCdf } from './normal.ts';

interface Case {
  readonly k: number;
  readonly h: number;
  readonly shiftsSd: readonly number[];
  readonly oneSided: readonly number[];
  readonly twoSided: readonly number[];
}
const { cusum }: { cusum: readonly Case[] } = JSON.parse(readFileSync('test/reference/statistics/control.json', 'utf8'));

// xcusum.arl of the R package spc 0.6.7 with 100 nodes (test/reference/statistics/control.json). Tolerance: 1e-11 relative.
test.each(cusum)('k $k, h $h', ({ k, h, shiftsSd, oneSided, twoSided }) => {
  for (const [i, shift] of shiftsSd.entries()) {
    expect(Math.abs(cusumRunLength({ k, h, sides: 1 }, shift) / (oneSided[i] ?? 0) - 1)).toBeLessThan(1e-11);
    expect(Math.abs(cusumRunLength({ k, h, sides: 2 }, shift) / (twoSided[i] ?? 0) - 1)).toBeLessThan(1e-11);
  }
});

// Lucas and Crosier 1982 (from memory), two-sided, k 0.5, printed to three digits. Tolerance: half a unit in the last printed place.
test.each([
  { h: 4, printed: [168, 74.2, 26.6, 13.3, 8.38], places: [0.5, 0.05, 0.05, 0.05, 0.005] },
  { h: 5, printed: [465, 139, 38.0, 17.0, 10.4], places: [0.5, 0.5, 0.05, 0.05, 0.05] },
])('printed table, h $h', ({ h, printed, places }) => {
  for (const [i, want] of printed.entries()) {
    const got = cusumRunLength({ k: 0.5, h, sides: 2 }, i * 0.25);
    expect(Math.abs(got - want)).toBeLessThanOrEqual(places[i] ?? 0);
  }
});

describe('cusumRunLength', () => {
  it('has ten digits with the nodes that it takes, against many more', () => {
    for (const h of [0.1, 1, 2.516, 5, 12, 20])
      for (const k of [0, 0.5, 2])
        for (const shift of [-3, 0, 0.25, 1, 4]) {
          const refined = cusumRunLength({ k, h, sides: 1 }, shift, Math.ceil(40 + 4 * h));
          expect(Math.abs(cusumRunLength({ k, h, sides: 1 }, shift) / refined - 1)).toBeLessThan(1e-10);
        }
  });

  it('keeps its digits where a signal almost never comes: with a large limit drop, the chance of one point above h', () => {
    // With the mean 8 sd below the allowance a run is one point: ARL = 1 / P(Z > h + 8), but for a share of about 1e-9.
    expect(cusumRunLength({ k: 0, h: 1, sides: 1 }, -8) * normalCdf(-9)).toBeCloseTo(1, 2);
    expect(cusumRunLength({ k: 0.5, h: 5, sides: 1 }, -60)).toBe(Number.POSITIVE_INFINITY);
  });

  it('is the chart of single values when h is tiny and k is its limit, mirrors, and ends at one point', () => {
    expect(cusumRunLength({ k: 3, h: 1e-9, sides: 2 }, 0)).toBeCloseTo(370.398347, 3);
    expect(cusumRunLength({ k: 0.5, h: 4, sides: 2 }, -1)).toBeCloseTo(cusumRunLength({ k: 0.5, h: 4, sides: 2 }, 1), 10);
    expect(cusumRunLength({ k: 0.5, h: 4, sides: 2 }, 50)).toBe(1);
  });

  test.each([
    { k: -1, h: 4, shift: 0, name: 'k' },
    { k: 0.5, h: 0, shift: 0, name: 'h' },
    { k: 0.5, h: 300, shift: 0, name: 'h' },
    { k: 0.5, h: 4, shift: Number.NaN, name: 'shiftSd' },
  ])('names $name', ({ k, h, shift, name }) =>
    expect(() => cusumRunLength({ k, h, sides: 1 }, shift)).toThrow(new RegExp(`^${name} must`)),
  );
});
