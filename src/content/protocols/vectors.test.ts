import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { evaluateProtocol } from '../../core/risk/evaluateProtocol.ts';
import type { Items, Level } from '../../core/risk/types.ts';
import { riskItems } from './items.ts';
import { protocolTables } from './protocolTables.ts';

interface Vector {
  readonly id: string;
  readonly status: string;
  readonly description: string;
  readonly ageYears: number;
  readonly items: Items;
  readonly unlisted: 'unknown' | 'examined-and-absent';
  readonly expected: Readonly<
    Record<string, { readonly level: Level; readonly counts?: Readonly<Record<string, number>>; readonly usesProposalDefaults?: boolean }>
  >;
}

const { cases }: { cases: readonly Vector[] } = JSON.parse(readFileSync('test/reference/risk/vectors.json', 'utf8'));
const settings = { lowSalivaMeansExtreme: false };

/** Every disease and risk item absent, as the reference convention has it; months since family decay: none in two years. */
const absent: Items = Object.fromEntries(
  Object.values(riskItems)
    .filter((item) => item.role !== 'protective')
    .map((item) => [item.id, item.id === 'caregiver_decay_months_since' ? 24 : item.valueType === 'count' ? 0 : false]),
);

function evaluate(id: string, items: Items, ageYears: number) {
  const table = protocolTables.find((t) => t.id === id);
  if (!table) throw new Error(`no table ${id}`);
  return evaluateProtocol(table, items, ageYears, settings);
}

// test/reference/risk/vectors.json: p01 is published (read), d01 to d48 are derived by rule and were recomputed independently.
// Levels and counts are exact; there is no tolerance.
describe.each(cases)('$id ($status): $description', ({ ageYears, items, unlisted, expected }) => {
  const asExamined = unlisted === 'examined-and-absent' ? { ...absent, ...items } : items;

  test.each(Object.entries(expected))('%s', (id, want) => {
    const got = evaluate(id, asExamined, ageYears);
    expect(got.levelUnknownNotTicked).toBe(want.level);
    if (want.counts) expect(got.counts).toEqual(want.counts);
    if (want.usesProposalDefaults !== undefined) expect(got.usesProposalDefaults).toBe(want.usesProposalDefaults);
    if (unlisted === 'examined-and-absent') expect(got.level).toBe(want.level);
  });

  test.each(Object.entries(expected))('%s, unlisted items left unknown: same level, no low given', (id, want) => {
    const got = evaluate(id, items, ageYears);
    expect(got.levelUnknownNotTicked).toBe(want.level);
    expect(got.possibleLevels).toContain(want.level);
    expect(got.level).toBe(want.level === 'low' ? null : want.level);
  });
});

test('all six lists and 101 expectations are covered', () => {
  const seen = cases.flatMap((c) => Object.keys(c.expected));
  expect(new Set(seen)).toEqual(new Set(protocolTables.map((t) => t.id)));
  expect(seen).toHaveLength(101);
});

test('d14 with the setting "low saliva alone is extreme"', () => {
  const d14 = cases.find((c) => c.id === 'd14');
  const table = protocolTables.find((t) => t.id === 'four_level_6plus_2019');
  if (!d14 || !table) throw new Error('missing');
  const got = evaluateProtocol(table, { ...absent, ...d14.items }, d14.ageYears, { lowSalivaMeansExtreme: true });
  expect(got).toMatchObject({ level: 'extreme', needsConfirmation: true, usesProposalDefaults: false });
  expect(got.flags).toContain('low-saliva-alone');
});
