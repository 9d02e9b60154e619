import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { agentFacts } from '../../../src/content/agentFacts.ts';
import { fluorideLimits, packLimits, swallowedShares, varnishAmounts, visitFluoride } from '../../../src/content/fluorideLimits.ts';
import { regimenTables } from '../../../src/content/regimenTables.ts';
import { checkLabel } from '../../../src/core/regimen/checkLabel.ts';
import { supplyOf } from '../../../src/core/regimen/choice/supplyOf.ts';
import { chlorhexidineCourse } from '../../../src/core/regimen/dose/chlorhexidineCourse.ts';
import { supplementSchedule } from '../../../src/core/regimen/dose/supplementSchedule.ts';
import { xylitolDay } from '../../../src/core/regimen/dose/xylitolDay.ts';
import { fluorideContentPpm } from '../../../src/core/regimen/fluorideContentPpm.ts';
import { fluorideMg } from '../../../src/core/regimen/fluorideMg.ts';
import type { ShelfItem } from '../../../src/core/regimen/types.ts';
import { packOf } from './ruleCases.ts';

/** Everything that the content tables print, as text: a misprint of a source must not stand in it. */
const contentText = readdirSync(new URL('../../../src/content/', import.meta.url), { recursive: true, encoding: 'utf8' })
  .filter((file) => /^(agent|fluoride|safety|regimen|weight|cautions|usualPacks|demo.shelf|benefits|pathways|recall).*\.ts$/.test(file))
  .filter((file) => !file.includes('.test.'))
  .map((file) => readFileSync(new URL(`../../../src/content/${file}`, import.meta.url), 'utf8'))
  .join('\n');

describe('fluoride of one pack', () => {
  // 21 CFR 355.20(a) (fdaMonograph, read): 276 mg in a paste pack, 120 mg in a gel or rinse pack. bayless1985 (read): 264 mg sodium
  // fluoride, 120 mg fluoride, dispensed at one time. Tolerance of the last 1 mg: 264 mg x 0.4525 = 119.5 mg.
  it('has three limits, each with its source', () => {
    expect(packLimits.map(({ mgF, source }) => [mgF, source.key, source.status])).toEqual([
      [276, 'fdaMonograph', 'read'],
      [120, 'fdaMonograph', 'read'],
      [120, 'bayless1985', 'read'],
    ]);
    expect(Math.abs(fluorideContentPpm('NaF', 100) * 264e-6 - 120)).toBeLessThanOrEqual(1);
    expect(regimenTables.packWarnMg).toBe(120);
  });

  // Strength times amount (derived). No tolerance, but 1 mg for the bottle, by the exact mass of the compound.
  test.each([
    [5_000, 51, 255],
    [2_800, 100, 280],
    [226, 500, 113],
  ])('%i ppm, %i g or mL: %i mg', (ppm, amount, mg) => expect(Math.abs(fluorideMg(ppm, amount) - mg)).toBeLessThanOrEqual(1e-9));
});

describe('what is put on at the practice', () => {
  // varnishMonographs (read): 0.25, 0.4, 0.75 mL; 22.6 mg/mL: arithmetic (derived). No tolerance.
  test.each([
    [5, 5.65],
    [8, 9.04],
    [30, 16.95],
  ])('varnish at %i years: %f mg', (years, mg) => {
    const row = varnishAmounts.find((r) => years >= r.fromAgeYears && years < r.belowAgeYears);
    expect((row?.amountMl ?? 0) * regimenTables.fluoride.varnishMgPerMl).toBeCloseTo(mg, 9);
    expect(row?.source).toMatchObject({ key: 'varnishMonographs', status: 'read' });
  });

  // horst2016 (read): a drop of 25 uL holds 9.5 mg. Fractions from atomic masses (derived): 1.12 mg F and 6.37 mg Ag. Tolerance 0.005 mg.
  it('a drop of silver fluoride', () => {
    expect(Math.abs(fluorideMg(fluorideContentPpm('AgF(NH3)2', 38), 0.025) - 1.12)).toBeLessThanOrEqual(0.005);
    const silverShare = 107.8682 / (107.8682 + 18.9984 + 2 * 17.0305);
    expect(Math.abs(9.5 * silverShare - 6.37)).toBeLessThanOrEqual(0.005);
  });

  // lecompte1987 (read): 2 to 7.5 mg stay of a gel with suction and spitting out; slayton2018 (read): silver fluoride twice a year.
  it('gel by what stays of it, and each by its days of a year', () => {
    expect(visitFluoride.map((r) => [r.agentId, r.timesPerYear, r.mostMgSwallowed, r.source.status])).toEqual([
      ['F_VARNISH', 4, undefined, 'read'],
      ['F_GEL_APF', 4, 7.5, 'read'],
      ['SDF38', 2, undefined, 'read'],
    ]);
  });
});

