import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { xylitolLimit } from '../../../content/agents.ts';
import { fluorideTables } from '../../../content/fluorideLimits.ts';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import { weightForAge } from '../../../content/weightForAge.ts';
import type { Level } from '../../risk/types.ts';
import { fluorideContentPpm } from '../fluorideContentPpm.ts';
import type { PersonFacts } from '../types.ts';
import { acuteTable, type HouseProduct } from './acuteTable.ts';
import { chlorhexidineCourse } from './chlorhexidineCourse.ts';
import { silverDrops } from './silverDrops.ts';
import { supplementAdvice } from './supplementAdvice.ts';
import { supplementSchedule } from './supplementSchedule.ts';
import { weightDoubt } from './weightDoubt.ts';
import { xylitolDay } from './xylitolDay.ts';

const reference = JSON.parse(readFileSync(new URL('../../../../test/reference/regimen/data.json', import.meta.url), 'utf8')) as {
  ptd: readonly Record<string, number | string>[];
  weights: readonly { ageMonths: number; plannerKg: number }[];
};

const monthsOf = (age: string) => Number.parseInt(age, 10) * (age.endsWith('years') ? 12 : 1);

describe('amounts that reach 5 mg/kg', () => {
  const columns: readonly (readonly [string, HouseProduct])[] = [
    ...[250, 500, 1000, 1450, 2800, 5000].map((ppm) => [`paste_${ppm}ppm_g`, { name: 'paste', ppm, unit: 'g' }] as const),
    ['rinse_NaF0.05pct_mL', { name: 'rinse', ppm: fluorideContentPpm('NaF', 0.05), unit: 'mL' }],
    ['rinse_NaF0.2pct_mL', { name: 'rinse', ppm: fluorideContentPpm('NaF', 0.2), unit: 'mL' }],
    ['gel_APF1.23pct_g', { name: 'gel', ppm: 12_300, unit: 'g' }],
    ['gel_SnF2_0.4pct_g', { name: 'gel', ppm: fluorideContentPpm('SnF2', 0.4), unit: 'g' }],
    ['varnish_5pctNaF_mL', { name: 'varnish', ppm: fluorideContentPpm('NaF', 5), unit: 'mL' }],
  ];

  // test/reference/regimen/data.json, ptd (derived; whitford1987 read): rounded down to 0.1 there. Tolerance 0.1.
  test.each(columns)('%s in every row', (column, product) => {
    for (const row of reference.ptd) {
      const table = acuteTable({ ageMonths: monthsOf(String(row.age)), weightKg: Number(row.weight_kg) }, [product], fluorideTables);
      expect([row.age, Math.abs((table.rows[0]?.fromAmount ?? -1) - Number(row[column])) <= 0.1 + 1e-9]).toEqual([row.age, true]);
      expect(table.emergencyMg).toBeCloseTo(Number(row.PTD_mgF), 9);
    }
  });

  it('rounds down, never up', () => {
    const { rows } = acuteTable({ ageMonths: 48, weightKg: 13 }, [{ name: 'paste', ppm: 1450, unit: 'g' }], fluorideTables);
    expect(rows[0]?.fromAmount).toBe(44.8);
    expect(
      acuteTable({ ageMonths: 12, weightKg: 7.3 }, [{ name: 'paste', ppm: 1000, unit: 'g' }], fluorideTables).rows[0]?.fromAmount,
    ).toBe(36.5);
  });

  it('says what is not known, and what the whole pack does', () => {
    const products: readonly HouseProduct[] = [
      { name: 'unread', unit: 'g', packAmount: 100 },
      { name: 'tube', ppm: 5000, unit: 'g', packAmount: 51 },
      { name: 'small', ppm: 1000, unit: 'g', packAmount: 20 },
    ];
    const { rows, sentence } = acuteTable({ ageMonths: 48, weightKg: 13 }, products, fluorideTables);
    expect(rows.map((r) => r.packReachesIt)).toEqual([null, true, false]);
    expect(rows[0]?.fromAmount).toBeNull();
    expect(sentence).toMatch(/poison centre now.*5 mg.*emergency care now\. Never make anyone vomit/);
    expect(sentence).not.toMatch(/safe/);
    expect(() => acuteTable({ ageMonths: 48, weightKg: 0 }, [], fluorideTables)).toThrow('weightKg');
  });

  it('has no amount without a weight, nor with one that does not fit the age; the sentence stands all the same', () => {
    const tube: readonly HouseProduct[] = [{ name: 'tube', ppm: 5000, unit: 'g', packAmount: 51 }];
    const unweighed = acuteTable({ ageMonths: 48 }, tube, fluorideTables);
    expect(unweighed).toMatchObject({ weightKg: null, emergencyMg: null, rows: [], ask: expect.stringContaining('Ask for the weight') });
    const doubtful = acuteTable({ ageMonths: 360, weightKg: 4 }, tube, fluorideTables);
    expect(doubtful).toMatchObject({ weightKg: null, rows: [], ask: expect.stringContaining('4 kg does not fit 30 years') });
    expect(doubtful.sentence).toBe(unweighed.sentence);
    expect(unweighed.sentence).toMatch(/poison centre now/);
  });
});

