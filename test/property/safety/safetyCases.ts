import fc from 'fast-check';
import { demoShelf } from '../../../src/content/demo/shelf.ts';
import { placeDependentAgentIds } from '../../../src/content/legalStatus.ts';
import { regimenTables } from '../../../src/content/regimenTables.ts';
import { findNeeds } from '../../../src/core/regimen/findNeeds.ts';
import type { LegalStatus, OwnLegalStatuses } from '../../../src/core/regimen/legalStatus.ts';
import type { LocalProtocol } from '../../../src/core/regimen/local/localProtocol.ts';
import { type ProposePlanInput, proposePlan } from '../../../src/core/regimen/proposePlan.ts';
import type { ConfirmedLevel, Jurisdiction, PersonFacts, ShelfItem, SignedItem } from '../../../src/core/regimen/types.ts';
import type { Level } from '../../../src/core/risk/types.ts';
import { oddShelf } from '../oddShelf.ts';
import type { World } from '../oracle.ts';
import { anyone, nothingWrong } from '../people.ts';

const person = fc.oneof({ weight: 3, arbitrary: anyone }, { weight: 1, arbitrary: nothingWrong });

export const allItems = [...demoShelf, ...oddShelf];
/** What a shelf entry can get wrong. */
const SPOIL = {
  no: (item: ShelfItem) => item,
  'pack not read': (item: ShelfItem) => ({ ...item, traits: undefined }),
  'no strength': (item: ShelfItem) => ({ ...item, fluoridePpm: undefined, percent: undefined }),
  'for anyone': (item: ShelfItem) => ({ ...item, release: 'anyone' as const }),
  'out of stock': (item: ShelfItem) => ({ ...item, inStock: false }),
  'twenty grams': (item: ShelfItem) => ({ ...item, use: { ...item.use, amountG: 20, amountMl: undefined } }),
  'no amount': (item: ShelfItem) => ({ ...item, use: { ...item.use, amountG: undefined, amountMl: undefined } }),
} as const;
/** Short, so that a counterexample can be read. */
interface Pack {
  readonly id: string;
  readonly spoilt: keyof typeof SPOIL;
}
const spoilt = fc.oneof(
  { weight: 2, arbitrary: fc.constant('no' as const) },
  { weight: 1, arbitrary: fc.constantFrom(...(Object.keys(SPOIL) as (keyof typeof SPOIL)[])) },
);
const packs: fc.Arbitrary<readonly Pack[]> = fc
  .oneof(fc.constant(allItems), fc.constant(demoShelf), fc.subarray(allItems, { minLength: 1 }))
  .chain((items) => fc.tuple(...items.map(({ id }) => fc.record({ id: fc.constant(id), spoilt }))));
export const shelfOf = ({ shelf }: Case): readonly ShelfItem[] =>
  shelf.flatMap((pack) => allItems.filter((item) => item.id === pack.id).map(SPOIL[pack.spoilt]));

const RULE_IDS = ['C02', 'C03', 'C05', 'C06', 'C07', 'C12', 'C13', 'C16', 'C17', 'C20', 'C27', 'C28', 'C30', 'C34', 'P10', 'P12', 'I02'];
const CHOSEN = allItems.filter((i) => /CHX|NAOCL|F_PASTE_[25]|F_GEL|SDF38/.test(i.agentId)).map((i) => i.id);
const signedFor = (ids: readonly string[]): fc.Arbitrary<readonly SignedItem[]> =>
  fc.array(
    fc.record({
      shelfItemId: fc.oneof(fc.constantFrom(...ids), fc.constantFrom('nobody-stocks-this', ...CHOSEN)),
      by: fc.constantFrom('A. Dentist', 'A. Dentist', 'A. Dentist', ' '),
      at: fc.constant('2026-11-25T10:00:00Z'),
      override: fc.option(fc.record({ ruleId: fc.constantFrom(...RULE_IDS), reason: fc.constantFrom('weighed with the patient', ' ') }), {
        nil: undefined,
      }),
    }),
    { maxLength: 4 },
  );

