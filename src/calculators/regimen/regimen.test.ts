import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { weightForAge } from '../../content/weightForAge.ts';
import { runCalculator } from '../calculator.ts';
import { fluorideContent } from './fluorideContent.ts';
import { fluorideIntake } from './fluorideIntake.ts';

const reference = JSON.parse(readFileSync(new URL('../../../test/reference/regimen/data.json', import.meta.url), 'utf8')) as {
  workedExamples: readonly { case: string; mg: number; mg_per_kg: number }[];
  ptd: readonly Record<string, number | string>[];
};
interface Intake {
  readonly complete: boolean;
  readonly unknownSources: readonly string[];
  readonly mgPerDay: number;
  readonly mgPerKgPerDay: number | null;
  readonly weightKg: number | null;
  readonly weightAssumed: boolean;
  readonly limits: readonly {
    readonly name: string;
    readonly kind: string;
    readonly unit: string;
    readonly value: number;
    readonly share: number | null;
  }[];
  readonly acute: { readonly mgIfAllSwallowed: number; readonly mgPerKg: number | null; readonly action: string };
  readonly sentence: string;
  readonly covers: string;
  readonly notCovered: readonly string[];
  readonly parts: readonly { readonly name: string; readonly onItsDay: object | null; readonly sources: readonly object[] }[];
}
function intakeOf(input: unknown): Intake {
  const result = runCalculator(fluorideIntake, input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.output as Intake;
}
const errorOf = (input: unknown) => {
  const result = runCalculator(fluorideIntake, input);
  return result.ok ? undefined : result.error;
};

describe('worked examples', () => {
  const inputs: Record<string, { input: object; look: (i: Intake) => [number, number | null] }> = {
    '2-year-old 10.2 kg, smear 0.1 g 1000 ppm x2, all swallowed': {
      input: { ageYears: 2, weightKg: 10.2, products: [{ ppm: 1000, amountG: 0.1, perDay: 2, swallowedFraction: 1 }] },
      look: (i) => [i.mgPerDay, i.mgPerKgPerDay],
    },
    '4-year-old 13.0 kg, pea 0.25 g 1450 ppm x2, all swallowed': {
      input: { ageYears: 4, weightKg: 13, products: [{ ppm: 1450, amountG: 0.25, perDay: 2 }] },
      look: (i) => [i.mgPerDay, i.mgPerKgPerDay],
    },
    '4-year-old 13.0 kg, 0.67 g 1450 ppm x2, 42% swallowed': {
      input: { ageYears: 4, weightKg: 13, products: [{ ppm: 1450, amountG: 0.67, perDay: 2, swallowedFraction: 0.42 }] },
      look: (i) => [i.mgPerDay, i.mgPerKgPerDay],
    },
    'varnish 0.25 mL in 10.2 kg child, all swallowed': {
      input: { ageYears: 2, weightKg: 10.2, products: [{ ppm: 22_600, amountMl: 0.25, perDay: 1 }] },
      look: (i) => [i.acute.mgIfAllSwallowed, i.acute.mgPerKg],
    },
    '51 g tube of 5000 ppm swallowed by 4-year-old 13.0 kg': {
      input: { ageYears: 4, weightKg: 13, products: [{ ppm: 5000, amountG: 51, perDay: 1 }] },
      look: (i) => [i.acute.mgIfAllSwallowed, i.acute.mgPerKg],
    },
    '500 mL 0.05% NaF rinse swallowed by 2-year-old 10.2 kg': {
      input: { ageYears: 2, weightKg: 10.2, products: [{ compound: 'NaF', percent: 0.05, amountMl: 500, perDay: 1 }] },
      look: (i) => [i.acute.mgIfAllSwallowed, i.acute.mgPerKg],
    },
    'APF tray 4 g both arches, 16.4 kg (6 y), all swallowed': {
      input: { ageYears: 6, weightKg: 16.4, products: [{ ppm: 12_300, amountG: 4, perDay: 1 }] },
      look: (i) => [i.acute.mgIfAllSwallowed, i.acute.mgPerKg],
    },
  };

  // test/reference/regimen/data.json, workedExamples (derived). Printed to two or three figures: tolerance 0.5 % of the printed value.
  test.each(reference.workedExamples)('$case', ({ case: name, mg, mg_per_kg }) => {
    const example = inputs[name];
    if (!example) throw new Error(`no input for ${name}`);
    const [gotMg, gotPerKg] = example.look(intakeOf(example.input));
    expect(Math.abs(gotMg / mg - 1)).toBeLessThanOrEqual(5e-3);
    expect(Math.abs((gotPerKg ?? 0) / mg_per_kg - 1)).toBeLessThanOrEqual(1e-2);
  });
});

describe('amounts that reach 5 mg/kg', () => {
  const columns = [
    ['paste_1000ppm_g', { ppm: 1000 }, 'amountG'],
    ['paste_1450ppm_g', { ppm: 1450 }, 'amountG'],
    ['paste_2800ppm_g', { ppm: 2800 }, 'amountG'],
    ['paste_5000ppm_g', { ppm: 5000 }, 'amountG'],
    ['rinse_NaF0.05pct_mL', { compound: 'NaF', percent: 0.05 }, 'amountMl'],
    ['rinse_NaF0.2pct_mL', { compound: 'NaF', percent: 0.2 }, 'amountMl'],
    ['gel_APF1.23pct_g', { ppm: 12_300 }, 'amountG'],
    ['gel_SnF2_0.4pct_g', { compound: 'SnF2', percent: 0.4 }, 'amountG'],
    ['varnish_5pctNaF_mL', { compound: 'NaF', percent: 5 }, 'amountMl'],
  ] as const;

  const yearsOf = (age: string) => Number.parseInt(age, 10) / (age.endsWith('years') ? 1 : 12);

  // test/reference/regimen/data.json, ptd (derived from the planner weights, printed rounded down to 0.1). Tolerance 0.1 g or mL: 0.11 more
  // than printed is an emergency at that weight, 0.11 less is not.
  test.each(columns)('%s', (column, strength, unit) => {
    for (const row of reference.ptd) {
      const printed = Number(row[column]);
      const swallowed = (amount: number) =>
        intakeOf({
          ageYears: yearsOf(String(row.age)),
          weightKg: Number(row.weight_kg),
          products: [{ ...strength, [unit]: amount, perDay: 1 }],
        }).acute.action;
      expect([row.age, swallowed(printed + 0.11)]).toEqual([row.age, 'emergency-care-now']);
      expect([row.age, swallowed(printed - 0.11)]).toEqual([row.age, 'poison-centre-now']);
    }
  });
});

describe('what is not known', () => {
  it.each([
    ['the strength', { amountG: 1, perDay: 2 }],
    ['the compound of a percentage', { percent: 0.32, amountG: 1, perDay: 2 }],
    ['the amount', { ppm: 1450, perDay: 2 }],
    ['the number of uses', { ppm: 1450, amountG: 1, perDay: null }],
  ])('without %s the sum is a lower bound and no share is given', (_what, product) => {
    const intake = intakeOf({
      ageYears: 30,
      weightKg: 60,
      products: [
        { name: 'rinse', ppm: 226, amountMl: 10, perDay: 1 },
        { ...product, name: 'paste' },
      ],
    });
    expect(intake.complete).toBe(false);
    expect(intake.unknownSources).toEqual(['paste']);
    expect(intake.mgPerDay).toBeCloseTo(0.226, 12);
    expect(intake.limits.every((l) => l.share === null)).toBe(true);
    expect(intake.sentence).toBe('At least 0.0038 mg/kg a day from rinse (paste not known)');
  });

  it('counts water only when it is asked about, and not as zero when it is not known', () => {
    const products = [{ name: 'paste', ppm: 1450, amountG: 0.25, perDay: 2 }];
    expect(intakeOf({ ageYears: 4, weightKg: 13, products }).complete).toBe(true);
    const unknown = intakeOf({ ageYears: 4, weightKg: 13, products, waterFluorideMgPerL: null });
    expect(unknown.unknownSources).toEqual(['water']);
    expect(unknown.sentence).toBe('At least 0.056 mg/kg a day from paste (water not known)');
    expect(intakeOf({ ageYears: 4, weightKg: 13, products, waterFluorideMgPerL: 0.7 }).complete).toBe(false);
    const known = intakeOf({ ageYears: 4, weightKg: 13, products, waterFluorideMgPerL: 0.7, waterLitresPerDay: 1 });
    expect(known.mgPerDay).toBeCloseTo(1.425, 12);
    expect(known.complete).toBe(true);
    expect(known.acute.mgIfAllSwallowed).toBeCloseTo(0.725, 12);
  });

  it('takes a weekly use whole when it is swallowed', () => {
    const weekly = intakeOf({ ageYears: 8, weightKg: 25, products: [{ ppm: 905, amountMl: 10, perDay: 1 / 7 }] });
    expect(weekly.acute.mgIfAllSwallowed).toBeCloseTo(9.05, 12);
    expect(weekly.mgPerDay).toBeCloseTo((9.05 / 7) * 0.35, 12);
  });

  it('assumes the planner weight, says so, and lets it only escalate', () => {
    const small = intakeOf({ ageYears: 4, products: [{ name: 'paste', ppm: 1450, amountG: 0.25, perDay: 2 }] });
    expect(small).toMatchObject({ weightKg: 13, weightAssumed: true });
    expect(small.acute).toMatchObject({ mgPerKg: null, action: 'poison-centre-now' });
    expect(small.sentence).toContain('weight assumed 13 kg');
    const tube = intakeOf({ ageYears: 4, products: [{ ppm: 5000, amountG: 51, perDay: 1 }] });
    expect(tube.acute.action).toBe('emergency-care-now');
    expect(intakeOf({ ageYears: 0.25, products: [] })).toMatchObject({ weightKg: null, weightAssumed: false, mgPerKgPerDay: null });
    expect(intakeOf({ ageYears: 40, products: [] })).toMatchObject({ weightKg: 46.3, weightAssumed: true });
  });
});

describe('all sources', () => {
  const products = [{ name: 'paste', ppm: 1450, amountG: 0.25, perDay: 2 }];
  const all = {
    ageYears: 4,
    weightKg: 13,
    products,
    waterFluorideMgPerL: 0.3,
    waterLitresPerDay: 1,
    salt: { fluorideMgPerKg: 250, gPerDay: 2 },
    supplementMgPerDay: 0,
    varnish: { daysPerYear: 2 },
  };

  it('adds paste, water, salt, tablets and varnish days, each with what it brings', () => {
    const intake = intakeOf(all);
    // 0.725 + 0.3 + 0.5 + 0 + 5.65 x 2 / 365 mg: arithmetic. No tolerance.
    expect(intake.mgPerDay).toBeCloseTo(1.525 + (5.65 * 2) / 365, 9);
    expect(intake).toMatchObject({ complete: true, notCovered: [], unknownSources: [] });
    expect(intake.parts.map((p) => p.name)).toEqual(['paste', 'water', 'salt', 'drops or tablets', 'varnish']);
    const varnish = intake.parts.at(-1);
    expect(varnish?.onItsDay).toMatchObject({ mg: expect.closeTo(5.65, 9), mgPerKg: expect.closeTo(5.65 / 13, 9), daysPerYear: 2 });
    expect(varnish?.sources).toEqual([expect.objectContaining({ key: 'varnishMonographs', status: 'read' })]);
    expect(intake.covers).toBe('the products listed, drinking water, salt, drops or tablets and varnish; not food');
  });

  it('says what nobody asked it about', () => {
    const { notCovered, complete, covers } = intakeOf({ ageYears: 4, weightKg: 13, products });
    expect(notCovered).toEqual(['drinking water', 'salt', 'drops or tablets', 'varnish']);
    expect(complete).toBe(true);
    expect(covers).toBe('the products listed; not drinking water, not salt, not drops or tablets, not varnish, not food');
  });

  test.each([
    [{ salt: null }, 'salt'],
    [{ salt: { fluorideMgPerKg: 250 } }, 'salt'],
    [{ salt: { gPerDay: 2 } }, 'salt'],
    [{ supplementMgPerDay: null }, 'drops or tablets'],
    [{ varnish: null }, 'varnish'],
    [{ varnish: { mgPerApplication: 5 } }, 'varnish'],
    [{ waterLitresPerDay: null }, 'water'],
  ])('%j is not known: the sum is "at least", without a share', (missing, name) => {
    const intake = intakeOf({ ...all, ...missing });
    expect(intake).toMatchObject({ complete: false, unknownSources: [name] });
    expect(intake.sentence).toMatch(new RegExp(`^At least .*${name} not known`));
    expect(intake.limits.every((l) => l.share === null)).toBe(true);
  });

  it('none is none: no salt eaten, no varnish day', () => {
    expect(intakeOf({ ...all, salt: { gPerDay: 0 }, varnish: { daysPerYear: 0 } })).toMatchObject({ complete: true });
  });
});

describe('limits', () => {
  // Institute of Medicine 1997 and European Food Safety Authority 2025 (read), bands end at the birthday. No tolerance.
  test.each([
    [0.5, 0.7, 1, 'upper-intake-level'],
    [0.9, 0.9, 1, 'upper-intake-level'],
    [1, 1.3, 1.6, 'upper-intake-level'],
    [3.99, 1.3, 1.6, 'upper-intake-level'],
    [4, 2.2, 2, 'upper-intake-level'],
    [8.99, 2.2, 2, 'upper-intake-level'],
    [9, 10, 3.3, 'safe-level'],
    [70, 10, 3.3, 'safe-level'],
  ])('at %s years', (ageYears, us, european, kind) => {
    const daily = intakeOf({ ageYears, products: [] }).limits.filter((l) => l.unit === 'mg/day');
    expect(daily.find((l) => l.name.endsWith('US 1997'))).toMatchObject({ kind: 'upper-intake-level', value: us });
    expect(daily.find((l) => l.name.endsWith('European 2025'))).toMatchObject({ kind, value: european });
  });

  it('names the label cap and the target with their kinds, and shares of a whole sum', () => {
    const { limits } = intakeOf({ ageYears: 30, weightKg: 50, products: [{ ppm: 5000, amountG: 1, perDay: 2 }] });
    const share = (kind: string, unit: string) => limits.find((l) => l.kind === kind && l.unit === unit)?.share;
    expect(share('label-cap', 'mg/day')).toBeCloseTo(1, 12);
    expect(share('label-cap', 'mg/kg/day')).toBeCloseTo(0.4, 12);
    expect(share('intake-target', 'mg/kg/day')).toBeCloseTo(0.4, 12);
    expect(share('upper-intake-level', 'mg/day')).toBeCloseTo(0.1, 12);
  });

  // Our own planner shares by age (proposal). No tolerance.
  test.each([
    [5.99, 1],
    [6, 0.35],
    [8.99, 0.35],
    [9, 0.2],
    [12.99, 0.2],
    [13, 0.1],
  ])('takes the swallowed share at %s years', (ageYears, share) => {
    expect(intakeOf({ ageYears, weightKg: 20, products: [{ ppm: 1000, amountG: 1, perDay: 1 }] }).mgPerDay).toBeCloseTo(share, 12);
  });
});

describe('bad input', () => {
  test.each([
    [{ ageYears: 4, products: [{ ppm: -1, amountG: 1, perDay: 1 }] }, 'products.0.ppm'],
    [{ ageYears: 4, weightKg: 0, products: [] }, 'weightKg'],
    [{ ageYears: 30, weightKg: 4, products: [] }, 'weightKg'],
    [{ ageYears: 1, weightKg: 60, products: [] }, 'weightKg'],
    [{ ageYears: -1, products: [] }, 'ageYears'],
    [{ products: [] }, 'ageYears'],
    [{ ageYears: 4, products: [{ compound: 'KF', percent: 1 }] }, 'products.0.compound'],
    [{ ageYears: 4, products: [], salt: { gPerDay: -1 } }, 'salt.gPerDay'],
    [{ ageYears: 4, products: [], salt: { mgPerDay: 1 } }, 'salt.mgPerDay'],
    [{ ageYears: 4, products: [], supplementMgPerDay: -1 }, 'supplementMgPerDay'],
    [{ ageYears: 4, products: [], varnish: { daysPerYear: 400 } }, 'varnish.daysPerYear'],
    [{ ageYears: 4, products: [{ ppm: 1000, percent: 1, compound: 'NaF', amountG: 1, perDay: 1 }] }, 'products.0.ppm'],
    [{ ageYears: 4, products: [{ ppm: 1000, amountG: 1, amountMl: 1, perDay: 1 }] }, 'products.0.amountMl'],
    [{ ageYears: 4, products: [{ ppm: 1000, grams: 1 }] }, 'products.0.grams'],
    [{ ageYears: 4, products: [{ swallowedFraction: 1.2 }] }, 'products.0.swallowedFraction'],
  ])('%j', (input, path) => {
    expect(errorOf(input)).toMatchObject({ code: 'INPUT_INVALID', path });
  });
});

const known = fc.record({
  ppm: fc.oneof(fc.constantFrom(0, 1000, 22_600), fc.double({ min: 0, max: 50_000, noNaN: true })),
  amountG: fc.oneof(fc.constantFrom(0, 0.1, 51), fc.double({ min: 0, max: 100, noNaN: true })),
  perDay: fc.oneof(fc.constantFrom(0, 1 / 7, 1, 2), fc.double({ min: 0, max: 6, noNaN: true })),
});
const ages = fc.oneof(fc.constantFrom(0, 0.5, 1.99, 2, 6, 9, 20, 21), fc.double({ min: 0, max: 100, noNaN: true }));
/** Times the median of the growth references at the age, girls: all of them fit it, most of them far from usual. */
const shares = fc.oneof(fc.constantFrom(0.5, 1, 4.5), fc.double({ min: 0.5, max: 4.5, noNaN: true }));
function kgAt(ageYears: number, share: number): number {
  const row = weightForAge.findLast((r) => r.ageMonths <= Math.floor(ageYears * 12)) ?? weightForAge[0];
  return (row?.girls.mKg ?? 0) * share;
}

it('adds up, never falls when something is added, and never turns an emergency into less', () => {
  fc.assert(
    fc.property(
      ages,
      fc.option(shares, { nil: undefined }),
      fc.array(known, { maxLength: 4 }),
      known,
      (ageYears, share, products, extra) => {
        const weightKg = share && kgAt(ageYears, share);
        const few = intakeOf({ ageYears, weightKg, products });
        const more = intakeOf({ ageYears, weightKg, products: [...products, extra] });
        const alone = intakeOf({ ageYears, weightKg, products: [extra] });
        expect(Math.abs(more.mgPerDay - few.mgPerDay - alone.mgPerDay)).toBeLessThanOrEqual(1e-9 * (1 + more.mgPerDay));
        expect(more.mgPerDay).toBeGreaterThanOrEqual(few.mgPerDay);
        if (few.acute.action === 'emergency-care-now') expect(more.acute.action).toBe('emergency-care-now');
        const open = intakeOf({ ageYears, weightKg, products: [...products, { ...extra, ppm: null }] });
        expect(open.complete).toBe(false);
        expect(open.mgPerDay).toBeLessThanOrEqual(more.mgPerDay + 1e-9);
      },
    ),
  );
});

it('never gives a lighter person a smaller dose per kg', () => {
  fc.assert(
    fc.property(ages, fc.double({ min: 0.5, max: 3, noNaN: true }), known, (ageYears, share, product) => {
      const weightKg = kgAt(ageYears, share);
      const heavy = intakeOf({ ageYears, weightKg: weightKg * 1.5, products: [product] });
      const light = intakeOf({ ageYears, weightKg, products: [product] });
      expect(light.mgPerKgPerDay ?? 0).toBeGreaterThanOrEqual(heavy.mgPerKgPerDay ?? 0);
    }),
  );
});

test('fluoride-content', () => {
  const ppmOf = (input: unknown) => {
    const result = runCalculator(fluorideContent, input);
    return result.ok ? (result.output as { fluoridePpm: number }).fluoridePpm : result.error;
  };
  // 1.1 % NaF, arithmetic from atomic masses; tolerance 1 ppm.
  expect(Math.abs((ppmOf({ compound: 'NaF', percent: 1.1 }) as number) - 4977)).toBeLessThanOrEqual(1);
  expect(ppmOf({ compound: 'NaF', percent: 101 })).toMatchObject({ path: 'percent' });
  expect(ppmOf({ compound: 'KF', percent: 1 })).toMatchObject({ path: 'compound' });
});

describe('fluoride-content in use', () => {
  // Arithmetic of the project's chemistry facts: 10 mL of a rinse of 0.05 % NaF are 2.3 mg, 0.25 mL of varnish 5.66 mg.
  test.each([
    { input: { compound: 'NaF', percent: 0.05, amountMl: 10 }, mg: 2.26, mmolPerL: 11.9 },
    { input: { compound: 'NaF', percent: 5, amountMl: 0.25 }, mg: 5.66, mmolPerL: 1190.8 },
    { input: { compound: 'NaF', percent: 0.05 }, mg: null, mmolPerL: 11.9 },
  ])('$input', ({ input, mg, mmolPerL }) => {
    expect(runCalculator(fluorideContent, input)).toMatchObject({
      ok: true,
      output: { fluorideMgPerUse: mg === null ? null : expect.closeTo(mg, 2), fluorideMmolPerL: expect.closeTo(mmolPerL, 1) },
    });
  });

  test('takes one amount', () => {
    const both = { compound: 'NaF', percent: 0.05, amountMl: 10, amountG: 1 };
    expect(runCalculator(fluorideContent, both)).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path: 'amountMl' } });
  });
});
