import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { literalRules } from '../../../test/reference/risk/literalRules.ts';
import { casesOf, EDGE_COUNTS, idsOf } from '../../../test/reference/risk/riskCases.ts';
import { fourLevel2019 } from '../../content/protocols/fourLevel2019.ts';
import { fourLevelChild2010 } from '../../content/protocols/fourLevelChild2010.ts';
import { protocolTables } from '../../content/protocols/protocolTables.ts';
import type { ProtocolTable } from './protocol.ts';
import type { Items, LevelChange } from './types.ts';
import { listChangeableItems, whatWouldChange } from './whatWouldChange.ts';

const settings = { lowSalivaMeansExtreme: false };

/** Fewest changes of the free items that give each level, up to `most`, by trying all of them on the rules written out without tables. */
function enumerateFewest(
  table: ProtocolTable,
  items: Items,
  ageYears: number,
  free: readonly string[],
  most: number,
): Readonly<Record<string, number>> {
  const rule = literalRules[table.id];
  if (!rule) throw new Error(`no rules for ${table.id}`);
  const fewest: Record<string, number> = {};
  const visit = (from: number, given: Items, changes: number): void => {
    const level = rule(given, ageYears);
    fewest[level] = Math.min(fewest[level] ?? Number.POSITIVE_INFINITY, changes);
    if (changes === most) return;
    for (let i = from; i < free.length; i++) {
      const item = free[i] ?? '';
      const values = table.items[item]?.valueType === 'count' ? EDGE_COUNTS : [false, true];
      for (const value of values) if (value !== items[item]) visit(i + 1, { ...given, [item]: value }, changes + 1);
    }
  };
  visit(0, items, 0);
  return fewest;
}

const apply = (items: Items, { changes }: LevelChange): Items => ({ ...items, ...Object.fromEntries(changes.map((c) => [c.item, c.to])) });

describe.each(protocolTables.map((table) => [table.id, table] as const))('%s', (id, table) => {
  it('finds a smallest set for each level that can be reached, and no other level', () => {
    const free = fc.subarray(
      [...idsOf(table)].filter((item) => !table.items[item]?.notAvailable),
      { minLength: 0, maxLength: 9 },
    );
    fc.assert(
      fc.property(casesOf(table, 0), free, ({ items: given, ageYears }, loose) => {
        // Half of the free items unknown, half known and changeable; everything else known and fixed.
        const unknown = loose.filter((_, i) => i % 2 === 0);
        const changeable = loose.filter((_, i) => i % 2 === 1);
        const items = Object.fromEntries(Object.entries(given).filter(([item]) => !unknown.includes(item)));
        const stillUnknown = idsOf(table).filter((item) => items[item] === undefined && !table.items[item]?.notAvailable);
        const fewest = enumerateFewest(table, items, ageYears, [...new Set([...stillUnknown, ...changeable])], 3);
        const present = literalRules[id]?.(items, ageYears);
        const found = whatWouldChange(table, items, ageYears, settings, changeable);
        const small = found.filter((change) => change.changes.length <= 3);
        const withholdsLow = stillUnknown.some((item) => table.items[item]?.role === 'disease');
        const others = Object.keys(fewest).filter((level) => level !== present && !(level === 'low' && withholdsLow));
        expect(new Set(small.map((change) => change.to))).toEqual(new Set(others));
        for (const change of small) {
          expect(change.changes).toHaveLength(fewest[change.to] ?? -1);
          expect(literalRules[id]?.(apply(items, change), ageYears)).toBe(change.to);
          for (const { item, from, to } of change.changes) {
            expect(from).toBe(items[item]);
            expect(to).not.toBe(from);
            expect(items[item] === undefined || changeable.includes(item)).toBe(true);
          }
        }
        const texts = found.map((change) => JSON.stringify([change.to, change.changes]));
        expect(new Set(texts).size).toBe(texts.length);
      }),
      { numRuns: 60 },
    );
  });
});

test('the changes it proposes are the nearest values, in the order of the list', () => {
  const items: Items = {
    lesion_cavity_or_dentin_new: false,
    lesion_white_spot_smooth_new: false,
    lesion_enamel_radiographic_new: false,
    restoration_for_decay_recent: false,
    plaque_heavy_visible: true,
    snacks_between_meals_per_day: 6,
    medicine_saliva_reducing: false,
    saliva_reducing_condition: false,
    chemo_radiotherapy: false,
    saliva_flow_reduced_measured: false,
    pits_fissures_deep: false,
    drug_recreational: false,
    roots_exposed: false,
    appliance_orthodontic_or_removable: false,
    water_fluoridated: true,
    toothpaste_f_once_daily: true,
    toothpaste_f_twice_daily: true,
    toothpaste_f_5000: false,
    varnish_f_6m: false,
    rinse_naf_005_daily: false,
    rinse_chx_monthly_week: false,
    saliva_normal: true,
  };
  expect(whatWouldChange(fourLevel2019, items, 40, settings, ['plaque_heavy_visible', 'snacks_between_meals_per_day'])).toEqual([
    { to: 'low', changes: [{ item: 'plaque_heavy_visible', from: true, to: false }] },
    { to: 'low', changes: [{ item: 'snacks_between_meals_per_day', from: 6, to: 3 }] },
  ]);
});

test('food and feeds are left out unless the safety rules allow them; what looks back never is in', () => {
  const strict = listChangeableItems(fourLevelChild2010, { mayLimitFood: false });
  const free = listChangeableItems(fourLevelChild2010, { mayLimitFood: true });
  expect(free.filter((item) => !strict.includes(item)).sort()).toEqual([
    'bottle_bedtime_not_water',
    'bottle_continual',
    'bottle_in_bed',
    'snacks_between_meals_per_day',
    'sugars_mainly_at_meals',
  ]);
  expect(strict).toContain('bottle_sugared_fluid');
  for (const item of Object.values(fourLevelChild2010.items)) {
    if (item.role === 'disease' || ['medical', 'social', 'family', 'saliva'].includes(item.group)) expect(free).not.toContain(item.id);
  }
});
