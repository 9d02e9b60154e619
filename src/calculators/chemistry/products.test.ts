import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import type { Totals } from '../../core/chemistry/types.ts';
import { type Calculator, runCalculator } from '../calculator.ts';
import { hypochloriteDilution } from './hypochloriteDilution.ts';
import { saturationMap } from './saturationMap.ts';
import { titratableLoad } from './titratableLoad.ts';

interface CriticalCase {
  readonly id: string;
  readonly totalsMmolPerKg: Totals & { readonly calcium: number; readonly phosphate: number };
  readonly criticalPh: { readonly hydroxyapatite: number; readonly fluorapatite: number };
}
const reference: { criticalPh: readonly CriticalCase[] } = JSON.parse(readFileSync('test/reference/chemistry/data.json', 'utf8'));

function answerOf<Input, Output>(calculator: Calculator<Input, Output>, input: unknown): Output {
  const result = runCalculator(calculator as Calculator, input);
  if (!result.ok) throw new Error(`${result.error.path}: ${result.error.message}`);
  return calculator.output.parse(result.output);
}
function errorOf<Input, Output>(calculator: Calculator<Input, Output>, input: unknown) {
  const result = runCalculator(calculator as Calculator, input);
  return result.ok ? 'answered' : result.error;
}

describe('saturation-map', () => {
  // PHREEQC 3.8.8-39-g8176af0c (test/reference/chemistry), run outside this repository. Tolerance: 0.005 pH.
  test.each(reference.criticalPh)(
    '$id: the window lies between the two critical pH of the reference',
    ({ totalsMmolPerKg, criticalPh }) => {
      const product = totalsMmolPerKg.calcium * totalsMmolPerKg.phosphate;
      const { hydroxyapatite, fluorapatite } = criticalPh;
      const pHs = [fluorapatite - 0.005, fluorapatite + 0.005, hydroxyapatite - 0.005, hydroxyapatite + 0.005];
      const { edges, region } = answerOf(saturationMap, { totalsMmolPerKg, pHs, products: [product] });
      expect(Math.abs((edges[0]?.hydroxyapatitePh ?? 0) - hydroxyapatite)).toBeLessThan(0.005);
      expect(Math.abs((edges[0]?.fluorapatitePh ?? 0) - fluorapatite)).toBeLessThan(0.005);
      expect(region).toEqual([['dissolves', 'window', 'window', 'grows']]);
    },
  );

  // larsen1975, abstract read: parotid saliva has the window between pH 4.5 and 5.5. Tolerance: 0.25 pH, as for every published crossing.
  it('has the window of parotid saliva where it was published', () => {
    const parotid = { calcium: 1, phosphate: 3.5, fluoride: 0.001, carbonate: 5, sodium: 8, potassium: 22, chloride: 27 };
    const [edge] = answerOf(saturationMap, { totalsMmolPerKg: parotid, pHs: [5], products: [3.5] }).edges;
    expect(Math.abs((edge?.hydroxyapatitePh ?? 0) - 5.5)).toBeLessThan(0.25);
    expect(Math.abs((edge?.fluorapatitePh ?? 0) - 4.5)).toBeLessThan(0.25);
  });

  it('gives one row for each product, and null without fluoride', () => {
    const answer = answerOf(saturationMap, { totalsMmolPerKg: { calcium: 1, phosphate: 3 }, pHs: [4, 5, 7], products: [1, 100] });
    expect(answer.fluorapatiteIndex).toEqual([
      [null, null, null],
      [null, null, null],
    ]);
    expect(answer.hydroxyapatiteIndex.map((row) => row.length)).toEqual([3, 3]);
    expect(answer.edges[1]).toMatchObject({ product: 100, fluorapatitePh: null });
  });

  it('marks what is too strong and answers for the rest', () => {
    const salty = { calcium: 1, phosphate: 1, sodium: 30, chloride: 30 };
    const { region, edges, hydroxyapatiteIndex } = answerOf(saturationMap, { totalsMmolPerKg: salty, pHs: [5], products: [1, 5e5] });
    expect(region).toEqual([['dissolves'], ['refused']]);
    expect(edges[1]).toEqual({ product: 5e5, hydroxyapatitePh: null, fluorapatitePh: null });
    expect(hydroxyapatiteIndex[1]).toEqual([null]);
    expect(edges[0]?.hydroxyapatitePh).toBeGreaterThan(5);
  });

  const fluid = { calcium: 1, phosphate: 3 };
  test.each([
    { input: { totalsMmolPerKg: { calcium: 1 }, pHs: [5], products: [1] }, path: 'totalsMmolPerKg.phosphate' },
    { input: { totalsMmolPerKg: { ...fluid, calcium: 0 }, pHs: [5], products: [1] }, path: 'totalsMmolPerKg.calcium' },
    { input: { totalsMmolPerKg: fluid, pHs: [5, 13], products: [1] }, path: 'pHs.1' },
    { input: { totalsMmolPerKg: fluid, pHs: [5], products: [1, -1] }, path: 'products.1' },
    { input: { totalsMmolPerKg: fluid, pHs: [5], products: [1, 1e6] }, path: 'products.1' },
    { input: { totalsMmolPerKg: fluid, pHs: Array(1000).fill(5), products: Array(21).fill(1) }, path: 'pHs' },
  ])('names $path', ({ input, path }) => {
    expect(errorOf(saturationMap, input)).toMatchObject({ code: 'INPUT_INVALID', path });
  });
});