describe('limits of a day', () => {
  const at = (months: number, name: RegExp) =>
    fluorideLimits.filter((l) => name.test(l.name) && months >= l.fromAgeMonths && months < l.belowAgeMonths).map((l) => [l.value, l.unit]);
  // iom1997, efsa2025, smpcHighFluoride (read). No tolerance; bands end at the birthday, the band 4 to 8 years at the ninth.
  test.each([
    [6, 0.7, 1],
    [11, 0.9, 1],
    [12, 1.3, 1.6],
    [47, 1.3, 1.6],
    [48, 2.2, 2],
    [107, 2.2, 2],
    [108, 10, 3.3],
  ])('at %i months %f mg and %f mg', (months, us, european) => {
    expect(at(months, /^Upper intake level, US 1997$/)).toEqual([[us, 'mg/day']]);
    expect(at(months, /European 2025$/)).toEqual([[european, 'mg/day']]);
    expect(at(months, /^Label of/)).toEqual([
      [0.05, 'mg/kg/day'],
      [1, 'mg/day'],
    ]);
  });
  it('0.10 mg/kg holds until the ninth birthday, and nothing of the limits that were only recalled is imported', () => {
    expect(at(107, /per kg/)).toEqual([[0.1, 'mg/kg/day']]);
    expect(at(108, /per kg/)).toEqual([]);
    expect(fluorideLimits.filter((l) => l.source.status !== 'read')).toEqual([]);
  });
});

describe('fluoride supplements', () => {
  // ada2010supplements (read), mg F a day. Columns: below 0.3, 0.3 to 0.6, above 0.6 mg/L. No tolerance.
  const rows = [
    [0, [null, null, null]],
    [5, [null, null, null]],
    [6, [0.25, null, null]],
    [35, [0.25, null, null]],
    [36, [0.5, 0.25, null]],
    [71, [0.5, 0.25, null]],
    [72, [1, 0.5, null]],
    [191, [1, 0.5, null]],
    [192, [null, null, null]],
  ] as const;
  test.each(rows)('%i months: %j', (ageMonths, mg) => {
    const dose = (water: number) =>
      supplementSchedule({ ageMonths, waterFluorideMgPerL: water, level: 'high', jurisdiction: 'UK' }).mgPerDay;
    expect([0.29, 0.3, 0.61].map(dose)).toEqual(mg);
    expect(dose(0.6)).toBe(mg[1]);
  });
});

describe('supply', () => {
  const daysOf = (agent: string, use: Partial<ShelfItem['use']>, value: number, unit: 'g' | 'mL') => {
    const item = packOf(agent, { packAmount: { value, unit } });
    return supplyOf([{ item, use: { timesPerDay: 1, amount: '', ...use }, state: 'proposed' }], undefined)[0]?.days;
  };
  // Arithmetic (derived): a pack divided by a day's use, in whole days rounded down. 75 mL of paste are about 100 g. No tolerance.
  test.each([
    ['adult paste, 1 g twice', 'F_PASTE_STD', { amountG: 1, timesPerDay: 2 }, 100, 'g', 50],
    ['pea, 0.25 g twice', 'F_PASTE_STD', { amountG: 0.25, timesPerDay: 2 }, 100, 'g', 200],
    ['smear, 0.1 g twice', 'F_PASTE_STD', { amountG: 0.1, timesPerDay: 2 }, 100, 'g', 500],
    ['5,000 ppm, 51 g, 1 g twice: 25.5', 'F_PASTE_5000', { amountG: 1, timesPerDay: 2 }, 51, 'g', 25],
    ['5,000 ppm, 51 g, 1 g three times', 'F_PASTE_5000', { amountG: 1, timesPerDay: 3 }, 51, 'g', 17],
    ['0.05 % rinse, 10 mL daily', 'F_RINSE_005', { amountMl: 10 }, 500, 'mL', 50],
    ['chlorhexidine, 15 mL twice: 15.8', 'CHX_RINSE', { amountMl: 15, timesPerDay: 2 }, 473, 'mL', 15],
  ] as const)('%s', (_what, agent, use, pack, unit, days) => expect(daysOf(agent, use, pack, unit)).toBe(days));

  // g or mL in 30 days, or in the course (derived). No tolerance, the weekly rinse to a whole mL.
  test.each([
    ['paste 1 g twice', 1 * 2 * 30, 60],
    ['pea twice', 0.25 * 2 * 30, 15],
    ['smear twice', 0.1 * 2 * 30, 6],
    ['paste 1 g three times', 1 * 3 * 30, 90],
    ['rinse 10 mL daily', 10 * 30, 300],
    ['soda 2.5 g five times', 2.5 * 5 * 30, 375],
  ])('%s in 30 days', (_what, got, printed) => expect(got).toBeCloseTo(printed, 9));
  it('weekly rinse 43 mL; chlorhexidine 70 mL for a week of the month and 420 mL for 14 days; xylitol 180 to 300 g', () => {
    expect(Math.round((10 / 7) * 30)).toBe(43);
    const course = (timesPerDay: number, amountMl: number, courseDays: number) =>
      chlorhexidineCourse({ timesPerDay, amount: '', amountMl, courseDays }).totalMl;
    expect([course(1, 10, 7), course(2, 15, 14)]).toEqual([70, 420]);
    const month = (gramsPerUse: number) =>
      (xylitolDay({ ageYears: 30, weightKg: 60, gramsPerUse, timesPerDay: 4 }, regimenTables.xylitolLimit).gramsPerDay ?? 0) * 30;
    expect([month(1.5), month(2.5)]).toEqual([180, 300]);
  });
});

