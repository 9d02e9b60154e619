import { describe, expect, it, test } from 'vitest';
import { runCalculator } from '../calculator.ts';
import { criticalPh } from './criticalPh.ts';
import { saturation } from './saturation.ts';

const totalsMmolPerKg = { calcium: 1.3, phosphate: 5, sodium: 8, potassium: 22, chloride: 27.2757, carbonate: 5 };

describe('saturation', () => {
  it('answers with nulls where an ion is absent', () => {
    // PHREEQC, fluid G01 of test/reference/chemistry but without its fluoride.
    expect(runCalculator(saturation, { pH: 5, totalsMmolPerKg })).toMatchObject({
      ok: true,
      output: {
        ionicStrength: expect.closeTo(0.0339, 4),
        saturationIndex: { hydroxyapatite: expect.closeTo(-1.214, 2), fluorapatite: null, fluorite: null },
        degreeOfSaturation: { hydroxyapatite: expect.closeTo(0.733, 2), fluorapatite: null },
        logActivity: { fluoride: null, calcium: expect.closeTo(-3.197, 2) },
      },
    });
  });

  it('takes the pairs of the background when asked', () => {
    const index = (pairs: string) => {
      const result = runCalculator(saturation, { pH: 7, totalsMmolPerKg, pairs });
      return result.ok ? (result.output as { saturationIndex: { enamel: number } }).saturationIndex.enamel : Number.NaN;
    };
    expect(index('with-background')).toBeLessThan(index('calcium'));
  });

  test.each([
    { input: { pH: 1, totalsMmolPerKg: {} }, path: 'pH' },
    { input: { pH: 7, totalsMmolPerKg: { calcium: -1 } }, path: 'totalsMmolPerKg.calcium' },
    { input: { pH: 7, totalsMmolPerKg: { phosphate: 1e5 } }, path: 'totalsMmolPerKg.phosphate' },
    { input: { pH: 7, totalsMmolPerKg: { Ca: 1 } }, path: 'totalsMmolPerKg.Ca' },
    { input: { pH: 7, totalsMmolPerKg: { sodium: 900, chloride: 900 } }, path: 'totalsMmolPerKg' },
    { input: { totalsMmolPerKg: {} }, path: 'pH' },
  ])('names $path of $input', ({ input, path }) => {
    expect(runCalculator(saturation, input)).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path } });
  });
});

describe('critical-ph', () => {
  it('answers with the pH, or with null where there is none', () => {
    expect(runCalculator(criticalPh, { totalsMmolPerKg, mineral: 'enamel' })).toMatchObject({
      ok: true,
      output: { criticalPh: expect.closeTo(5.29, 1) },
    });
    expect(runCalculator(criticalPh, { totalsMmolPerKg, mineral: 'fluorapatite' })).toEqual({ ok: true, output: { criticalPh: null } });
  });

  test.each([
    { input: { totalsMmolPerKg, mineral: 'tooth' }, path: 'mineral' },
    { input: { totalsMmolPerKg: { calcium: 2000 }, mineral: 'enamel' }, path: 'totalsMmolPerKg.calcium' },
    { input: { totalsMmolPerKg: { sodium: 900, chloride: 900, calcium: 1, phosphate: 1 }, mineral: 'enamel' }, path: 'totalsMmolPerKg' },
  ])('names $path', ({ input, path }) => {
    expect(runCalculator(criticalPh, input)).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path } });
  });
});
