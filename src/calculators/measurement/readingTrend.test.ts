import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { runCalculator } from '../calculator.ts';
import { readingTrend } from './readingTrend.ts';

const { normal } = seededRandom(3);
const observations = Array.from({ length: 36 }, (_, i) => ({
  subject: `s${i % 6}`,
  time: Math.floor(i / 6),
  value: Math.exp(7 + 0.4 * (i % 6) - 0.1 * Math.floor(i / 6) + 0.3 * normal()),
}));
const run = (input: unknown) => runCalculator(readingTrend, input);
const withOperators = (count: number) => observations.map((x, i) => ({ ...x, operator: `o${(i + Math.floor(i / 6)) % count}` }));

describe('reading-trend', () => {
  it.each([
    ['without operators', observations, 0],
    ['with two operators', withOperators(2), 2],
    ['with five operators', withOperators(5), 5],
  ])('answers with an output that fits its schema, %s', (_name, list, operators) => {
    const result = run({ observations: list, log: true, bandAt: [0, 2.5] });
    expect(result).toMatchObject({ ok: true, output: { n: 36, subjects: 6, band: [{ time: 0 }, { time: 2.5 }] } });
    if (!result.ok) return;
    const output = readingTrend.output.parse(result.output) as {
      operators: unknown[];
      variance: object;
      band: { middle: number }[];
      intercept: number;
    };
    expect(output.operators.length).toBe(operators);
    expect('operator' in output.variance).toBe(operators === 5);
    expect(output.band[0]?.middle).toBeCloseTo(output.intercept, 10);
  });

  test.each([
    ['nothing', [], /must not be empty/],
    ['one subject', observations.filter((x) => x.subject === 's0'), /at least two subjects/],
    ['one time', observations.filter((x) => x.time === 0), /two different times/],
    ['no repeats', observations.filter((x, i) => x.time === i % 6), /repeat more/],
    ['constant values', observations.map((x) => ({ ...x, value: 8 })), /must scatter/],
  ])('says what would make it work: %s', (_name, list, message) => {
    const result = run({ observations: list, log: true });
    expect(result).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path: 'observations' } });
    expect(!result.ok && result.error.message).toMatch(message);
  });

  it('names the value without a logarithm, and the observation without an operator', () => {
    const zero = observations.map((x, i) => ({ ...x, value: i === 7 ? 0 : x.value }));
    expect(run({ observations: zero, log: true })).toMatchObject({ ok: false, error: { path: 'observations.7.value' } });
    const gap = withOperators(2).map((x, i) => (i === 4 ? observations[4] : x));
    expect(run({ observations: gap, log: true })).toMatchObject({ ok: false, error: { path: 'observations.4.operator' } });
  });
});
