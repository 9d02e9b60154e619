import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { riskItems } from '../../content/protocols/items.ts';
import { protocolTables } from '../../content/protocols/protocolTables.ts';
import { runCalculator } from '../calculator.ts';
import { findCalculator } from '../index.ts';

function run(name: string, input: unknown) {
  const calculator = findCalculator(name);
  if (!calculator) throw new Error(`no calculator ${name}`);
  const result = runCalculator(calculator, input);
  if (result.ok) expect(calculator.output.safeParse(result.output).error).toBe(undefined);
  return result;
}

interface Vector {
  readonly id: string;
  readonly ageYears: number;
  readonly items: unknown;
  readonly expected: Readonly<Record<string, { readonly level: string }>>;
}
const { cases }: { cases: readonly Vector[] } = JSON.parse(readFileSync('test/reference/risk/vectors.json', 'utf8'));

// test/reference/risk/vectors.json, see its README: p01 published (read), the others derived. Exact, no tolerance.
test.each(cases)('$id through the calculators', ({ ageYears, items, expected }) => {
  for (const [protocol, want] of Object.entries(expected)) {
    expect(run('risk-assessment', { protocol, ageYears, answers: items })).toMatchObject({
      ok: true,
      output: { protocol, level: want.level },
    });
  }
  const comparison = run('risk-comparison', { ageYears, answers: items });
  if (!comparison.ok) throw new Error(comparison.error.message);
  const { results } = comparison.output as { results: { protocol: string; level: string }[] };
  for (const { protocol, level } of results) expect(level).toBe((expected[protocol] ?? { level }).level);
  expect(results.map((r) => r.protocol)).toEqual(expect.arrayContaining(Object.keys(expected)));
});

test('an empty form reads low on a scored list, and says that it is not yet assessable', () => {
  const result = run('risk-assessment', { protocol: 'scored_list_over_6', ageYears: 45, answers: {} });
  expect(result).toMatchObject({
    ok: true,
    output: {
      level: 'low',
      notYet: { atLeast: 'low', missing: ['lesions_or_restorations_count_36m', 'teeth_missing_due_to_decay'] },
      possibleLevels: ['low', 'moderate', 'high'],
      needsConfirmation: true,
      counts: { score: 0 },
    },
  });
});

test('null is unknown, like absent', () => {
  const assess = (answers: unknown) => run('risk-assessment', { protocol: 'four_level_6plus_2019', ageYears: 45, answers });
  expect(assess({ plaque_heavy_visible: null })).toEqual(assess({}));
});

describe('refusals name the field', () => {
  const good = { protocol: 'four_level_6plus_2019', ageYears: 40, answers: {} };
  test.each([
    [{ ...good, answers: { plaque: true } }, 'answers.plaque'],
    [{ ...good, answers: { plaque_heavy_visible: 1 } }, 'answers.plaque_heavy_visible'],
    [{ ...good, answers: { snacks_between_meals_per_day: true } }, 'answers.snacks_between_meals_per_day'],
    [{ ...good, answers: { snacks_between_meals_per_day: 2.5 } }, 'answers.snacks_between_meals_per_day'],
    [{ ...good, answers: { snacks_between_meals_per_day: -1 } }, 'answers.snacks_between_meals_per_day'],
    [{ ...good, ageYears: 5 }, 'ageYears'],
    [{ ...good, ageYears: -1 }, 'ageYears'],
    [{ ...good, protocol: 'child_list_6plus', ageYears: 19 }, 'ageYears'],
    [{ ...good, protocol: 'four_level' }, 'protocol'],
    [{ ...good, edition: '2007' }, 'edition'],
    [{ protocol: good.protocol, ageYears: 40 }, 'answers'],
    [{ ...good, age: 40 }, 'age'],
  ])('%j: %s', (input, path) => {
    expect(run('risk-assessment', input)).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path } });
  });

  test('the edition held here is taken, and the setting of the practice too', () => {
    for (const { id, edition, applies } of protocolTables) {
      expect(run('risk-assessment', { protocol: id, edition, ageYears: applies.fromAgeYears, answers: {} }).ok).toBe(true);
    }
    const dry = { ...good, answers: { saliva_flow_reduced_measured: true } };
    expect(run('risk-assessment', dry)).toMatchObject({ output: { level: 'moderate' } });
    expect(run('risk-assessment', { ...dry, lowSalivaMeansExtreme: true })).toMatchObject({ output: { level: 'extreme' } });
  });
});

it('answers every proper input with an output that fits its schema', () => {
  const values = fc.record(
    Object.fromEntries(
      Object.values(riskItems).map((item) => [
        item.id,
        item.valueType === 'boolean'
          ? fc.constantFrom(true, false, null)
          : fc.oneof(fc.constant(null), fc.constantFrom(0, 3, 4, 24), fc.nat(1000)),
      ]),
    ),
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(values, fc.oneof(fc.constantFrom(0, 5, 6, 7, 18, 19, 130), fc.nat(130)), (answers, ageYears) => {
      expect(run('risk-comparison', { ageYears, answers }).ok).toBe(true);
    }),
    { numRuns: 100 },
  );
});
