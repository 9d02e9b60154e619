import { describe, expect, it, test } from 'vitest';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables } from '../../../content/regimenTables.ts';
import { pairsApart } from '../dayStrip/pairsApart.ts';
import { proposePlan } from '../proposePlan.ts';
import type { Jurisdiction, Need, NeedKind, PersonFacts, Plan, ShelfItem } from '../types.ts';
import { listSettable, settleTables } from './settleTables.ts';
import type { ChosenPositions } from './types.ts';

const grownUp: PersonFacts = {
  ...{ ageYears: 45, ageMonths: 540, weightKg: 70, pregnant: false, breastfeeding: false, canSpit: true },
  ...{ allergies: [], medicines: [], conditions: [], dogAtHome: false, youngChildAtHome: false, otherFluoride: [] },
  ...{ dryMouth: false, dentures: false, braces: false, jawPain: false, waterFluorideMgPerL: 0, waterLitresPerDay: 1 },
};
const aged = (ageMonths: number, weightKg: number, facts: Partial<PersonFacts> = {}): PersonFacts => ({
  ...grownUp,
  ...{ ageMonths, ageYears: Math.floor(ageMonths / 12), weightKg },
  ...facts,
});
const itemOf = (id: string, rest: Partial<ShelfItem> = {}): ShelfItem => {
  const item = demoShelf.find((i) => i.id === id);
  if (!item) throw new Error(`${id} is not on the demo shelf`);
  return { ...item, ...rest };
};
const chlorhexidine = itemOf('rinse-chlorhexidine-plain');
const soapyPaste = itemOf('paste-naf-1450');

interface Case {
  readonly facts?: PersonFacts;
  readonly needs: Readonly<Partial<Record<NeedKind, readonly (readonly string[])[] | undefined>>>;
  readonly shelf?: readonly ShelfItem[];
  readonly jurisdiction?: Jurisdiction;
  readonly signed?: readonly string[];
}
function planFor(chosen: ChosenPositions, { facts = grownUp, needs, shelf = demoShelf, jurisdiction = 'UK', signed = [] }: Case): Plan {
  return proposePlan({
    facts,
    needs: Object.entries(needs).map(
      ([kind, agentIds]): Need => ({ kind: kind as NeedKind, state: 'needed', because: 'asked', agentIds, sources: [] }),
    ),
    shelf,
    signed: signed.map((shelfItemId) => ({ shelfItemId, by: 'Dr. Ahlgren', at: '2026-11-25T11:00:00Z' })),
    confirmed: { level: 'high', protocol: 'four_level_6plus_2019', edition: '1', by: 'Ines Marrow', at: '2026-11-25T10:00:00Z' },
    settings: { jurisdiction, legal: { F_SUPP: 'prescription' } },
    tables: settleTables(regimenTables, chosen),
  });
}
const idsOf = (plan: Plan) => plan.lines.map((line) => line.shelfItemId);
const isStoppedBy = (plan: Plan, ruleId: string) => plan.notOffered.some((x) => x.ruleId === ruleId && x.level === 'stop');

const BASE = { 'fluoride-base': [['F_PASTE_STD']] } as const;
const thirsty = aged(45 * 12, 70, { waterFluorideMgPerL: 1.2, waterLitresPerDay: 3 });
const toddler = aged(40, 15, { canSpit: false, waterFluorideMgPerL: 0.9 });
const drops = itemOf('rinse-naf-005', {
  ...{ id: 'drops', agentId: 'F_SUPP', form: 'drops', compound: undefined, percent: undefined, fluoridePpm: 2_500 },
  use: { timesPerDay: 1, amount: '0.1 mL', amountMl: 0.1 },
});

function chlorhexidineWithPaste(chosen: ChosenPositions): unknown {
  const plan = planFor(chosen, { needs: BASE, shelf: [chlorhexidine, soapyPaste], signed: [chlorhexidine.id] });
  const [pair] = pairsApart([chlorhexidine, soapyPaste], settleTables(regimenTables, chosen).interactions);
  return [plan.lines.some((line) => line.warnings.some((w) => w.ruleId === 'I01')), pair?.minutes];
}

