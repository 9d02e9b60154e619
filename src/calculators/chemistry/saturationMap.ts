import { z } from 'zod';
import { saturationMap as computeSaturationMap, MAP_REGIONS } from '../../core/chemistry/saturationMap.ts';
import { MAX_TOTAL_MMOL_PER_KG } from '../../core/chemistry/types.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';
import { pairs, pH, totalsMmolPerKg } from './chemistryFields.ts';

const amount = z.number().positive({ error: 'must be above 0: the map keeps the ratio of the two' }).max(MAX_TOTAL_MMOL_PER_KG);

/** What a server works out while others wait. */
const MOST_POINTS = 20_000;

const input = z
  .strictObject({
    totalsMmolPerKg: totalsMmolPerKg
      .extend({ calcium: amount, phosphate: amount })
      .describe('mmol per kg of water; the ratio of calcium to phosphate is kept, the rest stays as it is; absent = 0'),
    pHs: z.array(pH).min(1).max(1000),
    products: z.array(z.number().positive().max(1e6)).min(1).max(1000).describe('calcium times phosphate, (mmol/kg)²'),
    pairs,
  })
  .refine(({ pHs, products }) => pHs.length * products.length <= MOST_POINTS, {
    error: `times the number of products must be at most ${MOST_POINTS}`,
    path: ['pHs'],
  });

const rows = z.array(z.array(nullableNumber)).describe('one row for each product, one number for each pH; null where refused');
const output = z.strictObject({
  hydroxyapatiteIndex: rows,
  fluorapatiteIndex: rows,
  region: z
    .array(z.array(z.enum(MAP_REGIONS)))
    .describe(
      'window: hydroxyapatite dissolves while fluorapatite forms; dissolves: both do; grows: neither; odd: fluorapatite alone does; refused: too strong',
    ),
  edges: z
    .array(z.strictObject({ product: z.number(), hydroxyapatitePh: nullableNumber, fluorapatitePh: nullableNumber }))
    .describe('pH at which each apatite is just saturated; null where there is none, or the fluid is too strong'),
});

export const saturationMap: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'saturation-map',
  summary: 'Where hydroxyapatite and fluorapatite dissolve and form: pH against calcium times phosphate',
  input,
  output,
  run({ totalsMmolPerKg: fluid, pHs, products, pairs: set }) {
    const map = computeSaturationMap({ fluid, pHs, products }, { pairs: set });
    const rowsOf = <T>(valueAt: (i: number) => T): T[][] =>
      products.map((_, row) => pHs.map((_pH, column) => valueAt(row * pHs.length + column)));
    return {
      hydroxyapatiteIndex: rowsOf((i) => finiteOrNull(map.hydroxyapatiteIndex[i])),
      fluorapatiteIndex: rowsOf((i) => finiteOrNull(map.fluorapatiteIndex[i])),
      region: rowsOf((i) => MAP_REGIONS[map.region[i] ?? 0] ?? 'refused'),
      edges: map.edges.map(({ hydroxyapatite, fluorapatite }, i) => ({
        product: products[i] ?? 0,
        hydroxyapatitePh: hydroxyapatite,
        fluorapatitePh: fluorapatite,
      })),
    };
  },
};

/** Without fluoride the index of fluorapatite is minus infinity. */
const finiteOrNull = (value: number | undefined): number | null => (value !== undefined && Number.isFinite(value) ? value : null);
