import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ewmaChart } from './ewmaChart.ts';

const { series } = JSON.parse(readFileSync('test/reference/statistics/control.json', 'utf8'));

// Own seeded simulation, averages by an independent program in R 4.2.2 (test/reference/statistics/control.json). Tolerance: 1e-12.
test('averages and the first signal', () => {
  const got = ewmaChart(series.z, series.ewma.lambda, series.ewma.limit);
  for (const [i, value] of got.values.entries()) expect(value).toBeCloseTo(series.ewma.values[i], 12);
  expect(got.firstSignal).toBe(series.ewma.firstSignal);
});

test('the limits begin at limit · lambda and widen to the asymptotic ones', () => {
  const { halfWidths } = ewmaChart(new Array(200).fill(0), 0.2, 3);
  expect(halfWidths[0]).toBeCloseTo(0.6, 12);
  expect(halfWidths[1]).toBeCloseTo(0.6 * Math.sqrt(1 + 0.8 ** 2), 12);
  expect(halfWidths[199]).toBeCloseTo(3 * Math.sqrt(0.2 / 1.8), 12);
});

test('with all weight on the newest point it is the chart of single values', () => {
  expect(ewmaChart([1, 3, -3.1], 1, 3)).toEqual({ values: [1, 3, -3.1], halfWidths: [3, 3, 3], firstSignal: 2 });
});

test.each([
  { lambda: 0, limit: 3, name: 'lambda' },
  { lambda: 1.1, limit: 3, name: 'lambda' },
  { lambda: 0.2, limit: 0, name: 'limit' },
])('names $name', ({ lambda, limit, name }) => expect(() => ewmaChart([0], lambda, limit)).toThrow(new RegExp(`^${name} must`)));
