import { describe, expect, test } from 'vitest';
import { criticalPh } from './criticalPh.ts';
import { saturationWithAdded } from './products/saturationWithAdded.ts';
import { saturation } from './saturation.ts';
import type { Mineral, Totals } from './types.ts';

/** Unstimulated whole saliva, mmol/L. */
const resting: Totals = { calcium: 1.3, phosphate: 5, fluoride: 0.001, carbonate: 5, sodium: 8, potassium: 22, chloride: 27 };
const stimulated: Totals = { calcium: 1.5, phosphate: 4, fluoride: 0.0008, carbonate: 20, sodium: 30, potassium: 20, chloride: 38 };
const parotid: Totals = { ...resting, calcium: 1, phosphate: 3.5 };

// What was published of real fluids, against the constants; each line says where it was read. Tolerance: 0.25 pH for a crossing.
test.each([
  { fluid: 'resting saliva', totals: resting, mineral: 'enamel', published: 5.3, source: 'larsenPearce2003, apatites, abstract read' },
  { fluid: 'resting saliva', totals: resting, mineral: 'hydroxyapatite', published: 5.3, source: 'larsenPearce2003, abstract read' },
  { fluid: 'resting saliva', totals: resting, mineral: 'octacalciumPhosphate', published: 6, source: 'larsenPearce2003, abstract read' },
  { fluid: 'resting saliva', totals: resting, mineral: 'tricalciumPhosphate', published: 6, source: 'larsenPearce2003, abstract read' },
  {
    fluid: 'parotid saliva',
    totals: parotid,
    mineral: 'hydroxyapatite',
    published: 5.5,
    source: 'larsen1975 and larsen1983, abstracts read',
  },
  { fluid: 'parotid saliva', totals: parotid, mineral: 'enamel', published: 5.5, source: 'larsen1975, abstract read' },
  { fluid: 'parotid saliva', totals: parotid, mineral: 'fluorapatite', published: 4.5, source: 'larsen1975, abstract read' },
] as const satisfies readonly { mineral: Mineral; [key: string]: unknown }[])(
  '$fluid is just saturated with $mineral at pH $published ($source)',
  ({ totals, mineral, published }) => {
    expect(Math.abs((criticalPh(totals, mineral) ?? 0) - published)).toBeLessThan(0.25);
  },
);

// larsenPearce2003, abstract read: calcium fluoride lasts in saliva only with 6 ppm fluoride in it. Tolerance: 15 %.
test.each([
  ['resting', resting],
  ['stimulated', stimulated],
] as const)('%s saliva needs about 6 ppm fluoride to be saturated with calcium fluoride', (_, totals) => {
  const indexAt = (ppm: number) => saturation({ ...totals, fluoride: ppm / 18.998403 }, 7).saturationIndex.fluorite ?? Number.NaN;
  expect(indexAt(6 * 0.85)).toBeLessThan(0);
  expect(indexAt(6 * 1.15)).toBeGreaterThan(0);
});

describe('orange juice of pH 4 (larsenNyvad1999, a copy of the article read)', () => {
  const juice: Totals = { calcium: 2, phosphate: 5, potassium: 50 };

  test('does not dissolve hydroxyapatite once it holds 40 mmol calcium and 30 mmol phosphate; without, it does', () => {
    const { before, after, isSaturatedWithEnamel } = saturationWithAdded(juice, { calcium: 38, phosphate: 25 }, 4);
    expect(after.saturationIndex.hydroxyapatite ?? -1).toBeGreaterThan(0);
    expect(before.saturationIndex.hydroxyapatite ?? 0).toBeLessThan(-5);
    // Citrate, which is not in the constants, makes it less; enamel, which dissolves more easily than hydroxyapatite, is nearer to the edge.
    expect(isSaturatedWithEnamel).toBe(false);
  });
});

// morenoMargolis1988, abstract read: mean plaque fluid at rest is saturated with brushite, and far above with enamel, at pH 5.69. All of its
// calcium is taken as free here, so the index of brushite is an upper bound: between 0 and 1.
test('plaque fluid at rest', () => {
  const plaque: Totals = { calcium: 7.07, phosphate: 23.2, fluoride: 0.004, sodium: 18.6, potassium: 85.1, magnesium: 3.9, chloride: 42.8 };
  const { saturationIndex } = saturation(plaque, 5.69);
  expect(saturationIndex.brushite ?? -1).toBeGreaterThan(0);
  expect(saturationIndex.brushite ?? 2).toBeLessThan(1);
  expect(saturationIndex.enamel ?? 0).toBeGreaterThan(5);
});

// larsenPearce2003, abstract read: calcium carbonate only above pH 7.3, at 25 mmol/L carbonate. Known shortfall: with these constants it is
// saturated from about 6.85, 0.4 to 0.5 pH below, within the spread of the constants of carbonate. Held so that a change is seen.
test('stimulated saliva is saturated with calcite somewhat earlier than published', () => {
  const crossing = criticalPh(stimulated, 'calcite') ?? 0;
  expect(crossing).toBeGreaterThan(7.3 - 0.6);
  expect(crossing).toBeLessThan(7.3);
});

// dawes2003, abstract read: critical pH is no constant, it falls as calcium and phosphate rise; from memory: about 5.5 to 6.5 by person.
test('critical pH falls as calcium and phosphate rise', () => {
  const at = (calcium: number, phosphate: number) => criticalPh({ ...resting, calcium, phosphate }, 'enamel') ?? Number.NaN;
  expect(at(2, 5)).toBeLessThan(at(1, 5));
  expect(at(1, 7)).toBeLessThan(at(1, 3));
  expect(at(0.5, 2)).toBeGreaterThan(5.5);
});
