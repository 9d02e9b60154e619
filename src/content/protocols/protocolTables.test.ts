import { describe, expect, test } from 'vitest';
import type { Condition, ProtocolTable } from '../../core/risk/protocol.ts';
import { findingFills, itemExclusions } from '../findingFills.ts';
import { questions } from '../questions.ts';
import { sources } from '../sources.ts';
import { riskFlags } from './flags.ts';
import { riskItems } from './items.ts';
import { protocolTables } from './protocolTables.ts';

const conditionsOf = (table: ProtocolTable): readonly Condition[] => {
  const remarks = table.remarks.flatMap((r) => r.anyOf);
  if (table.kind === 'score') return [...remarks, ...table.lines.flatMap((line) => line.cases.map((c) => c.when))];
  const rows = table.rows.flatMap((row) => row.anyOf);
  if (table.kind === 'columns') return [...remarks, ...rows];
  const suspicion = table.suspicion ? [...table.suspicion.anyOf, table.suspicion.settledBy] : [];
  return [...remarks, ...rows, ...(table.decisive?.anyOf ?? []), ...table.lifts.anyOf, ...table.barsLow, ...suspicion];
};
const rowsOf = (table: ProtocolTable) => (table.kind === 'score' ? table.lines : table.rows);

describe.each(protocolTables.map((table) => [table.id, table] as const))('%s', (_id, table) => {
  test('every row, step and note has a source that is listed, and a status', () => {
    const refs = [...rowsOf(table), ...table.steps, ...table.notes, ...table.recall, table.applies].map((row) => row.source);
    expect(refs.length).toBeGreaterThan(12);
    for (const { key, status } of refs) {
      expect(sources[key], key).toBeDefined();
      expect(['read', 'memory', 'mixed', 'proposal']).toContain(status);
    }
  });

  test('every condition is on a defined item and fits its type', () => {
    for (const condition of conditionsOf(table)) {
      const item = riskItems[condition.item];
      expect(item, condition.item).toBeDefined();
      expect('is' in condition, condition.item).toBe(item?.valueType === 'boolean');
      if ('from' in condition) expect(condition.to === null || condition.to >= condition.from).toBe(true);
    }
  });

  test('no item stands in two rows, and a row reads its own item', () => {
    const ids = rowsOf(table).map((row) => row.item);
    expect(new Set(ids).size).toBe(ids.length);
    for (const row of rowsOf(table)) {
      const read = 'cases' in row ? row.cases.map((c) => c.when.item) : row.anyOf.map((c) => c.item);
      expect(read).toContain(row.item);
    }
  });

  test('our own numbers are marked as proposals', () => {
    if (table.kind === 'balance') expect(table.defaults.source.status).toBe('proposal');
    if (table.kind === 'columns') expect(table.judgement.status).toBe('proposal');
    expect(table.applies.source.status).toBe('proposal');
  });

  test('the name on the screen is neutral, and the list names its owner and citation', () => {
    expect(table.screenName).not.toMatch(/[A-Z]{3,}|®|™/);
    expect(table.owner.length).toBeGreaterThan(10);
    expect(table.citation).toMatch(/\d{4}|36 months/);
  });

  test('recall rows give each level once, with the shorter time first', () => {
    for (const { recallMonths, radiographMonths } of table.recall) {
      expect(recallMonths[0]).toBeLessThanOrEqual(recallMonths[1]);
      expect(radiographMonths[0]).toBeLessThanOrEqual(radiographMonths[1]);
    }
    expect([[], table.levels]).toContainEqual(table.recall.map((row) => row.level));
  });

  test('every item that can be had is filled by a question or a finding of that age', () => {
    for (const age of [table.applies.fromAgeYears, (table.applies.belowAgeYears ?? 80) - 1]) {
      const asked = questions.filter((q) => age >= (q.fromAgeYears ?? 0) && age < (q.belowAgeYears ?? 200));
      const filled = new Set([...asked.flatMap((q) => q.fills.map((f) => f.item)), ...findingFills.map((f) => f.item)]);
      for (const row of rowsOf(table)) {
        const isOfAge = !('cases' in row) || age < (row.belowAgeYears ?? 200);
        const available = riskItems[row.item]?.notAvailable === undefined;
        if (isOfAge && available) expect(filled.has(row.item), `${row.item} at ${age}`).toBe(true);
      }
    }
  });
});

test('ids, screen names and editions name one list each; every remark has words', () => {
  expect(new Set(protocolTables.map((t) => t.id)).size).toBe(6);
  expect(new Set(protocolTables.map((t) => t.screenName)).size).toBe(6);
  for (const remark of protocolTables.flatMap((t) => t.remarks)) expect(riskFlags[remark.flag]).toBeDefined();
  for (const flag of ['judgement', 'measure-saliva', 'low-saliva-alone', 'ten-moderate-lines', 'nothing-ticked'])
    expect(riskFlags[flag]).toBeDefined();
});

test('every age from 0 to 100 has a four-level and a scored list', () => {
  const fits = (kind: string, age: number) =>
    protocolTables.filter((t) => t.kind === kind && age >= t.applies.fromAgeYears && age < (t.applies.belowAgeYears ?? 200)).length;
  for (let age = 0; age <= 100; age++) {
    expect(fits('balance', age)).toBe(1);
    expect(fits('score', age)).toBe(1);
    expect(fits('columns', age)).toBe(age < 19 ? 1 : 0);
  }
});

test('the swab is not an item, and the bacteria line is filled by nothing', () => {
  expect(riskItems.biofilm_bacteria_high?.notAvailable).toBeDefined();
  const filled = [...questions.flatMap((q) => q.fills.map((f) => f.item)), ...findingFills.map((f) => f.item)];
  expect(filled).not.toContain('biofilm_bacteria_high');
  expect(Object.keys(riskItems).join(' ')).not.toMatch(/rlu|atp|swab/);
});

test('items: ids match, and what looks back or is a condition cannot be changed', () => {
  for (const [id, item] of Object.entries(riskItems)) {
    expect(item.id).toBe(id);
    if (item.role === 'disease' || item.group === 'medical' || item.group === 'social' || item.group === 'family') {
      expect(item.changeable, id).toBe('no');
    }
  }
  for (const { item, when } of itemExclusions) expect(riskItems[item] && riskItems[when]).toBeDefined();
});