describe('silver fluoride', () => {
  // test/reference/regimen/data.json, ptd, SDF_drops (derived; horst2016 read): whole drops. No tolerance.
  test.each(reference.ptd.map((r) => [Number(r.weight_kg), Number(r.SDF_drops_limit_1_per_10kg)]))('%f kg: %i drops', (kg, drops) => {
    expect(silverDrops(kg).drops ?? 0).toBe(drops);
  });

  it('has no whole drop under 10 kg nor without a weight', () => {
    expect(silverDrops(9.99)).toMatchObject({ drops: null, says: 'Under 10 kg no whole drop: at most 24 µL, measured by the dentist.' });
    expect(silverDrops(undefined)).toMatchObject({ drops: null, atMostMicrolitres: null });
    expect(silverDrops(10).drops).toBe(1);
  });
});

describe('supplements', () => {
  const at = (ageMonths: number, water?: number, more = {}) =>
    supplementSchedule({ ageMonths, waterFluorideMgPerL: water, level: 'high', jurisdiction: 'UK', ...more }).mgPerDay;

  // Table of 2010, mg F a day by age and water (ada2010supplements, read); 0.3 and 0.6 mg/L belong to the middle column. No tolerance.
  test.each([
    [5, 0, null],
    [6, 0, 0.25],
    [35, 0.29, 0.25],
    [35, 0.3, null],
    [36, 0.29, 0.5],
    [36, 0.3, 0.25],
    [71, 0.6, 0.25],
    [71, 0.61, null],
    [72, 0.29, 1],
    [72, 0.6, 0.5],
    [191, 0.3, 0.5],
    [192, 0, null],
  ])('%i months, water %f: %s', (months, water, mg) => expect(at(months, water)).toBe(mg));

  it('gives nothing while a fact is missing, below high risk, and in the US under 3 years', () => {
    expect(at(48)).toBeNull();
    expect(at(48, 0, { level: undefined })).toBeNull();
    expect(at(48, 0, { level: 'moderate' })).toBeNull();
    expect(at(35, 0, { jurisdiction: 'US' })).toBeNull();
    expect(at(35, 0, { jurisdiction: 'unknown' })).toBeNull();
    expect(at(36, 0, { jurisdiction: 'US' })).toBe(0.5);
  });
});

describe('supplements where a practice considers them', () => {
  const child: PersonFacts = {
    ageYears: 4,
    ageMonths: 50,
    weightKg: 16,
    waterFluorideMgPerL: 0.1,
    waterFluoridated: false,
    otherFluoride: [],
    strongPasteInUse: false,
    allergies: [],
    medicines: [],
    conditions: [],
  };
  const read = (more: Partial<PersonFacts> = {}, level: Level | undefined = 'high', considersSupplements: boolean | undefined = true) =>
    supplementAdvice({ facts: { ...child, ...more }, level, settings: { jurisdiction: 'UK', considersSupplements }, tables });

  it('is off by default', () => {
    expect(supplementAdvice({ facts: child, level: 'high', settings: { jurisdiction: 'UK' }, tables })).toBeNull();
    expect(read({}, 'high', false)).toBeNull();
  });

  it('says what the schedule says, with its sources and their disagreement', () => {
    expect(read()).toMatchObject({ mgPerDay: 0.5, says: 'By the table of 2010 0.5 mg fluoride a day.', against: [], ask: [] });
    expect(read()?.sources).toEqual([
      { key: 'ada2010supplements', status: 'read' },
      { key: 'fda2025supplements', status: 'read' },
    ]);
    expect(read()?.disagreement).toMatch(/Sources disagree.*31 October 2025.*decides; none is ever added/);
  });

  it.each([
    [{ otherFluoride: ['fluoridated-salt'] }, 'C36'],
    [{ waterFluoridated: true }, 'C36'],
    [{ strongPasteInUse: true }, 'C36'],
    [{ waterFluorideMgPerL: 0.7 }, 'C22'],
    [{ ageYears: 2, ageMonths: 30, weightKg: 13 }, 'C40'],
  ] as const)('%j: a rule stands against it, %s', (more, ruleId) => {
    const advice = read(more as Partial<PersonFacts>);
    expect(advice?.mgPerDay).toBeNull();
    expect(advice?.against.map((a) => a.ruleId)).toContain(ruleId);
  });

  it('asks what is not known, and gives no dose', () => {
    const asked = read({ waterFluorideMgPerL: undefined, otherFluoride: undefined });
    expect(asked).toMatchObject({ mgPerDay: null, says: expect.stringContaining('have it tested') });
    expect(asked?.ask).toEqual(expect.arrayContaining(['water_fluoride_mg_per_l', 'home_extras']));
    expect(read({ otherFluoride: undefined })).toMatchObject({ mgPerDay: null, ask: ['home_extras'] });
  });
});