describe('misprints of the sources are not imported: the right value stands', () => {
  it('0.05 % rinse: a label prints 0.2 % fluoride ion, true is 0.02 %', () => {
    const rinse = { form: 'rinse', compound: 'NaF', percent: 0.05 } as const;
    expect(checkLabel({ ...rinse, fluorideIonPercent: 0.2 }, regimenTables.agents).length).toBeGreaterThan(0);
    expect(checkLabel({ ...rinse, fluorideIonPercent: 0.02 }, regimenTables.agents)).toEqual([]);
  });
  it('tube of 51 g of 5,000 ppm: a product summary prints 225 mg, arithmetic gives 255 mg', () => {
    const tube = { form: 'paste', fluoridePpm: 5_000, packAmount: { value: 51, unit: 'g' } } as const;
    expect(checkLabel({ ...tube, packFluorideMg: 225 }, regimenTables.agents)).toMatchObject([{ id: 'pack-differs', countWith: 255 }]);
    expect(checkLabel({ ...tube, packFluorideMg: 255 }, regimenTables.agents)).toEqual([]);
    expect(contentText).not.toMatch(/\b225 mg/);
  });
  it('varnish of 0.75 mL: the monograph prints 16.75 mg, arithmetic gives 16.95 mg', () => expect(contentText).not.toMatch(/16\.75/));
  it('gel of 2013: an abstract prints 0.05 %, the guideline says 0.5 % fluoride', () => {
    const agent = regimenTables.agents.find((a) => a.id === 'F_PASTE_5000');
    expect(agent?.ppmRange?.[0]).toBeGreaterThan(4_000);
    expect(contentText).not.toMatch(/0\.05 ?% (fluoride )?(gel|paste)/);
  });
  it('older people at home: the abstract prints a ratio of 0.10 that its own percentages contradict; no figure is shown', () => {
    const row = agentFacts.F_PASTE_5000.evidence.find((e) => e.source.key === 'leon2019');
    expect(row?.effect?.estimate).toBeNull();
  });
  it('xylitol: an abstract prints both 6.44 and 6.88 g; 6.44 does not occur', () => expect(contentText).not.toMatch(/6\.44/));
  it('mouth care around radiotherapy: ">16" and "<16" as printed; 2,800 ppm stays from 10 years and 5,000 ppm from 16', () => {
    const below = (id: string) => regimenTables.rules.find((r) => r.id === id)?.trigger.ageBelowYears?.UK;
    expect([below('C06'), below('C05')]).toEqual([10, 16]);
  });
  it('root lesions: silver fluoride is not the suggested treatment, daily 5,000 ppm paste is preferred', () => {
    expect(agentFacts.F_PASTE_5000.evidence.map((e) => e.says).join(' ')).toMatch(
      / lesions: .*preferred over varnish and over yearly silver/,
    );
  });
  it('share of paste swallowed: 0.65 at 3 to 5 and 0.1 from 9 years were below the means that were read, 0.62 and 0.14', () => {
    const share = (years: number) => swallowedShares.find((s) => years >= s.fromAgeYears && years < s.belowAgeYears)?.fraction;
    expect([3, 5, 6, 8, 9, 12, 13].map(share)).toEqual([1, 1, 0.35, 0.35, 0.2, 0.2, 0.1]);
  });
});
