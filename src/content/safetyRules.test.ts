import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkItem } from '../core/regimen/checkItem.ts';
import type { SafetyRule, Trigger } from '../core/regimen/tables.ts';
import type { Jurisdiction, PersonFacts, ShelfItem } from '../core/regimen/types.ts';
import { agents, allergenMatches, allergyWords } from './agents.ts';
import { allergens } from './allergens.ts';
import { cautions } from './cautions.ts';
import { conditions } from './conditions.ts';
import { medicineClasses } from './medicines.ts';
import { questions } from './questions.ts';
import { regimenTables } from './regimenTables.ts';
import { interactions, planRules, safetyRules } from './safetyRules.ts';
import { sources } from './sources.ts';
import { regimenSources } from './sources-regimen.ts';
import { leafletTable } from './texts/leafletTable.ts';

interface RawRule {
  readonly id: string;
  readonly level: string;
  readonly agentIds: readonly string[];
  readonly traits?: readonly string[];
  readonly withAgentIds?: readonly string[];
  readonly minAgeYears?: Readonly<Record<string, number>>;
}
const raw = JSON.parse(readFileSync(new URL('../../test/reference/regimen/data.json', import.meta.url), 'utf8')) as {
  contraindications: readonly RawRule[];
  interactions: readonly RawRule[];
};
const ruleById = new Map(safetyRules.map((r) => [r.id, r]));
const idsOf = (list: readonly { readonly id: string }[]) => list.map((x) => x.id);

describe('the tables hang together', () => {
  test('no id twice', () => {
    for (const list of [safetyRules, interactions, agents, cautions]) expect(new Set(idsOf(list)).size).toBe(list.length);
  });

  test.each(safetyRules)('$id names agents, allergies, conditions and medicines that exist, and a source that is cited', (rule) => {
    const known = [...idsOf(agents), '*'];
    expect(rule.agentIds.filter((id) => !known.includes(id))).toEqual([]);
    expect((rule.trigger.allergies ?? []).filter((id) => !idsOf(allergens).includes(id))).toEqual([]);
    expect((rule.trigger.conditions ?? []).filter((id) => !idsOf(conditions).includes(id))).toEqual([]);
    expect((rule.trigger.medicines ?? []).filter((id) => !idsOf(medicineClasses).includes(id))).toEqual([]);
    expect({ ...sources, ...regimenSources }[rule.source.key]).toBeDefined();
    expect(Object.keys(rule.trigger).length).toBeGreaterThan(0);
    expect(rule.because).not.toBe('');
    // A refusal says what is allowed instead, or who decides.
    expect(rule.action).toMatch(/^\p{Lu}.{9,}\.$/u);
    if (rule.appliesOnlyIfTrait) expect(rule.traits?.length ?? 0).toBeGreaterThan(0);
  });

  test.each(interactions)('$id names agents that exist, and a source that is cited', ({ agentIds, withAgentIds, source, action }) => {
    expect([...agentIds, ...withAgentIds].filter((id) => !idsOf(agents).includes(id))).toEqual([]);
    expect({ ...sources, ...regimenSources }[source.key]).toBeDefined();
    expect(action).not.toBe('');
  });

  test('every source of agents, plan rules and cautions is cited', () => {
    const keys = [
      ...agents.flatMap((a) => [...a.evidence.map((e) => e.source.key), a.byChoiceOnly?.source.key, a.waitMinutes?.source.key]),
      ...Object.values(planRules).map((r) => r.source.key),
      ...cautions.map((c) => c.source.key),
    ].filter((key) => key !== undefined);
    expect(keys.filter((key) => !(key in sources) && !(key in regimenSources))).toEqual([]);
  });

  test('every allergy that is asked has words and a match, and none besides', () => {
    expect(Object.keys(allergenMatches).sort()).toEqual(idsOf(allergens).sort());
    expect(Object.keys(allergyWords).sort()).toEqual(idsOf(allergens).sort());
    const agentIds = Object.values(allergenMatches).flatMap((m) => m.agentIds);
    expect(agentIds.filter((id) => !idsOf(agents).includes(id))).toEqual([]);
  });

  test('every condition and medicine that is asked is understood, save a medicine of unknown class', () => {
    expect(idsOf(conditions).filter((id) => regimenTables.conditions[id] === undefined)).toEqual([]);
    expect(idsOf(medicineClasses).filter((id) => regimenTables.medicines[id] === undefined)).toEqual(['other']);
  });

  test('rules ask questions that exist, at the ages at which they are asked', () => {
    const asked = Object.values(regimenTables.askFor).flat();
    expect(asked.filter((id) => !idsOf(questions).includes(id))).toEqual([]);
    expect(questions.find((q) => q.id === 'pregnant')?.fromAgeYears).toBe(regimenTables.pregnancyFromAgeYears);
  });

  test('food limits name conditions and medicines that exist, every glucose-lowering class among them', () => {
    const { foodLimits } = regimenTables;
    expect(foodLimits.conditions.filter((id) => !idsOf(conditions).includes(id))).toEqual([]);
    const lowering = medicineClasses.filter((m) => m.glucoseLowering).map((m) => m.id);
    expect([...foodLimits.medicines].sort()).toEqual(lowering.sort());
  });

  test('every caution has words in every language of the leaflet', () => {
    for (const catalog of Object.values(leafletTable.catalogs)) {
      expect(idsOf(cautions).filter((id) => !catalog[`caution.${id}`])).toEqual([]);
    }
  });

  test('every agent has evidence with a source, and a care table names agents that meet its need', () => {
    expect(agents.filter((a) => a.evidence.length === 0).map((a) => a.id)).toEqual([]);
    for (const row of regimenTables.care) {
      for (const need of row.needs) {
        for (const id of need.agentIds?.flat() ?? []) expect(agents.find((a) => a.id === id)?.meets).toContain(need.kind);
      }
    }
  });
});

