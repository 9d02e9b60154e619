import { describe, expect, test } from 'vitest';
import { fluorideInAmount, labelPpm } from './labelSums.ts';

describe('ppm by the label', () => {
  // Arithmetic on atomic masses (F in NaF 45.25 %, in SnF2 24.25 %, in Na2PO3F 13.20 %): 1.1 % NaF 4,977; 0.4 % SnF2 970; 0.76 % Na2PO3F 1,003.
  // A rinse of 0.05 % NaF holds 0.0226 % ion. Tolerance: half a ppm.
  test.each([
    [{ value: 1.1, of: 'compound' }, 'NaF', 4977],
    [{ value: 0.4, of: 'compound' }, 'SnF2', 970],
    [{ value: 0.76, of: 'compound' }, 'Na2PO3F', 1003],
    [{ value: 0.02262, of: 'ion' }, undefined, 226],
    [{ value: 1.23, of: 'ion' }, undefined, 12_300],
    [{ value: 1450, of: 'ppm' }, 'NaF', 1450],
    [{ value: 0, of: 'ion' }, 'NaF', 0],
  ] as const)('%j of %s', (label, compound, ppm) => {
    expect(Math.abs((labelPpm(label, compound) ?? -1) - ppm)).toBeLessThanOrEqual(0.5);
  });

  test('a percentage of a compound that is not known tells nothing', () => {
    expect(labelPpm({ value: 1.1, of: 'compound' }, undefined)).toBeUndefined();
  });

  test.each([101, -1, Number.NaN])('%s percent is refused', (value) => {
    expect(() => labelPpm({ value, of: 'ion' }, 'NaF')).toThrow(RangeError);
    expect(() => labelPpm({ value, of: 'compound' }, 'NaF')).toThrow(RangeError);
  });
});

describe('milligrams in an amount', () => {
  test('weight goes with weight and volume with volume; anything else is said', () => {
    expect(fluorideInAmount(1450, { value: 1, unit: 'g' }, 'w/w')).toEqual({ mg: 1.45, isByWater: false });
    expect(fluorideInAmount(226, { value: 10, unit: 'mL' }, 'w/v')).toEqual({ mg: 2.26, isByWater: false });
    expect(fluorideInAmount(226, { value: 10, unit: 'mL' }, 'w/w')).toEqual({ mg: 2.26, isByWater: true });
    expect(fluorideInAmount(226, { value: 10, unit: 'mL' }, undefined).isByWater).toBe(true);
    // Grams of a pack whose label says neither are counted by weight, as packs by weight are.
    expect(fluorideInAmount(1450, { value: 1, unit: 'g' }, undefined).isByWater).toBe(false);
    expect(fluorideInAmount(44_800, { value: 1, unit: 'g' }, 'w/v').isByWater).toBe(true);
  });
});
