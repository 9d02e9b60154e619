import { describe, expect, it } from 'vitest';
import { oralFluids } from '../../content/oralFluids.ts';
import { criticalPh } from './criticalPh.ts';
import { fluidMap } from './fluidMap.ts';
import { sayWindow } from './sayWindow.ts';

const { saliva, plaqueFluid } = oralFluids;
const PRODUCTS = [0.5, 5, 50];

describe('fluidMap', () => {
  it('stands at typical amounts where nothing was measured, within the range of people', () => {
    const map = fluidMap(saliva, {}, PRODUCTS);
    expect(map.here.product).toBeCloseTo(1.3 * 4.5, 10);
    expect(map.productRange).toEqual({ low: expect.closeTo(1 * 3, 10), high: expect.closeTo(2 * 7, 10) });
    expect(map.here.enamel).toBeCloseTo(map.critical.pH ?? 0, 8);
    expect(map.here.fluorapatite ?? 9).toBeLessThan(map.here.hydroxyapatite ?? 0);
    expect(map.here.hydroxyapatite ?? 9).toBeLessThan(map.here.enamel ?? 0);
  });

  it('stands where it was measured, and then has no range of people', () => {
    const map = fluidMap(saliva, { calcium: 2, phosphate: 6 }, PRODUCTS);
    expect(map).toMatchObject({ here: { product: 12 }, productRange: null, critical: { basis: 'measured' } });
    expect(fluidMap(saliva, { calcium: 2 }, PRODUCTS).productRange).toEqual({ low: 6, high: 14 });
  });

  it('has lines that fall as calcium times phosphate rises, at the ratio of the fluid', () => {
    const { rows } = fluidMap(plaqueFluid, {}, PRODUCTS);
    for (const mineral of ['hydroxyapatite', 'fluorapatite', 'enamel'] as const) {
      const [low = 0, middle = 0, high = 0] = rows.map((row) => row[mineral] ?? Number.NaN);
      expect(low).toBeGreaterThan(middle);
      expect(middle).toBeGreaterThan(high);
    }
    const totals = Object.fromEntries(Object.entries(plaqueFluid.ions).map(([ion, { typical }]) => [ion, typical]));
    const factor = Math.sqrt(5 / (3.1 * 23.2));
    const scaled = { ...totals, calcium: 3.1 * factor, phosphate: 23.2 * factor };
    expect(rows[1]?.enamel).toBeCloseTo(criticalPh(scaled, 'enamel') ?? 0, 8);
    expect(rows[1]?.fluorapatite).toBeCloseTo(criticalPh(scaled, 'fluorapatite') ?? 0, 8);
  });

  it('names what it cannot take', () => {
    expect(() => fluidMap(saliva, { calcium: 0 }, PRODUCTS)).toThrow(/^fluid.calcium must be above 0/);
    expect(() => fluidMap(saliva, { fluoride: -1 }, PRODUCTS)).toThrow(/fluoride must be 0..1000/);
  });
});

describe('sayWindow', () => {
  it('never calls measured what is typical', () => {
    expect(sayWindow(fluidMap(saliva, {}, PRODUCTS))).toBe(
      'Typical saliva: between pH 4.5 and 5.2 hydroxyapatite dissolves while fluorapatite forms; below 4.5 both dissolve, above 5.2 neither. Enamel gives way a little before hydroxyapatite: below 5.3.',
    );
    expect(sayWindow(fluidMap(saliva, { calcium: 1, phosphate: 4 }, PRODUCTS))).toMatch(/^Saliva, as measured: between/);
    expect(sayWindow(fluidMap(plaqueFluid, { calcium: 1 }, PRODUCTS))).toMatch(/^Plaque fluid, measured in part: between/);
  });

  it('says so where there is no window', () => {
    expect(sayWindow(fluidMap(saliva, { fluoride: 0 }, PRODUCTS))).toMatch(/no window/);
    expect(sayWindow(fluidMap(saliva, { fluoride: 1e-9 }, PRODUCTS))).toMatch(/no pH at which/);
  });
});