describe('nothing of the reference list is lost', () => {
  const STRENGTH = ['info', 'warn', 'caution', 'stop'];

  // test/reference/regimen/data.json, contraindications. A row may stand here in parts (C28, C28b, C28c); one part at least has its level.
  test.each(raw.contraindications)('$id', ({ id, level, agentIds }) => {
    const parts = safetyRules.filter((r) => r.id === id || new RegExp(`^${id}[a-z]$`).test(r.id));
    expect(parts.length).toBeGreaterThan(0);
    expect(Math.max(...parts.map((p) => STRENGTH.indexOf(p.level)))).toBeGreaterThanOrEqual(STRENGTH.indexOf(level));
    const covered = new Set(parts.flatMap((p) => p.agentIds));
    expect(agentIds.filter((agent) => !covered.has(agent) && !covered.has('*'))).toEqual([]);
  });

  test.each(raw.interactions)('$id', ({ id, level, agentIds, withAgentIds = [] }) => {
    const found = interactions.find((i) => i.id === id);
    expect(found?.level).toBe(level);
    expect(found?.agentIds).toEqual(agentIds);
    expect(found?.withAgentIds).toEqual(withAgentIds);
  });
});

const nobody: PersonFacts = {
  ageYears: 30,
  ageMonths: 360,
  weightKg: 60,
  pregnant: false,
  breastfeeding: false,
  canSpit: true,
  allergies: [],
  medicines: [],
  conditions: [],
  dogAtHome: false,
  youngChildAtHome: false,
  dryMouth: false,
  dentures: false,
  braces: false,
  jawPain: false,
  waterFluorideMgPerL: 0,
  waterFluoridated: false,
  otherFluoride: [],
  strongPasteInUse: false,
};
const agedYears = (years: number, facts: Partial<PersonFacts> = {}): PersonFacts => ({
  ...nobody,
  ageYears: years,
  ageMonths: years * 12,
  ...facts,
});

/** A pack that a rule is about: of its first agent, holding its first trait. */
function packFor(rule: SafetyRule): ShelfItem {
  const agentId = rule.agentIds[0] === '*' ? 'POLYOL_GUM' : (rule.agentIds[0] ?? '');
  const trait = rule.traits?.[0];
  const form = trait === 'gum' || trait === 'lozenge' || trait === 'spray' ? trait : 'paste';
  const ppm = agents.find((a) => a.id === agentId)?.ppmRange?.[0];
  return {
    id: 'pack',
    name: 'pack',
    leafletName: { en: 'pack', es: 'pack' },
    agentId,
    form,
    traits: trait === undefined ? [] : [trait],
    fluoridePpm: trait === 'contains fluoride' ? 900 : ppm,
    percent: 0.1,
    inStock: true,
    release: 'anyone',
    meets: [],
    use: { timesPerDay: 1, amount: '1', amountG: 1 },
  };
}
function checkFor(rule: SafetyRule, facts: PersonFacts, jurisdiction: Jurisdiction = 'UK') {
  const check = checkItem({ item: packFor(rule), facts, level: 'high', jurisdiction, tables: regimenTables });
  const found = [...check.stops, ...check.asks, ...check.cautions].find((b) => b.ruleId === rule.id);
  return found?.level ?? (check.warnings.some((w) => w.ruleId === rule.id) ? 'warn' : 'none');
}

