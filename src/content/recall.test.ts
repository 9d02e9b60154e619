import { describe, expect, it, test } from 'vitest';
import { findOldBitewings, findRecall } from '../core/regimen/intervals.ts';
import type { Level } from '../core/risk/types.ts';
import { protocolTables } from './protocols/protocolTables.ts';
import { careRows, oldBitewings, recallRows } from './recall.ts';

const confirmed = (protocol: string, level: Level) => ({ protocol, level, edition: '1', by: 'x', at: 'x' });

// Child list: reference manual 2022, Table 4 (read); four-level rows (memory); bounds: national recall guideline of 2004 (read). Months.
test.each([
  ['child_list_6plus', 'low', 10, 6, 12, 'read'],
  ['child_list_6plus', 'moderate', 10, 6, 6, 'read'],
  ['child_list_6plus', 'high', 10, 3, 3, 'read'],
  ['child_list_0_5', 'high', 4, 3, 3, 'read'],
  ['four_level_6plus_2019', 'low', 40, 6, 12, 'memory'],
  ['four_level_6plus_2019', 'moderate', 40, 4, 6, 'memory'],
  ['four_level_6plus_2019', 'high', 40, 3, 4, 'memory'],
  ['four_level_6plus_2019', 'extreme', 40, 3, 3, 'memory'],
  ['scored_list_over_6', 'high', 17, 3, 12, 'read'],
  ['scored_list_over_6', 'high', 18, 3, 24, 'read'],
] as const)('recall: %s, %s, %s years', (protocol, level, age, fromMonths, toMonths, status) => {
  expect(findRecall(confirmed(protocol, level), age, recallRows)).toMatchObject({ fromMonths, toMonths, source: { status } });
});

it('has no interval without a table', () => {
  expect(findRecall(confirmed('x', 'low'), 30, [])).toBeNull();
});

// Bitewings at recall, edition of 2012 (read), months; ages of the stages are ours.
describe('the old bitewing table is shown as old', () => {
  test.each([
    ['low', 5, 12, 24],
    ['high', 5, 6, 12],
    ['low', 12, 18, 36],
    ['moderate', 17, 6, 12],
    ['low', 18, 24, 36],
    ['extreme', 70, 6, 18],
  ] as const)('%s at %s', (level, age, fromMonths, toMonths) => {
    expect(findOldBitewings(level, age, oldBitewings)).toMatchObject({ fromMonths, toMonths, label: '2012 edition, replaced 2026' });
  });
});

it('knows every list: each level has a row of care at each age that the list is for', () => {
  for (const { id, levels, applies } of protocolTables) {
    for (const level of levels) {
      for (const age of [applies.fromAgeYears ?? 0, (applies.belowAgeYears ?? 90) - 1]) {
        const rows = careRows.filter(
          (r) => r.protocols.includes(id) && r.level === level && age >= r.fromAgeYears && age < r.belowAgeYears,
        );
        expect([id, level, age, rows.length]).toEqual([id, level, age, 1]);
      }
    }
  }
});

it('keeps intervals the right way round, never under 3 months', () => {
  for (const { fromMonths, toMonths } of [...recallRows, ...oldBitewings]) {
    expect(fromMonths).toBeGreaterThanOrEqual(3);
    expect(toMonths).toBeGreaterThanOrEqual(fromMonths);
  }
});
