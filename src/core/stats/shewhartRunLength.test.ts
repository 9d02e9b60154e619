import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { shewhartRunLength } from './shewhartRunLength.ts';

const { shewhart } = JSON.parse(readFileSync('test/reference/statistics/control.json', 'utf8'));

// The closed form in R 4.2.2 (test/reference/statistics/control.json). Tolerance: 1e-12 relative.
test('two sides', () => {
  for (const [i, shift] of shewhart.shiftsSd.entries()) {
    expect(shewhartRunLength(shewhart.limit, 2, shift) / shewhart.twoSided[i]).toBeCloseTo(1, 12);
  }
});

test('one side never signals sooner than two, and sees no fall', () => {
  expect(shewhartRunLength(3, 1, 0)).toBeCloseTo(2 * shewhartRunLength(3, 2, 0), 8);
  expect(shewhartRunLength(3, 1, -2)).toBeGreaterThan(1e6);
  expect(shewhartRunLength(3, 1, -100)).toBe(Number.POSITIVE_INFINITY);
});

test('names what is wrong', () => {
  expect(() => shewhartRunLength(0, 2, 0)).toThrow(/^limit must/);
  expect(() => shewhartRunLength(3, 2, Number.NaN)).toThrow(/^shiftSd must/);
});
