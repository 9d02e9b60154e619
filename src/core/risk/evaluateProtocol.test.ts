import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { literalRules } from '../../../test/reference/risk/literalRules.ts';
import { anyValue, casesOf, EDGE_COUNTS, idsOf } from '../../../test/reference/risk/riskCases.ts';
import { childList0to5 } from '../../content/protocols/childList0to5.ts';
import { fourLevel2019 } from '../../content/protocols/fourLevel2019.ts';
import { protocolTables } from '../../content/protocols/protocolTables.ts';
import { scoredListOver6 } from '../../content/protocols/scoredListOver6.ts';
import { compileList } from './compileList.ts';
import { evaluateProtocol, listUnknownItems } from './evaluateProtocol.ts';
import { compareLevels, sortLevels } from './levels.ts';
import type { ProtocolTable } from './protocol.ts';
import type { Items, Level } from './types.ts';

const settings = { lowSalivaMeansExtreme: false };
/** Every level that plain enumeration over the unknown items gives, by the rules written out without tables. */
function enumerateLevels(table: ProtocolTable, items: Items, ageYears: number): readonly Level[] {
  const rule = literalRules[table.id];
  if (!rule) throw new Error(`no rules for ${table.id}`);
  const unknown = listUnknownItems(table, compileList(table, ageYears, settings), items);
  let fillings: Items[] = [items];
  for (const id of unknown) {
    const values = table.items[id]?.valueType === 'count' ? EDGE_COUNTS : [false, true];
    fillings = fillings.flatMap((filling) => values.map((value) => ({ ...filling, [id]: value })));
  }
  return sortLevels(fillings.map((filling) => rule(filling, ageYears) as Level));
}

