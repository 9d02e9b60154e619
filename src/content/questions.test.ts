import { describe, expect, test } from 'vitest';
import { allergens } from './allergens.ts';
import { conditions, openConditions, privateConditions } from './conditions.ts';
import { findingFills } from './findingFills.ts';
import { dryingMedicineIds, glucoseLoweringMedicineIds, medicineClasses, UNCLASSIFIED_MEDICINE } from './medicines.ts';
import { riskItems } from './protocols/items.ts';
import { questions } from './questions.ts';
import { sources } from './sources.ts';

const forAge = (age: number) => questions.filter((q) => age >= (q.fromAgeYears ?? 0) && age < (q.belowAgeYears ?? 200));
const byId = (id: string) => questions.find((q) => q.id === id);

test('ids are unique and can be part of a path', () => {
  expect(new Set(questions.map((q) => q.id)).size).toBe(questions.length);
  for (const { id } of questions) expect(id).toMatch(/^[a-z][a-z0-9_]*$/);
});

describe.each(questions.map((q) => [q.id, q] as const))('%s', (_id, question) => {
  test('fills defined items with what its kind can give', () => {
    for (const fill of question.fills) {
      const item = riskItems[fill.item];
      expect(item, fill.item).toBeDefined();
      if ('copy' in fill) expect(question.kind).toBe(item?.valueType === 'count' ? 'count' : 'yes-no');
      else expect(item?.valueType).toBe('boolean');
      if ('includesAny' in fill) expect(question.kind).toBe('list');
      if ('oneOf' in fill || 'equals' in fill) expect(question.kind).toBe('choice');
      if ('atLeast' in fill || 'atMost' in fill) expect(['count', 'measure']).toContain(question.kind);
    }
  });

  test('every id that a fill looks for is one of its choices', () => {
    const ids = question.choices?.map((c) => c.id) ?? [];
    expect(new Set(ids).size).toBe(ids.length);
    for (const fill of question.fills) {
      const wanted = [
        ...('includesAny' in fill ? fill.includesAny : []),
        ...('oneOf' in fill ? fill.oneOf : []),
        ...('unknownWhenAny' in fill ? (fill.unknownWhenAny ?? []) : []),
        ...('equals' in fill && typeof fill.equals === 'string' ? [fill.equals] : []),
      ];
      for (const id of wanted) expect(ids).toContain(id);
    }
  });

  test('a date fills no item of a list', () => {
    if (question.kind === 'date') expect(question.fills).toEqual([]);
  });

  test('has a label of one line, an open prompt and a listed source', () => {
    expect(question.label.length).toBeLessThanOrEqual(44);
    expect(question.prompt).toMatch(/[.?]$/);
    expect(question.sources.length).toBeGreaterThan(0);
    for (const { key } of question.sources) expect(sources[key], key).toBeDefined();
    if (question.kind === 'choice' || question.kind === 'list') expect(question.choices?.length).toBeGreaterThan(0);
    if (question.kind === 'choice') expect(question.choices?.length).toBeLessThanOrEqual(10);
    if (question.kind === 'count' || question.kind === 'measure') expect(question.max).toBeGreaterThan(question.min ?? 0);
  });
});

test('the safety check is asked at every visit; water is kept two years, food and home care six months', () => {
  for (const q of questions.filter((one) => one.group === 'safety')) expect(q.keepForMonths, q.id).toBe(0);
  for (const q of questions.filter((one) => one.group === 'food')) expect(q.keepForMonths, q.id).toBe(6);
  for (const id of ['water_fluoridated', 'water_drunk', 'water_fluoride_mg_per_l']) expect(byId(id)?.keepForMonths).toBe(24);
  for (const q of questions) expect(q.keepForMonths, q.id).toBeDefined();
});

test('private matters are private: vomiting, drugs, alcohol, pregnancy, eating disorder, social items', () => {
  expect(questions.filter((q) => q.private).map((q) => q.id)).toEqual(['private_conditions', 'pregnant', 'social']);
  const hidden = privateConditions.map((c) => c.id);
  expect(hidden).toEqual(
    expect.arrayContaining([
      'eating-disorder',
      'vomiting-often',
      'alcohol-use-or-recovery',
      'drug-or-alcohol-misuse',
      'recreational-drugs',
      'pregnancy-sickness',
    ]),
  );
  expect(openConditions.some((c) => hidden.includes(c.id))).toBe(false);
});

test('asked of whom', () => {
  const ages = (id: string) => [byId(id)?.fromAgeYears ?? 0, byId(id)?.belowAgeYears ?? null];
  expect(ages('pregnant')).toEqual([11, 56]);
  expect(ages('can_spit')).toEqual([0, 7]);
  expect(ages('weight_kg')).toEqual([0, 18]);
  expect(ages('medicines')).toEqual([0, null]);
});

test('few enough questions for one letter each in a group, and for a visit of 60 keys when little has changed', () => {
  for (const age of [0, 3, 5, 6, 7, 12, 16, 40, 80]) {
    for (const group of ['safety', 'food', 'home', 'health', 'look']) {
      expect(forAge(age).filter((q) => q.group === group).length).toBeLessThanOrEqual(20);
    }
  }
  // One key for each group to confirm what was carried, two for each thing that is looked at anew.
  const lookedAt = forAge(40).filter((q) => q.group === 'look' && !q.optional && q.keepForMonths === 0);
  expect(4 + 2 * lookedAt.length).toBeLessThanOrEqual(30);
});

describe('lists', () => {
  test.each([
    ['allergens', allergens],
    ['conditions', conditions],
    ['medicines', medicineClasses],
  ])('%s: ids are unique, in kebab case, each with a label', (_name, list: readonly { id: string; label: string }[]) => {
    expect(new Set(list.map((c) => c.id)).size).toBe(list.length);
    for (const { id, label } of list) {
      expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(label.length).toBeGreaterThan(3);
    }
  });

  test('medicines that dry the mouth or lower glucose are marked with a listed source; the unknown class is neither', () => {
    expect(dryingMedicineIds.length).toBeGreaterThanOrEqual(20);
    expect(glucoseLoweringMedicineIds).toEqual(expect.arrayContaining(['insulin', 'other-glucose-lowering']));
    for (const { source } of medicineClasses) expect(sources[source.key]).toBeDefined();
    expect([...dryingMedicineIds, ...glucoseLoweringMedicineIds]).not.toContain(UNCLASSIFIED_MEDICINE);
  });
});

test('every source of a finding row is listed', () => {
  for (const fill of findingFills) {
    expect(sources[fill.source.key]).toBeDefined();
    expect(riskItems[fill.item]?.valueType).toBe(fill.count ? 'count' : 'boolean');
  }
});
