import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { runCalculator } from '../calculator.ts';
import { gaugeCrossed } from './gaugeCrossed.ts';
import { gaugeNested } from './gaugeNested.ts';

const crossed = ['A', 'B'].flatMap((part, i) =>
  ['X', 'Y'].flatMap((operator, j) => [100, 140].map((rlu) => ({ part, operator, value: rlu * (1 + i) * (1 + 0.1 * j) }))),
);
const nested = crossed.map(({ part, operator, value }) => ({ group: part, member: operator, value }));

test.each([
  ['one operator', crossed.filter((x) => x.operator === 'X'), /Let a second person/],
  ['one part', crossed.filter((x) => x.part === 'A'), /second part/],
  ['a reading missing', crossed.slice(1), /part "A" by operator "X"/],
  ['no repeats', crossed.filter((_, i) => i % 2 === 0), /at least twice/],
  ['constant values', crossed.map((x) => ({ ...x, value: 9 })), /every repeat gave the same value/],
  ['nothing', [], /at least two parts/],
])('gauge-crossed says what would make it work: %s', (_name, observations, message) => {
  const result = runCalculator(gaugeCrossed, { observations, log: true });
  expect(result).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path: 'observations' } });
  expect(!result.ok && result.error.message).toMatch(message);
});

test.each([
  ['one group', nested.filter((x) => x.group === 'A'), /second group/],
  ['a reading missing', nested.slice(1), /member "X" in group "A"/],
  ['constant values', nested.map((x) => ({ ...x, value: 9 })), /every repeat gave the same value/],
])('gauge-nested says what would make it work: %s', (_name, observations, message) => {
  const result = runCalculator(gaugeNested, { observations });
  expect(result).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path: 'observations' } });
  expect(!result.ok && result.error.message).toMatch(message);
});

describe('the gauge calculators', () => {
  it.each([
    [gaugeCrossed, crossed],
    [gaugeNested, nested],
  ] as const)('$name refuses the logarithm of 0 at its place, and takes 0 without', (calculator, list) => {
    const observations = list.map((x, i) => ({ ...x, value: i === 3 ? 0 : x.value }));
    expect(runCalculator(calculator, { observations, log: true })).toMatchObject({
      ok: false,
      error: { code: 'INPUT_INVALID', path: 'observations.3.value' },
    });
    expect(runCalculator(calculator, { observations })).toMatchObject({ ok: true });
  });

  const value = fc.oneof(fc.constantFrom(1, 2, 60_000), fc.integer({ min: 1, max: 60_000 }));
  it.each([
    [gaugeCrossed, crossed],
    [gaugeNested, nested],
  ] as const)('$name answers with an output that fits its schema, or says why not', (calculator, list) => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 8, maxLength: 8 }), fc.boolean(), (values, log) => {
        const result = runCalculator(calculator, { observations: list.map((x, i) => ({ ...x, value: values[i] })), log });
        if (result.ok) expect(calculator.output.safeParse(result.output).error).toBe(undefined);
        else expect(result.error).toMatchObject({ code: 'INPUT_INVALID', message: expect.stringMatching(/same value/) });
      }),
      { numRuns: 50 },
    );
  });
});
