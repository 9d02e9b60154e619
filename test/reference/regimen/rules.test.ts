import { describe, expect, it, test } from 'vitest';
import { agents } from '../../../src/content/agents.ts';
import { regimenTables as tables } from '../../../src/content/regimenTables.ts';
import { findConflict } from '../../../src/core/regimen/candidates.ts';
import { checkItem } from '../../../src/core/regimen/checkItem.ts';
import { checkTogether, remarksOn } from '../../../src/core/regimen/checkTogether.ts';
import type { OwnLegalStatuses } from '../../../src/core/regimen/legalStatus.ts';
import type { PersonFacts } from '../../../src/core/regimen/types.ts';
import { nobody, type PairCase, packOf, pairCases, type RuleCase, ruleCases } from './ruleCases.ts';

/** Every rule of the list, and our own, by its number. P13 was never given. */
const IDS_OF_ONE_PACK = [
  ...['C01', 'C02', 'C03', 'C04', 'C05', 'C06', 'C07', 'C08', 'C09', 'C10', 'C11', 'C12', 'C13', 'C14', 'C15', 'C16', 'C17', 'C18', 'C19'],
  ...['C20', 'C21', 'C22', 'C23', 'C24', 'C25', 'C26', 'C27', 'C28', 'C29', 'C30', 'C31', 'C32', 'C33', 'C34', 'C35', 'C36', 'C37', 'C38'],
  ...['C39', 'C40'],
  ...['P01', 'P02', 'P03', 'P04', 'P05', 'P06', 'P07', 'P08', 'P09', 'P11', 'P12', 'P14', 'P15', 'P16', 'P17', 'P18', 'P19', 'P20', 'P21'],
  ...['P22', 'P23'],
];
const IDS_OF_PAIRS = ['I01', 'I01b', 'I02', 'I03', 'I04', 'I05', 'I06', 'I07', 'I08', 'I09', 'I10', 'I11', 'I12', 'I13', 'C36'];
/** Fluoride of a day above an upper level: it is about the plan, not about a pack. */
const OF_THE_PLAN = 'P10';

const isOf = (id: string, ruleId: string) => ruleId === id || new RegExp(`^${id}[a-z]$`).test(ruleId);
const whoIs = (who: Partial<PersonFacts> = {}): PersonFacts => ({ ...nobody, ...who });
/** How each agent may be given, as a practice would set it: so that no rule of law speaks before the one that is looked at. */
const LEGAL: OwnLegalStatuses = Object.fromEntries(agents.map(({ id }) => [id, 'prescription'] as const));

function firesOf(c: RuleCase): string[] {
  const { agent, pack, who, place = 'UK', own, hasNoTeeth, noLaw, notSold } = c;
  const check = checkItem({
    item: packOf(agent, pack),
    facts: whoIs(who),
    level: 'level' in c ? c.level : 'high',
    jurisdiction: place,
    legal: noLaw ? {} : { ...LEGAL, ...(notSold && { [agent]: 'not-sold' as const }) },
    localProtocols: own,
    hasNoTeeth,
    tables,
  });
  const bars = [...check.stops, ...check.asks, ...check.cautions].map(({ ruleId, level }) => [ruleId, level] as const);
  const all = [...bars, ...check.warnings.map(({ ruleId }) => [ruleId, 'warn'] as const)];
  return [...new Set(all.filter(([ruleId]) => isOf(c.id, ruleId)).map(([, level]) => level))];
}

test.each(ruleCases.map((c) => [c.id, c.agent, JSON.stringify({ ...c.who, ...c.pack, place: c.place }), c.fires ?? 'silent', c] as const))(
  '%s %s %s: %s',
  (_id, _agent, _who, _expected, c) => expect(firesOf(c)).toEqual(c.fires === undefined ? [] : expect.arrayContaining([c.fires])),
);

function meetingOf({ id, a, b }: PairCase): string[] {
  const isIt = (ruleId: string) => ruleId === id || (id === 'C36' && ruleId === 'C36b');
  const met = checkTogether(a, b, tables.interactions).map((m) => [m.interaction.id, m.verdict] as const);
  const told = remarksOn(a, [b], tables.interactions).map((row) => [row.id, 'remark'] as const);
  return [...met, ...told].filter(([ruleId]) => isIt(ruleId)).map(([, verdict]) => verdict);
}

test.each(pairCases.map((c) => [c.id, c.a.agentId, c.b.agentId, c.fires ?? 'silent', c] as const))(
  '%s %s and %s: %s',
  (_id, _a, _b, _expected, c) => {
    expect(meetingOf(c)).toEqual(c.fires === undefined ? [] : [c.fires]);
  },
);

describe('no rule is without a case', () => {
  const sides = (cases: readonly { readonly id: string; readonly fires?: string }[], id: string) => [
    cases.some((c) => c.id === id && c.fires !== undefined),
    cases.some((c) => c.id === id && c.fires === undefined),
  ];
  test.each(IDS_OF_ONE_PACK)('%s fires somewhere and is silent somewhere', (id) => expect(sides(ruleCases, id)).toEqual([true, true]));
  test.each(IDS_OF_PAIRS)('%s, of two packs', (id) => expect(sides(pairCases, id)).toEqual([true, true]));

  it('and no rule of the product is without a number of the list; C41, of one label, stands in its own test', () => {
    const known = [...IDS_OF_ONE_PACK, ...IDS_OF_PAIRS, OF_THE_PLAN, 'C41'];
    const ids = [...tables.rules.map((r) => r.id), ...tables.interactions.map((i) => i.id), ...Object.keys(tables.planRules)];
    expect(ids.filter((id) => !known.some((k) => isOf(k, id)))).toEqual([]);
  });
});

describe('C41, stannous fluoride paste under 12 in the US', () => {
  const at = (years: number, place: 'US' | 'UK') =>
    firesOf({
      id: 'C41',
      agent: 'F_PASTE_STD',
      pack: { compound: 'SnF2' },
      who: { ageYears: years, ageMonths: years * 12, weightKg: 35 },
      place,
    });
  it('asks a dentist', () => expect([at(11, 'US'), at(12, 'US'), at(11, 'UK')]).toEqual([['caution'], [], []]));
});

describe('P10, fluoride of the day', () => {
  const conflictWith = (waterLitresPerDay: number) => {
    const facts = whoIs({ ageYears: 5, ageMonths: 60, weightKg: 18, waterFluorideMgPerL: 1.5, waterLitresPerDay });
    const item = packOf('F_PASTE_STD', { use: { timesPerDay: 2, amount: 'a pea', amountG: 0.25 } });
    const check = checkItem({ item, facts, level: 'high', jurisdiction: 'UK', legal: LEGAL, tables });
    const candidate = { item, use: item.use, state: 'proposed', meets: item.meets, check, holdsFluoride: true } as const;
    return findConflict(candidate, [], { facts, signed: [], tables })?.ruleId;
  };
  // Upper level of 2025 at 5 years 2 mg a day, 0.1 mg/kg of 1997 at 18 kg 1.8 mg: the paste brings 0.61 mg, the water 1.5 mg a litre.
  it('stops above the upper level and not below it', () => expect([conflictWith(0.9), conflictWith(0.7)]).toEqual(['P10', undefined]));
});
