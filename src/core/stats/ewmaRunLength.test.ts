import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { ewmaRunLength } from './ewmaRunLength.ts';
import { shewhartRunLength } from './shewhartRunLength.ts';

interface Case {
  readonly lambda: number;
  readonly limit: number;
  readonly shiftsSd: readonly number[];
  readonly twoSided: readonly number[];
}
const { ewma }: { ewma: readonly Case[] } = JSON.parse(readFileSync('test/reference/statistics/control.json', 'utf8'));

// xewma.arl of the R package spc 0.6.7 with 100 nodes (test/reference/statistics/control.json). Tolerance: 1e-11 relative.
test.each(ewma)('lambda $lambda, limit $limit', ({ lambda, limit, shiftsSd, twoSided }) => {
  for (const [i, shift] of shiftsSd.entries()) {
    expect(Math.abs(ewmaRunLength({ lambda, limit, sides: 2 }, shift) / (twoSided[i] ?? 0) - 1)).toBeLessThan(1e-11);
  }
});

// xewma.arl of the R package spc 0.6.7 with 200 nodes, sided = "one", its barrier far below (zr = -12). Tolerance: 1e-10 relative.
test.each([
  { lambda: 0.2, limit: 2, shift: 0, want: 95.9352101331366 },
  { lambda: 0.2, limit: 2, shift: 0.3, want: 24.2917357313617 },
  { lambda: 0.1, limit: 2.5, shift: -0.5, want: 1002622.74239372 },
  { lambda: 0.05, limit: 2, shift: 0, want: 284.089115701781 },
  { lambda: 0.5, limit: 2.5, shift: 1, want: 8.27179985455017 },
])('watching for a rise only: lambda $lambda, limit $limit, shift $shift', ({ lambda, limit, shift, want }) => {
  expect(Math.abs(ewmaRunLength({ lambda, limit, sides: 1 }, shift) / want - 1)).toBeLessThan(1e-10);
});

describe('ewmaRunLength', () => {
  it('has ten digits with the nodes that it takes, against many more', () => {
    for (const sides of [1, 2] as const)
      for (const lambda of [0.05, 0.3, 1])
        for (const [limit, shift] of [
          [1, 0],
          [3, -1],
          [3, 2],
          [5, 0],
        ] as const) {
          const refined = ewmaRunLength({ lambda, limit, sides }, shift, 150);
          expect(Math.abs(ewmaRunLength({ lambda, limit, sides }, shift) / refined - 1)).toBeLessThan(1e-10);
        }
  });

  it('is the chart of single values when all weight is on the newest point', () => {
    for (const sides of [1, 2] as const)
      for (const shift of [-2, 0, 1]) {
        expect(ewmaRunLength({ lambda: 1, limit: 3, sides }, shift) / shewhartRunLength(3, sides, shift)).toBeCloseTo(1, 12);
      }
  });

  it('agrees with a simulation of the chart that only watches for a rise, within 4 standard errors', () => {
    const { normal } = seededRandom(41);
    const [lambda, limit, shift] = [0.2, 2, 0.3];
    const bound = limit * Math.sqrt(lambda / (2 - lambda));
    const lengths = Array.from({ length: 3000 }, () => {
      let [average, points] = [0, 0];
      while (average <= bound) {
        average = lambda * (normal() + shift) + (1 - lambda) * average;
        points++;
      }
      return points;
    });
    const mean = lengths.reduce((a, b) => a + b, 0) / lengths.length;
    const se = Math.sqrt(lengths.reduce((a, b) => a + (b - mean) ** 2, 0)) / lengths.length;
    expect(Math.abs(ewmaRunLength({ lambda, limit, sides: 1 }, shift) - mean)).toBeLessThan(4 * se);
  });

  test.each([
    { lambda: 0.0005, limit: 3, shift: 0, name: 'lambda' },
    { lambda: 0.2, limit: 11, shift: 0, name: 'limit' },
    { lambda: 0.2, limit: 3, shift: Number.POSITIVE_INFINITY, name: 'shiftSd' },
  ])('names $name', ({ lambda, limit, shift, name }) =>
    expect(() => ewmaRunLength({ lambda, limit, sides: 2 }, shift)).toThrow(new RegExp(`^${name} must`)),
  );
});