/** Half of the practices have said nothing of the law of their place, the others something of each kind of product. */
const legal: fc.Arbitrary<OwnLegalStatuses | undefined> = fc.option(
  fc
    .array(fc.constantFrom<LegalStatus>('over-the-counter', 'prescription', 'dentist', 'not-sold'), { minLength: 9, maxLength: 9 })
    .map((said) => Object.fromEntries(placeDependentAgentIds.map((id, i) => [id, said[i] ?? 'dentist']))),
  { nil: undefined, freq: 1 },
);
const level = fc.option(fc.constantFrom<Level>('low', 'moderate', 'high', 'extreme'), { nil: undefined, freq: 8 });
type Reading = { readonly counted: boolean; readonly verdict?: 'below' | 'too-close' | 'above' | undefined };
export const READINGS: readonly Reading[] = [
  { counted: true, verdict: 'above' },
  { counted: true, verdict: 'below' },
  { counted: true, verdict: 'too-close' },
  { counted: false, verdict: 'above' },
  { counted: false },
];
export interface Case {
  readonly facts: PersonFacts;
  readonly shelf: readonly Pack[];
  readonly signed: readonly SignedItem[];
  readonly jurisdiction: Jurisdiction;
  readonly legal: OwnLegalStatuses | undefined;
  readonly hypochlorite: number | undefined;
  readonly level: Level | undefined;
  readonly protocol: string;
  readonly reading: Reading;
}
const mixedCases: fc.Arbitrary<Case> = packs.chain((items) =>
  fc.record({
    facts: person,
    shelf: fc.constant(items),
    signed: signedFor(items.map((i) => i.id)),
    jurisdiction: fc.constantFrom<Jurisdiction>('US', 'UK', 'EU', 'by-hand', 'unknown'),
    legal,
    hypochlorite: fc.constantFrom(undefined, undefined, 0.2, 0.25, 0.5),
    level,
    protocol: fc.constantFrom('four_level_6plus_2019', 'child_list_6plus', 'child_list_0_5', 'scored_list_over_6'),
    reading: fc.constantFrom(...READINGS),
  }),
);

/** Grown people with nothing wrong, a whole shelf, and a dentist who signs at random: what must never meet in one plan. */
const choosers: fc.Arbitrary<Case> = fc.record({
  facts: nothingWrong.filter((f) => f.ageYears >= 18),
  shelf: fc.constant(allItems.map(({ id }) => ({ id, spoilt: 'no' as const }))),
  signed: fc
    .subarray(CHOSEN, { minLength: 1, maxLength: 5 })
    .map((ids) => ids.map((shelfItemId) => ({ shelfItemId, by: 'A. Dentist', at: '2026-11-25T10:00:00Z' }))),
  jurisdiction: fc.constantFrom<Jurisdiction>('US', 'UK', 'EU', 'by-hand', 'unknown'),
  legal,
  hypochlorite: fc.constantFrom(0.2, 0.25),
  level,
  protocol: fc.constant('four_level_6plus_2019'),
  reading: fc.constantFrom(...READINGS),
});

/** Young children for whom a dentist signs a rinse with a reason: the rule that keeps it from them is lifted by name, or by a blank reason not. */
const rinses = allItems.filter((i) => /^F_RINSE_/.test(i.agentId)).map((i) => i.id);
const lifters: fc.Arbitrary<Case> = fc
  .tuple(choosers, nothingWrong, fc.constantFrom(...rinses), fc.constantFrom('weighed with the patient', ' '))
  .map(([c, facts, shelfItemId, reason]) => ({
    ...c,
    facts: { ...facts, ageYears: 7, ageMonths: 84, weightKg: 23, canSpit: false },
    protocol: 'child_list_6plus',
    signed: [{ shelfItemId, by: 'A. Dentist', at: '2026-11-25T10:00:00Z', override: { ruleId: 'C07', reason } }],
  }));
export const cases = fc.oneof({ weight: 12, arbitrary: mixedCases }, { weight: 2, arbitrary: choosers }, { weight: 1, arbitrary: lifters });

/** For every level and age, so that the safety rules alone are what keeps it from anybody. */
const OWN_RINSE: LocalProtocol = {
  id: 'own',
  name: 'Own rinse',
  author: 'A. Dentist',
  date: '2026-01-02',
  agentId: 'NAOCL',
  timesPerWeekAtMost: 70,
  courseDaysAtMost: 366,
  levels: ['low', 'moderate', 'high', 'extreme'],
  needs: ['antimicrobial'],
  fromAgeYears: 0,
  exclusions: { conditions: [], medicines: [], allergies: [] },
};

function confirmedOf(c: Case): ConfirmedLevel | undefined {
  return c.level === undefined
    ? undefined
    : { level: c.level, protocol: c.protocol, edition: '1', by: 'A. Hygienist', at: '2026-11-25T09:00:00Z' };
}
export function inputOf(c: Case): ProposePlanInput {
  const confirmed = confirmedOf(c);
  const needs = findNeeds({
    facts: c.facts,
    confirmed,
    reading: c.reading,
    jurisdiction: c.jurisdiction,
    findings: [],
    result: null,
    tables: regimenTables,
  });
  return {
    facts: c.facts,
    needs,
    shelf: shelfOf(c),
    signed: c.signed,
    confirmed,
    tables: regimenTables,
    settings: {
      jurisdiction: c.jurisdiction,
      legal: c.legal,
      localProtocols: c.hypochlorite === undefined ? undefined : [{ ...OWN_RINSE, percentAtMost: c.hypochlorite }],
    },
  };
}
export const planOf = (c: Case) => proposePlan(inputOf(c));
export const worldOf = (c: Case): World => ({
  facts: c.facts,
  shelf: shelfOf(c),
  signed: c.signed,
  jurisdiction: c.jurisdiction,
  legal: c.legal,
  hypochloritePercent: c.hypochlorite,
  level: c.level,
});
