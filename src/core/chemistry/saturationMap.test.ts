import { describe, expect, it, test } from 'vitest';
import { criticalPh } from './criticalPh.ts';
import { saturation } from './saturation.ts';
import { MAP_REGIONS, saturationMap } from './saturationMap.ts';

const fluid = { calcium: 1, phosphate: 3.5, fluoride: 0.001, sodium: 10, potassium: 20, chloride: 28 };
const pHs = [4, 4.5, 5, 5.5, 6];
const products = [1, 3.5, 20];

describe('saturationMap', () => {
  const map = saturationMap({ fluid, pHs, products });
  const regionAt = (row: number, column: number) => MAP_REGIONS[map.region[row * pHs.length + column] ?? 4];

  it('holds the indices of each point, row by row, the ratio of calcium to phosphate kept', () => {
    const here = saturation(fluid, 5).saturationIndex;
    expect(map.hydroxyapatiteIndex[1 * pHs.length + 2]).toBeCloseTo(here.hydroxyapatite ?? 0, 10);
    expect(map.fluorapatiteIndex[1 * pHs.length + 2]).toBeCloseTo(here.fluorapatite ?? 0, 10);
  });

  it('has the window between the two critical pH', () => {
    expect(map.edges[1]).toEqual({
      hydroxyapatite: expect.closeTo(criticalPh(fluid, 'hydroxyapatite') ?? 0, 8),
      fluorapatite: expect.closeTo(criticalPh(fluid, 'fluorapatite') ?? 0, 8),
    });
    for (const [row, { hydroxyapatite, fluorapatite }] of map.edges.entries()) {
      for (const [column, pH] of pHs.entries()) {
        const expected = pH < (fluorapatite ?? 0) ? 'dissolves' : pH < (hydroxyapatite ?? 0) ? 'window' : 'grows';
        expect([row, pH, regionAt(row, column)]).toEqual([row, pH, expected]);
      }
    }
    expect(new Set(map.region).size).toBe(3);
  });

  it('says where fluorapatite dissolves and hydroxyapatite does not', () => {
    const odd = saturationMap({ fluid: { ...fluid, fluoride: 1e-9 }, pHs: [5.5], products: [3.5] });
    expect(MAP_REGIONS[odd.region[0] ?? 4]).toBe('odd');
  });

  test.each([
    { input: { fluid: { ...fluid, calcium: 0 }, pHs, products }, says: /^fluid.calcium must be above 0/ },
    { input: { fluid: { ...fluid, phosphate: undefined }, pHs, products }, says: /^fluid.phosphate must/ },
    { input: { fluid, pHs: [], products }, says: /^pHs must hold/ },
    { input: { fluid, pHs, products: [-1] }, says: /^products must be above 0/ },
    { input: { fluid, pHs: [1], products }, says: /^pH.0 must/ },
  ])('names what it cannot take: $says', ({ input, says }) => {
    expect(() => saturationMap(input)).toThrow(says);
  });
});