describe('xylitol', () => {
  const day = (more: object) => xylitolDay({ ageYears: 30, weightKg: 60, gramsPerUse: 2, timesPerDay: 3, ...more }, xylitolLimit);

  it('adds up the day, and asks where weight or amount is not known', () => {
    expect(day({})).toMatchObject({ gramsPerDay: 6, exposures: 3, tolerance: 'within' });
    expect(day({ weightKg: undefined }).tolerance).toBe('ask');
    expect(day({ gramsPerUse: undefined })).toMatchObject({ gramsPerDay: null, tolerance: 'ask' });
  });

  // oku2007 (read): 0.37 g/kg at once in adults; children 0.15 g/kg at once and 0.5 g/kg a day, ours. No tolerance.
  it('compares with what is borne at once, and for a child in a day', () => {
    expect(day({ gramsPerUse: 22.2 }).tolerance).toBe('within');
    expect(day({ gramsPerUse: 22.3 }).tolerance).toBe('above');
    expect(day({ ageYears: 6, weightKg: 20, gramsPerUse: 3 }).tolerance).toBe('within');
    expect(day({ ageYears: 6, weightKg: 20, gramsPerUse: 3.1 }).tolerance).toBe('above');
    expect(day({ ageYears: 6, weightKg: 20, gramsPerUse: 3, timesPerDay: 4 }).tolerance).toBe('above');
  });

  it('warns of dogs whatever the pack holds', () => {
    expect(day({ packGrams: 2 }).dogIllUpToKg).toBeCloseTo(20, 9);
    expect(day({})).toMatchObject({ dogIllUpToKg: null, dogWarning: expect.stringContaining('dangerous to dogs') });
  });
});

it('a course of chlorhexidine has an end, and one without is asked about', () => {
  const use = { timesPerDay: 2, amount: '15 mL', amountMl: 15 };
  // Supply: 15 mL twice a day for 14 days is 420 mL (derived).
  expect(chlorhexidineCourse({ ...use, courseDays: 14 })).toMatchObject({ totalMl: 420, isTooLong: false });
  expect(chlorhexidineCourse({ ...use, courseDays: 30 }).isTooLong).toBe(false);
  expect(chlorhexidineCourse({ ...use, courseDays: 31 }).isTooLong).toBe(true);
  expect(chlorhexidineCourse(use)).toMatchObject({ days: null, says: 'Length of the course not noted: say how many days.' });
});

describe('a weight that does not fit the age', () => {
  it('is asked back', () => {
    expect(weightDoubt(4, 360, weightForAge)).toBe('4 kg does not fit 30 years: weigh again, or correct the age.');
    expect(weightDoubt(700, 360, weightForAge)).toBeDefined();
    expect(weightDoubt(60, 12, weightForAge)).toBe('60 kg does not fit 12 months: weigh again, or correct the age.');
  });

  it.each(reference.weights)('the light weight of $ageMonths months is not', ({ ageMonths, plannerKg }) => {
    expect(weightDoubt(plannerKg, ageMonths, weightForAge)).toBeUndefined();
    expect(weightDoubt(plannerKg * 0.5, ageMonths, weightForAge)).toBeDefined();
  });

  it.each([
    [3.3, 0],
    [35, 600],
    [180, 600],
    [12, 40],
  ])('%f kg at %i months fits', (kg, months) => {
    expect(weightDoubt(kg, months, weightForAge)).toBeUndefined();
  });
});
