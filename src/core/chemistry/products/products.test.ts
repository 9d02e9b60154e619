import { describe, expect, it, test } from 'vitest';
import { saturation } from '../saturation.ts';
import { CHLORINE_PER_HYPOCHLORITE, diluteHypochlorite } from './diluteHypochlorite.ts';
import { saturationWithAdded } from './saturationWithAdded.ts';
import { baseNeededMmolPerKg, titratableMmolPerL } from './titratableLoad.ts';

describe('diluteHypochlorite', () => {
  const dilute = (stockPercent: number, targetPercent: number, more = {}) =>
    diluteHypochlorite({ stockPercent, stockIs: 'sodium-hypochlorite', targetPercent, volumeMl: 250, highestPercent: 0.25, ...more });

  // Arithmetic of V1 = C2 V2 / C1 made once outside this repository. Tolerance: half of the last printed place.
  test.each([
    { stock: 5.25, target: 0.2, ml: 9.5 },
    { stock: 6, target: 0.2, ml: 8.3 },
    { stock: 8.25, target: 0.2, ml: 6.1 },
    { stock: 5.25, target: 0.25, ml: 11.9 },
    { stock: 6, target: 0.25, ml: 10.4 },
    { stock: 8.25, target: 0.25, ml: 7.6 },
    { stock: 2.5, target: 0.2, ml: 20 },
  ])('$ml mL of $stock % make 250 mL of $target %', ({ stock, target, ml }) => {
    const recipe = dilute(stock, target);
    expect(Math.abs(recipe.stockMl - ml)).toBeLessThanOrEqual(0.05);
    expect(recipe.stockMl + recipe.waterMl).toBeCloseTo(250, 10);
  });

  it('gives available chlorine by the one convention that it names', () => {
    expect(CHLORINE_PER_HYPOCHLORITE).toBeCloseTo(0.9525, 4);
    expect(dilute(5, 0.2).availableChlorinePpm).toBeCloseTo(1905, 0);
    expect(dilute(5, 0.25).availableChlorinePpm).toBeCloseTo(2381, 0);
    const chlorine = dilute(5, 0.25, { stockIs: 'available-chlorine' });
    expect(chlorine.stockHypochloritePercent).toBeCloseTo(5.249, 3);
    expect(chlorine.stockMl).toBeLessThan(dilute(5, 0.25).stockMl);
    expect(chlorine.convention).toContain('available chlorine by volume');
  });

  it('takes a label by weight with its density', () => {
    expect(dilute(6, 0.2, { stockDensityGPerMl: 1.08 }).stockMl * 1.08).toBeCloseTo(dilute(6, 0.2).stockMl, 10);
    expect(dilute(6, 0.2, { stockDensityGPerMl: 1.08 }).convention).toContain('by weight');
  });

  test.each([
    { stock: 5, target: 0.26, more: {}, says: /^targetPercent must be above 0 and at most 0.25 % sodium hypochlorite: 0.26/ },
    { stock: 5, target: 0, more: {}, says: /^targetPercent must/ },
    { stock: 5, target: Number.NaN, more: {}, says: /^targetPercent must/ },
    { stock: 0.1, target: 0.2, more: {}, says: /^stockPercent must be at least as strong/ },
    { stock: 30, target: 0.2, more: {}, says: /^stockPercent must be above 0 and at most 20/ },
    { stock: 5, target: 0.2, more: { volumeMl: 0 }, says: /^volumeMl must/ },
    { stock: 5, target: 0.2, more: { stockDensityGPerMl: 0.5 }, says: /^stockDensityGPerMl must/ },
  ])('refuses $target % from $stock %', ({ stock, target, more, says }) => {
    expect(() => dilute(stock, target, more)).toThrow(says);
  });
});

describe('titratableMmolPerL', () => {
  // Means of groups of drinks, mL of 1 M base for 50 mL (drinkGroups, read), times 20. Tolerance: rounding of the quotient.
  test.each([
    { baseMl: 2.56, mmolPerL: 51 },
    { baseMl: 1.07, mmolPerL: 21 },
    { baseMl: 4.83, mmolPerL: 97 },
  ])('$baseMl mL are $mmolPerL mmol/L', ({ baseMl, mmolPerL }) => {
    expect(Math.abs(titratableMmolPerL({ baseMl }) - mmolPerL)).toBeLessThan(0.5);
  });

  it('takes another base and another sample', () => {
    expect(titratableMmolPerL({ baseMl: 10, baseMolPerL: 0.1, sampleMl: 20 })).toBeCloseTo(50, 10);
  });

  test.each([
    { titration: { baseMl: -1 }, says: /^baseMl must be 0..1000/ },
    { titration: { baseMl: 1, baseMolPerL: 0 }, says: /^baseMolPerL must/ },
    { titration: { baseMl: 1, sampleMl: Number.NaN }, says: /^sampleMl must/ },
  ])('names the field: $says', ({ titration, says }) => {
    expect(() => titratableMmolPerL(titration)).toThrow(says);
  });
});

describe('baseNeededMmolPerKg', () => {
  it('is half of a weak acid at its pK, as activities shift it', () => {
    // Acetic acid 20 mM: from pH 3 (almost all acid) to pH 4.7 about half of it takes up base.
    const needed = baseNeededMmolPerKg({ acetate: 20, potassium: 10 }, [2.5, 4.7]);
    expect(needed).toBeGreaterThan(9);
    expect(needed).toBeLessThan(15);
  });

  it('adds up over steps, and turns its sign', () => {
    const totals = { phosphate: 5, carbonate: 10, calcium: 1, sodium: 20, chloride: 10 };
    const whole = baseNeededMmolPerKg(totals, [4, 8]);
    expect(baseNeededMmolPerKg(totals, [4, 6]) + baseNeededMmolPerKg(totals, [6, 8])).toBeCloseTo(whole, 9);
    expect(baseNeededMmolPerKg(totals, [8, 4])).toBeCloseTo(-whole, 9);
    expect(whole).toBeGreaterThan(0);
  });
});

describe('saturationWithAdded', () => {
  it('is the sum, beside what it was', () => {
    const { before, after } = saturationWithAdded({ calcium: 1, phosphate: 2 }, { calcium: 4, fluoride: 0.01 }, 5);
    expect(before).toEqual(saturation({ calcium: 1, phosphate: 2 }, 5));
    expect(after.saturationIndex).toEqual(saturation({ calcium: 5, phosphate: 2, fluoride: 0.01 }, 5).saturationIndex);
  });

  it('does not know about enamel without phosphate, and takes nothing away', () => {
    expect(saturationWithAdded({}, { calcium: 10 }, 4).isSaturatedWithEnamel).toBeNull();
    expect(() => saturationWithAdded({ calcium: 10 }, { calcium: -5 }, 4)).toThrow(/^added.calcium must be 0 or more/);
  });
});
