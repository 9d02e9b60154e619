import fc from 'fast-check';
import { demoShelf } from '../../src/content/demo/shelf.ts';
import { regimenTables } from '../../src/content/regimenTables.ts';
import { findNeeds } from '../../src/core/regimen/findNeeds.ts';
import type { ProposePlanInput } from '../../src/core/regimen/proposePlan.ts';
import type { Jurisdiction, RegimenCriterion, ShelfItem } from '../../src/core/regimen/types.ts';
import type { Level } from '../../src/core/risk/types.ts';
import { oddShelf } from './oddShelf.ts';
import { anyone, nothingWrong } from './people.ts';
import type { Choice } from './regimenValue.ts';

export const everyItem = [...demoShelf, ...oddShelf];

/** Another price, pack, number of uses or stock than the demonstration's; half of them on an edge. */
const spoilt = (item: ShelfItem): fc.Arbitrary<ShelfItem> =>
  fc.constantFrom(
    item,
    item,
    item,
    item,
    { ...item, priceCents: undefined },
    { ...item, priceCents: 0 },
    { ...item, packAmount: undefined },
    { ...item, inStock: false },
    { ...item, traits: undefined },
    { ...item, use: { ...item.use, timesPerDay: item.use.atVisit ? 0 : 1 } },
  );
const ORDERS: readonly (readonly RegimenCriterion[])[] = [
  ['tasks', 'cost', 'items'],
  ['cost', 'tasks', 'items'],
  ['items', 'cost', 'tasks'],
];

/** People and shelves without signatures; `most` packs at most, absent = a whole shelf. */
export const choices = (most?: number): fc.Arbitrary<Choice> =>
  fc
    .subarray(everyItem, most === undefined ? { minLength: 1 } : { minLength: Math.min(2, most), maxLength: most })
    .chain((items) =>
      fc.record({
        facts: fc.oneof(anyone, nothingWrong),
        shelf: fc.tuple(...items.map(spoilt)),
        jurisdiction: fc.constantFrom<Jurisdiction>('US', 'UK', 'unknown'),
        level: fc.constantFrom<Level>('low', 'moderate', 'high', 'extreme'),
        protocol: fc.constantFrom('four_level_6plus_2019', 'child_list_6plus', 'child_list_0_5'),
        order: fc.constantFrom(...ORDERS),
        mostTasksPerDay: fc.constantFrom(undefined, undefined, 0, 2, 4, 5, 8),
        dropped: fc.subarray(
          items.map((i) => i.id),
          { maxLength: Math.min(2, items.length) },
        ),
      }),
    )
    .map(withNeeds);

/** Grown people with a dry mouth at a high level who set no limit of tasks, so that the best regimen asks for much. */
export const choicesOfMuch = (most: number): fc.Arbitrary<Choice> =>
  fc.tuple(choices(most), nothingWrong, fc.constantFrom<Level>('high', 'extreme')).map(([c, facts, level]) =>
    withNeeds({
      ...c,
      facts: { ...facts, ageYears: 40, ageMonths: 480, canSpit: true, weightKg: 70, dryMouth: true },
      level,
      protocol: 'four_level_6plus_2019',
      mostTasksPerDay: undefined,
    }),
  );

function withNeeds({ protocol, ...rest }: Omit<Choice, 'needs' | 'level'> & { readonly level: Level; readonly protocol: string }): Choice {
  const confirmed = { level: rest.level, protocol, edition: '1', by: 'A. Hygienist', at: '2026-11-25T09:00:00Z' };
  const { facts, jurisdiction } = rest;
  return { ...rest, needs: findNeeds({ facts, confirmed, jurisdiction, findings: [], result: null, tables: regimenTables }) };
}

export const planInput = (c: Choice): ProposePlanInput => ({
  facts: c.facts,
  needs: c.needs,
  shelf: c.shelf,
  signed: [],
  confirmed: c.level && { level: c.level, protocol: 'four_level_6plus_2019', edition: '1', by: 'A. Hygienist', at: '2026-11-25T09:00:00Z' },
  settings: { jurisdiction: c.jurisdiction, regimenOrder: c.order, mostTasksPerDay: c.mostTasksPerDay },
  history: c.dropped.map((shelfItemId) => ({ shelfItemId, why: 'taste' })),
  tables: regimenTables,
});