describe('titratable-load', () => {
  // Means of groups of drinks, mL of 1 M alkali for 50 mL (drinkGroups, Table 1 read), times 20. Tolerance: rounding of the quotient.
  test.each([
    { drink: 'fruit juice, opened', baseMl: 2.56, mmolPerL: 51 },
    { drink: 'soft drink, stirred an hour', baseMl: 1.07, mmolPerL: 21 },
    { drink: 'energy drink, stirred an hour', baseMl: 4.83, mmolPerL: 97 },
  ])('$drink: $baseMl mL are $mmolPerL mmol/L', ({ baseMl, mmolPerL }) => {
    const answer = answerOf(titratableLoad, { by: 'titration', baseMl, portionMl: 330 });
    expect(Math.abs(answer.titratableMmolPerL - mmolPerL)).toBeLessThan(0.5);
    expect(answer.titratableMmolPerPortion).toBeCloseTo(0.33 * answer.titratableMmolPerL, 10);
    expect(answer.notCounted).toBeNull();
  });

  it('takes a weaker base and a smaller sample', () => {
    const answer = answerOf(titratableLoad, { by: 'titration', baseMl: 10, baseMolPerL: 0.1, sampleMl: 20 });
    expect(answer).toMatchObject({ titratableMmolPerL: expect.closeTo(50, 10), titratableMmolPerPortion: null });
  });

  // Worked by hand: acetic acid (pK 4.77) is nearly all acid at pH 2.5 and nearly all base at 7, so its 10 mmol/kg count whole.
  it('is the whole of a weak acid between far below and far above its pK, and says what it cannot hold', () => {
    const answer = answerOf(titratableLoad, { by: 'composition', totalsMmolPerKg: { acetate: 10, potassium: 10 }, fromPh: 2.5, toPh: 7 });
    // On top of it the free protons of pH 2.5: 10^-2.5 over an activity coefficient of about 0.93.
    expect(answer.titratableMmolPerL).toBeCloseTo(10 + 3.4, 0);
    expect(answer.notCounted).toContain('citric');
  });

  it('is negative where acid is needed', () => {
    const answer = answerOf(titratableLoad, { by: 'composition', totalsMmolPerKg: { carbonate: 20, sodium: 20 }, fromPh: 8.3 });
    expect(answer.titratableMmolPerL).toBeLessThan(-1);
  });

  test.each([
    { input: { by: 'titration', baseMl: -1 }, path: 'baseMl' },
    { input: { by: 'titration', baseMl: 1, sampleMl: 0 }, path: 'sampleMl' },
    { input: { by: 'composition', totalsMmolPerKg: {}, fromPh: 1 }, path: 'fromPh' },
    { input: { by: 'composition', totalsMmolPerKg: { citrate: 5 }, fromPh: 3 }, path: 'totalsMmolPerKg.citrate' },
    { input: { baseMl: 1 }, path: 'by' },
  ])('names $path', ({ input, path }) => {
    expect(errorOf(titratableLoad, input)).toMatchObject({ code: 'INPUT_INVALID', path });
  });
});

describe('hypochlorite-dilution', () => {
  const protocol = { name: 'Gum rinse', by: 'A. Dentist', date: '2026-09-01' };
  const from = (stockPercent: number, targetPercent: number, more = {}) => ({
    protocol,
    stockPercent,
    stockIs: 'sodium-hypochlorite',
    targetPercent,
    volumeMl: 250,
    ...more,
  });

  // V1 = C2 V2 / C1, made once outside this repository (derived); available chlorine by the masses of IUPAC. Tolerance: the last printed place.
  test.each([
    { stock: 5.25, target: 0.2, ml: 9.5, ppm: 1905 },
    { stock: 6, target: 0.25, ml: 10.4, ppm: 2381 },
    { stock: 8.25, target: 0.2, ml: 6.1, ppm: 1905 },
    { stock: 5, target: 0.25, ml: 12.5, ppm: 2381 },
    { stock: 2.5, target: 0.25, ml: 25, ppm: 2381 },
  ])('$ml mL of $stock % make 250 mL of $target %, $ppm ppm available chlorine', ({ stock, target, ml, ppm }) => {
    const answer = answerOf(hypochloriteDilution, from(stock, target));
    expect(Math.abs(answer.stockMl - ml)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(answer.availableChlorinePpm - ppm)).toBeLessThanOrEqual(0.5);
    expect(answer.stockMl + answer.waterMl).toBeCloseTo(250, 10);
  });

  it('always says never to mix it, and never with chlorhexidine', () => {
    const [first, second] = answerOf(hypochloriteDilution, from(5, 0.2)).cautions;
    expect(first).toMatch(/^Never mix bleach with acid/);
    expect(second).toMatch(/chlorhexidine/);
  });

  test.each([
    { input: { ...from(5, 0.2), protocol: undefined }, path: 'protocol' },
    { input: from(5, 0.2, { protocol: { ...protocol, by: ' ' } }), path: 'protocol.by' },
    { input: from(5, 0.2, { protocol: { ...protocol, date: 'last week' } }), path: 'protocol.date' },
    { input: from(5, 0.251), path: 'targetPercent', says: /no study/ },
    { input: from(0.1, 0.2), path: 'stockPercent', says: /as strong as the target/ },
    { input: from(5, 0.2, { volumeMl: 6000 }), path: 'volumeMl' },
    { input: from(5, 0.2, { stockIs: undefined }), path: 'stockIs' },
  ])('refuses, and names $path', ({ input, path, says = /./ }) => {
    expect(errorOf(hypochloriteDilution, input)).toMatchObject({ code: 'INPUT_INVALID', path, message: expect.stringMatching(says) });
  });
});