describe.each(protocolTables.map((table) => [table.id, table] as const))('%s', (id, table) => {
  it('gives the level of the rules written out without tables', () => {
    fc.assert(
      fc.property(casesOf(table, 30), ({ items, ageYears }) => {
        expect(evaluateProtocol(table, items, ageYears, settings).levelUnknownNotTicked).toBe(literalRules[id]?.(items, ageYears));
      }),
      { numRuns: 500 },
    );
  });

  it('possibleLevels is exactly what enumeration finds', () => {
    fc.assert(
      fc.property(casesOf(table, 6), ({ items, ageYears }) => {
        expect(evaluateProtocol(table, items, ageYears, settings).possibleLevels).toEqual(enumerateLevels(table, items, ageYears));
      }),
      { numRuns: 120 },
    );
  });

  it('filling an unknown item lands inside possibleLevels and never widens them', () => {
    fc.assert(
      fc.property(
        casesOf(table, 30).chain((c) =>
          fc.constantFrom(...idsOf(table)).chain((item) => anyValue(table, item).map((value) => ({ ...c, item, value }))),
        ),
        ({ items, ageYears, item, value }) => {
          fc.pre(items[item] === undefined && table.items[item]?.notAvailable === undefined);
          const before = evaluateProtocol(table, items, ageYears, settings);
          const after = evaluateProtocol(table, { ...items, [item]: value }, ageYears, settings);
          expect(before.possibleLevels).toContain(after.levelUnknownNotTicked);
          expect(before.possibleLevels).toEqual(expect.arrayContaining([...after.possibleLevels]));
        },
      ),
      { numRuns: 150 },
    );
  });

  it('a disease item added never lowers the level, and what protects never cancels it', () => {
    const disease = idsOf(table).filter((item) => table.items[item]?.role === 'disease');
    const protective = idsOf(table).filter((item) => table.items[item]?.role === 'protective');
    fc.assert(
      fc.property(casesOf(table, 30), fc.constantFrom(...disease), ({ items, ageYears }, item) => {
        const absent: Items = { ...items, [item]: table.items[item]?.valueType === 'count' ? 0 : false };
        const present: Items = { ...items, [item]: table.items[item]?.valueType === 'count' ? 3 : true };
        const level = (given: Items) => evaluateProtocol(table, given, ageYears, settings).levelUnknownNotTicked;
        expect(compareLevels(level(present), level(absent))).toBeGreaterThanOrEqual(0);
        const guarded = { ...present, ...Object.fromEntries(protective.map((p) => [p, true])) };
        expect(level(guarded)).not.toBe('low');
        if (table.kind === 'balance') expect(compareLevels(level(guarded), 'high')).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 150 },
    );
  });

  it('never gives low as a level while a disease item is unknown', () => {
    fc.assert(
      fc.property(casesOf(table, 30), ({ items, ageYears }) => {
        const result = evaluateProtocol(table, items, ageYears, settings);
        const unknownDisease = idsOf(table).filter((item) => table.items[item]?.role === 'disease' && items[item] === undefined);
        if (result.level === 'low') expect(unknownDisease).toEqual([]);
        expect(result.level === null).toBe(result.notYet !== undefined);
        if (result.notYet) {
          expect(result.notYet.missing).toEqual(expect.arrayContaining(unknownDisease));
          expect(result.notYet.missing.length).toBe(unknownDisease.length);
          expect(result.notYet.atLeast).toBe(result.possibleLevels[0]);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('missing: levelsIfFilled is what filling that item alone gives, those that could change the level first', () => {
    fc.assert(
      fc.property(casesOf(table, 30), ({ items, ageYears }) => {
        const result = evaluateProtocol(table, items, ageYears, settings);
        for (const { item, couldChangeLevel, levelsIfFilled } of result.missing) {
          const values = table.items[item]?.valueType === 'count' ? EDGE_COUNTS : [false, true];
          const levels = sortLevels(
            values.map((value) => evaluateProtocol(table, { ...items, [item]: value }, ageYears, settings).levelUnknownNotTicked),
          );
          expect(levelsIfFilled).toEqual(levels);
          expect(couldChangeLevel).toBe(levels.some((l) => l !== result.levelUnknownNotTicked));
        }
        const could = result.missing.map((m) => m.couldChangeLevel);
        expect(could).toEqual([...could].sort((a, b) => Number(b) - Number(a)));
      }),
      { numRuns: 30 },
    );
  });

  it('nothing known: every level of the list is possible, and confirmation is asked for', () => {
    const result = evaluateProtocol(table, {}, table.applies.fromAgeYears, settings);
    expect(result.possibleLevels).toEqual(table.levels);
    expect(result.needsConfirmation).toBe(true);
    expect(result.drivers).toEqual([]);
  });

  it('refuses other ages and values of the wrong type, by name', () => {
    const { fromAgeYears, belowAgeYears } = table.applies;
    expect(() => evaluateProtocol(table, {}, fromAgeYears - 0.01, settings)).toThrow(/^ageYears/);
    if (belowAgeYears !== null) expect(() => evaluateProtocol(table, {}, belowAgeYears, settings)).toThrow(/^ageYears/);
    expect(() => evaluateProtocol(table, {}, Number.NaN, settings)).toThrow(RangeError);
    for (const item of idsOf(table)) {
      const wrong = table.items[item]?.valueType === 'count' ? [true, 1.5, -1, Number.NaN] : [1, 0];
      for (const value of wrong)
        expect(() => evaluateProtocol(table, { [item]: value }, fromAgeYears, settings)).toThrow(new RegExp(`^${item} `));
    }
  });
});

describe('the bacteria item', () => {
  it('is neither missing nor possible while unknown, and one tick when given', () => {
    const unknown = evaluateProtocol(fourLevel2019, {}, 40, settings);
    expect(unknown.missing.map((m) => m.item)).not.toContain('biofilm_bacteria_high');
    expect(unknown.missing).toHaveLength(22);
    expect(evaluateProtocol(fourLevel2019, { biofilm_bacteria_high: true }, 40, settings).counts).toEqual({
      disease: 0,
      risk: 1,
      protective: 0,
    });
  });
});

describe('drivers', () => {
  it('ranks what decides first, disease before risk, and says what the person can change', () => {
    const { drivers, protections, level } = evaluateProtocol(
      fourLevel2019,
      {
        snacks_between_meals_per_day: 5,
        saliva_flow_reduced_measured: true,
        restoration_for_decay_recent: true,
        toothpaste_f_once_daily: true,
      },
      40,
      settings,
    );
    expect(level).toBe('extreme');
    expect(drivers.map((d) => [d.item, d.role, d.decisive, d.changeable])).toEqual([
      ['restoration_for_decay_recent', 'disease', true, false],
      ['saliva_flow_reduced_measured', 'risk', true, false],
      ['snacks_between_meals_per_day', 'risk', false, true],
    ]);
    expect(protections.map((d) => d.item)).toEqual(['toothpaste_f_once_daily']);
  });

  it('a tick in the high column comes before one in the moderate column', () => {
    const { drivers } = evaluateProtocol(childList0to5, { recent_immigrant: true, biofilm_bacteria_high: true }, 3, settings);
    expect(drivers.map((d) => d.item)).toEqual(['biofilm_bacteria_high', 'recent_immigrant']);
  });

  it('a missing favourable item pushes up as a risk, ten-point lines first', () => {
    const { drivers } = evaluateProtocol(
      scoredListOver6,
      { dental_home: false, dry_mouth_severe: true, plaque_heavy_visible: true },
      40,
      settings,
    );
    expect(drivers.map((d) => [d.item, d.role, d.decisive])).toEqual([
      ['dry_mouth_severe', 'risk', true],
      ['dental_home', 'risk', false],
      ['plaque_heavy_visible', 'risk', false],
    ]);
  });

  test.each(protocolTables.map((table) => [table.id, table] as const))(
    '%s: every driver ticks, every source is named once',
    (_id, table) => {
      fc.assert(
        fc.property(casesOf(table, 30), ({ items, ageYears }) => {
          const { drivers, protections, sources } = evaluateProtocol(table, items, ageYears, settings);
          for (const { item } of [...drivers, ...protections]) expect(items[item]).toBeDefined();
          for (const { source } of [...drivers, ...protections]) {
            expect(sources.filter((s) => s.key === source.key && s.status === source.status)).toHaveLength(1);
          }
        }),
        { numRuns: 100 },
      );
    },
  );
});

describe('flags', () => {
  const after = { chemo_radiotherapy: true, saliva_reducing_condition: true };

  it('asks to measure saliva while dry mouth is suspected, and settles on a normal flow', () => {
    expect(evaluateProtocol(fourLevel2019, after, 58, settings).flags).toContain('measure-saliva');
    expect(evaluateProtocol(fourLevel2019, { ...after, saliva_normal: true }, 58, settings).flags).toEqual([]);
    expect(evaluateProtocol(fourLevel2019, { ...after, saliva_flow_reduced_measured: true }, 58, settings).flags).not.toContain(
      'measure-saliva',
    );
  });

  it('says when ten points come from moderate lines only, and that a cavity is present', () => {
    const ten = Object.fromEntries(
      [
        'eating_disorder',
        'tobacco_smokeless',
        'medicine_saliva_reducing',
        'alcohol_or_drug_misuse',
        'plaque_heavy_visible',
        'pits_fissures_deep',
        'roots_exposed',
        'restoration_defective',
      ].map((id) => [id, true]),
    );
    const result = evaluateProtocol(scoredListOver6, { ...ten, fluoride_any_exposure: false, dental_home: false }, 50, settings);
    expect(result).toMatchObject({ level: 'high', needsConfirmation: true, flags: ['ten-moderate-lines'] });
    const cavity = { lesion_cavity_or_dentin_new: true, lesions_or_restorations_count_36m: 1 };
    expect(evaluateProtocol(scoredListOver6, cavity, 50, settings).flags).toContain('cavity-present');
  });

  it('every flag of a high without a disease item says judgement', () => {
    const many = { plaque_heavy_visible: true, roots_exposed: true, pits_fissures_deep: true, drug_recreational: true };
    expect(evaluateProtocol(fourLevel2019, many, 40, settings)).toMatchObject({
      level: 'high',
      flags: ['judgement'],
      needsConfirmation: true,
    });
  });
});