describe('ages, on both sides of every birthday', () => {
  const places: readonly Jurisdiction[] = ['US', 'UK', 'unknown'];
  const rows = raw.contraindications.flatMap(({ id, minAgeYears }) =>
    minAgeYears ? places.map((place) => ({ id, place, minAgeYears })) : [],
  );

  // test/reference/regimen/data.json, minAgeYears; with no place known the highest of all ages in the row. No tolerance.
  test.each(rows)('$id in $place', ({ id, place, minAgeYears }) => {
    const age = place === 'unknown' ? Math.max(...Object.values(minAgeYears)) : (minAgeYears[place] ?? minAgeYears.default ?? 0);
    const rule = ruleById.get(id);
    if (!rule) throw new Error(`no rule ${id}`);
    // C38 is about dry mouth under an age, so the person has one.
    const facts = id === 'C38' ? { dryMouth: true } : {};
    expect(checkFor(rule, agedYears(age - 1, facts), place)).toBe('stop');
    expect(checkFor(rule, { ...agedYears(age - 1, facts), ageMonths: age * 12 - 1 }, place)).toBe('stop');
    expect(checkFor(rule, agedYears(age, facts), place)).toBe('none');
  });

  test.each(safetyRules.filter((r) => r.trigger.ageBelowYears))(
    '$id: no place is stricter than a place that is not known',
    ({ trigger }) => {
      const { US, UK, unknown } = trigger.ageBelowYears ?? { US: 0, UK: 0, unknown: 0 };
      expect(unknown).toBeGreaterThanOrEqual(Math.max(US, UK));
    },
  );
});

/** An age at which a weight of a few kg can be right: one that cannot is no fact. */
const IN_ITS_WEIGHT = { ageYears: 1, ageMonths: 12 };

/** For each part of a trigger, a person for whom it holds, and one for whom it is not known. */
function peopleFor(
  trigger: Trigger,
): readonly { readonly part: string; readonly held: Partial<PersonFacts>; readonly unknown: Partial<PersonFacts> }[] {
  const listed = (fact: 'allergies' | 'conditions' | 'medicines', ids: readonly string[] = []) =>
    ids.map((id) => ({ part: id, held: { [fact]: [id] }, unknown: { [fact]: undefined } }));
  return [
    ...listed('allergies', trigger.allergies),
    ...listed('conditions', trigger.conditions),
    ...listed('medicines', trigger.medicines),
    ...(trigger.pregnant ? [{ part: 'pregnant', held: { pregnant: true }, unknown: { pregnant: undefined } }] : []),
    ...(trigger.breastfeeding ? [{ part: 'breast-feeding', held: { breastfeeding: true }, unknown: { breastfeeding: undefined } }] : []),
    ...(trigger.cannotSpit ? [{ part: 'spit', held: { canSpit: false }, unknown: { canSpit: undefined } }] : []),
    ...(trigger.flags ?? []).map((flag) => ({ part: flag, held: { [flag]: true }, unknown: { [flag]: undefined } })),
    ...(trigger.otherFluoride ?? []).map((kind) => ({
      part: kind,
      held: { otherFluoride: [kind] },
      unknown: { otherFluoride: undefined },
    })),
    ...(trigger.weightBelowKg === undefined
      ? []
      : [{ part: 'weight', held: { ...IN_ITS_WEIGHT, weightKg: trigger.weightBelowKg - 0.1 }, unknown: { weightKg: undefined } }]),
    ...(trigger.waterFluorideAboveMgPerL === undefined
      ? []
      : [
          {
            part: 'water',
            held: { waterFluorideMgPerL: trigger.waterFluorideAboveMgPerL + 0.01 },
            unknown: { waterFluorideMgPerL: undefined },
          },
        ]),
  ];
}
const parts = safetyRules
  .filter((r) => r.onlyBelowAgeYears === undefined)
  .flatMap((rule) => peopleFor(rule.trigger).map((person) => ({ id: rule.id, rule, ...person })));

describe('each part of each rule', () => {
  test.each(parts)('$id fires for $part, asks first when it is not known, and is silent when it is not so', ({ rule, held, unknown }) => {
    expect(checkFor(rule, { ...nobody, ...held })).toBe(rule.level);
    expect(checkFor(rule, { ...nobody, ...unknown })).toBe(rule.level === 'warn' ? 'warn' : 'ask-first');
    if (rule.trigger.always !== true) expect(checkFor(rule, nobody)).toBe('none');
  });

  test('an id that no list holds proves nothing absent', () => {
    const rule = ruleById.get('C20');
    if (!rule) throw new Error('no rule C20');
    expect(checkFor(rule, { ...nobody, medicines: ['other'] })).toBe('ask-first');
    expect(checkFor(rule, { ...nobody, conditions: ['something-new'] })).toBe('ask-first');
  });
});