/** What is proposed or said, and what each position makes of it; the one that holds unset stands first. */
const CASES: Readonly<Record<string, readonly [probe: (chosen: ChosenPositions) => unknown, expected: Readonly<Record<string, unknown>>]>> =
  {
    'fluoride-upper-level': [
      (chosen) =>
        [thirsty, toddler].map((facts) => idsOf(planFor(chosen, { facts, needs: BASE, shelf: [itemOf('paste-naf-1000')] })).length),
      { lowest: [0, 0], 'us-1997': [1, 0], 'european-2025': [0, 1] },
    ],
    'rinse-age': [
      (chosen) =>
        [7, 8].map((years) =>
          idsOf(planFor(chosen, { facts: aged(years * 12, 25), needs: { 'fluoride-extra': [['F_RINSE_005']] } })).includes('rinse-naf-005'),
        ),
      { 'from-8': [false, true], 'from-6': [true, true] },
    ],
    'paste-under-2': [
      (chosen) => planFor(chosen, { facts: aged(18, 11, { canSpit: false }), needs: BASE }).lines.map((line) => line.state),
      { 'first-tooth': ['proposed'], 'from-2': ['waiting-for-signature'] },
    ],
    'beside-high-paste': [
      (chosen) =>
        idsOf(planFor(chosen, { needs: { 'fluoride-extra': [['F_PASTE_5000']], 'professional-fluoride': [['F_VARNISH']] } })).map((id) =>
          id.startsWith('varnish'),
        ),
      { 'with-the-sum': [false, true], never: [false] },
    ],
    'chlorhexidine-age': [
      (chosen) =>
        [10, 15, 18].map((years) =>
          isStoppedBy(
            planFor(chosen, { facts: aged(years * 12, 30 + years), needs: {}, shelf: [chlorhexidine], signed: [chlorhexidine.id] }),
            'C42',
          ),
        ),
      { 'from-18': [true, true, false], 'from-12': [true, false, false] },
    ],
    'chlorhexidine-and-paste': [chlorhexidineWithPaste, { 'half-an-hour': [true, 30], 'two-hours': [true, 120], 'no-time': [false, 30] }],
    xylitol: [
      (chosen) => idsOf(planFor(chosen, { needs: { sweetener: [['XYLITOL'], ['POLYOL_GUM']] } })),
      { 'as-listed': ['gum-xylitol'], 'by-choice': ['gum-polyol'] },
    ],
    arginine: [
      (chosen) => idsOf(planFor(chosen, { needs: { 'fluoride-base': undefined }, shelf: [{ ...soapyPaste, agentId: 'ARGININE' }] })),
      { 'as-fluoride-paste': ['paste-naf-1450'], 'by-choice': [] },
    ],
    hydroxyapatite: [
      (chosen) => idsOf(planFor(chosen, { needs: { 'calcium-phosphate': undefined }, shelf: [itemOf('paste-hydroxyapatite')] })),
      { 'beside-fluoride': ['paste-hydroxyapatite'], 'by-choice': [] },
    ],
    casein: [
      (chosen) => idsOf(planFor(chosen, { needs: { 'calcium-phosphate': undefined }, shelf: [itemOf('paste-casein')] })),
      { 'as-listed': ['paste-casein'], 'by-choice': [] },
    ],
    'brushing-after-acid': [
      (chosen) => planFor(chosen, { needs: BASE }).lines.flatMap((line) => line.warnings.map((w) => w.ruleId)),
      { 'no-wait': [], 'half-an-hour': ['C44'] },
    ],
    'alkaline-rinse': [
      (chosen) => idsOf(planFor(chosen, { needs: { 'acid-control': undefined } })),
      { 'as-listed': ['powder-bicarbonate'], 'by-choice': [] },
    ],
    'supplement-age': [
      (chosen) => isStoppedBy(planFor(chosen, { facts: aged(30, 13), needs: { 'fluoride-extra': undefined }, shelf: [drops] }), 'C40'),
      { 'from-3': true, 'from-half-a-year': false },
    ],
  };

describe('where sources disagree, a choice changes what is proposed or said', () => {
  it('leaves no supplement under 3 years in the US, nor where the place is not known, whatever was chosen', () => {
    const at = (jurisdiction: Jurisdiction, months: number) =>
      isStoppedBy(
        planFor(
          { 'supplement-age': 'from-half-a-year' },
          { facts: aged(months, 13), needs: { 'fluoride-extra': undefined }, shelf: [drops], jurisdiction },
        ),
        'C40',
      );
    const places = ['US', 'unknown', 'by-hand', 'UK', 'EU'] as const;
    expect(places.map((place) => at(place, 35))).toEqual([true, true, true, false, false]);
    expect(places.map((place) => at(place, 36))).toEqual([false, false, false, false, false]);
  });

  it('has a case for every choice there is', () => {
    const settable = listSettable(regimenTables);
    expect(Object.keys(CASES).sort()).toEqual(settable.map(({ id }) => id).sort());
    for (const { id, positions, unset } of settable) {
      expect(Object.keys(CASES[id]?.[1] ?? {})).toEqual([unset, ...positions.map((p) => p.id).filter((p) => p !== unset)]);
    }
  });

  test.each(Object.entries(CASES))('%s', (id, [probe, expected]) => {
    const found = Object.keys(expected).map((position) => [position, probe({ [id]: position })]);
    expect(Object.fromEntries(found)).toEqual(expected);
    expect(new Set(Object.values(expected).map((v) => JSON.stringify(v))).size).toBe(Object.keys(expected).length);
    const [first] = Object.values(expected);
    expect([probe({}), probe({ [id]: 'something else' }), probe({ another: 'one' })]).toEqual([first, first, first]);
  });
});

it('gives the same tables for the same choice, and leaves those handed in as they were', () => {
  const before = JSON.stringify(regimenTables);
  expect(settleTables(regimenTables, { 'rinse-age': 'from-6' })).toBe(settleTables(regimenTables, { 'rinse-age': 'from-6', other: 'x' }));
  expect(settleTables(regimenTables, { 'rinse-age': 'from-6' })).not.toBe(settleTables(regimenTables));
  expect(JSON.stringify(regimenTables)).toBe(before);
  const none = { ...regimenTables, disagreements: undefined };
  expect(settleTables(none)).toBe(none);
});
