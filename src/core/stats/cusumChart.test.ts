import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cusumChart } from './cusumChart.ts';

const { series } = JSON.parse(readFileSync('test/reference/statistics/control.json', 'utf8'));
const close = (got: readonly number[], want: readonly number[]) =>
  expect(Math.max(...got.map((v, i) => Math.abs(v - (want[i] ?? Number.NaN))))).toBeLessThan(1e-11);

// Own seeded simulation, sums by an independent program in R 4.2.2 (test/reference/statistics/control.json). Tolerance: 1e-11.
test('both sums and the first signal', () => {
  const got = cusumChart(series.z, series.cusum.k, series.cusum.h);
  close(got.upper, series.cusum.upper);
  close(got.lower, series.cusum.lower);
  expect(got.firstSignal).toBe(series.cusum.firstSignal);
});

test('a sum at h itself is no signal, either side can signal, and none is undefined', () => {
  expect(cusumChart([1.5, 1.5], 0.5, 2).firstSignal).toBe(undefined);
  expect(cusumChart([1.5, 1.5, 0.75], 0.5, 2).firstSignal).toBe(2);
  expect(cusumChart([-3], 0.5, 2)).toEqual({ upper: [0], lower: [2.5], firstSignal: 0 });
});

test.each([
  { z: [Number.NaN], k: 0.5, h: 4, name: 'z.0' },
  { z: [0], k: -1, h: 4, name: 'k' },
  { z: [0], k: 0.5, h: 0, name: 'h' },
])('names $name', ({ z, k, h, name }) => expect(() => cusumChart(z, k, h)).toThrow(new RegExp(`^${name} must`)));
