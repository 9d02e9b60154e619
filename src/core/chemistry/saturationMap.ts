// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { criticalPh } from './criticalPh.ts';
import { newBatchResult, saturationBatch } from './saturationBatch.ts';
import { isTotal, totalsRow } from './speciate.ts';
import { type ChemistryOptions, COMPONENTS, MAX_TOTAL_MMOL_PER_KG, MINERALS, type Mineral, type Totals } from './types.ts';

/**
 * What happens to the two apatites at one point. `window`: hydroxyapatite dissolves while fluorapatite forms, as below the surface of an
 * early lesion; `dissolves`: both, as in erosion; `grows`: neither dissolves; `odd`: fluorapatite dissolves and hydroxyapatite does not
 * (alkaline and nearly without fluoride); `refused`: too strong.
 */
export const MAP_REGIONS = ['dissolves', 'window', 'grows', 'odd', 'refused'] as const;
export type MapRegion = (typeof MAP_REGIONS)[number];

export interface SaturationMap {
  readonly pHs: readonly number[];
  /** Calcium times phosphate, (mmol/kg)². */
  readonly products: readonly number[];
  /** One row of pHs for each product. */
  readonly hydroxyapatiteIndex: Float64Array;
  readonly fluorapatiteIndex: Float64Array;
  /** Place in MAP_REGIONS, row by row. */
  readonly region: Uint8Array;
  /** The edges of the window for each product; null where there is none, or the fluid is too strong on the way to it. */
  readonly edges: readonly { readonly fluorapatite: number | null; readonly hydroxyapatite: number | null }[];
}

export interface SaturationMapInput {
  /** Its calcium and phosphate give the ratio that is kept, the rest is kept as it is; both must be above 0. */
  readonly fluid: Totals;
  /** 2..12, 1 to 1000 of them. */
  readonly pHs: readonly number[];
  /** (mmol/kg)², above 0, 1 to 1000 of them. */
  readonly products: readonly number[];
}

/**
 * pH against calcium times phosphate: where hydroxyapatite and fluorapatite dissolve and form. Calcium and phosphate change together, their
 * ratio kept; fluoride and the background stay.
 * @throws RangeError naming `fluid.<component>`, `pHs` or `products`, or as `saturation`
 * @source larsen1975
 */
export function saturationMap({ fluid, pHs, products }: SaturationMapInput, options: ChemistryOptions = {}): SaturationMap {
  const ratio = ratioOf(fluid);
  requireCount(pHs, 'pHs');
  requireCount(products, 'products');
  const fluids = products.map((product, i) => {
    if (!(product > 0 && product < Number.POSITIVE_INFINITY)) throw new RangeError(`products must be above 0: ${product}`);
    const [calcium, phosphate] = [Math.sqrt(product * ratio), Math.sqrt(product / ratio)];
    if (!(isTotal(calcium) && isTotal(phosphate))) {
      throw new RangeError(`products.${i} must give at most ${MAX_TOTAL_MMOL_PER_KG} mmol/kg calcium and phosphate: ${product}`);
    }
    return { ...fluid, calcium, phosphate };
  });
  const size = pHs.length * products.length;
  const batch = { pH: new Float64Array(size), totalsMmolPerKg: new Float64Array(size * COMPONENTS.length) };
  for (const [row, totals] of fluids.entries()) {
    const amounts = totalsRow(totals);
    for (const [column, pH] of pHs.entries()) {
      batch.pH[row * pHs.length + column] = pH;
      batch.totalsMmolPerKg.set(amounts, (row * pHs.length + column) * COMPONENTS.length);
    }
  }
  const { saturationIndex } = saturationBatch(batch, newBatchResult(size), options);
  const indexOf = (mineral: 'hydroxyapatite' | 'fluorapatite') =>
    Float64Array.from({ length: size }, (_, i) => saturationIndex[i * MINERALS.length + MINERALS.indexOf(mineral)]!);
  const hydroxyapatiteIndex = indexOf('hydroxyapatite');
  const fluorapatiteIndex = indexOf('fluorapatite');
  return {
    pHs,
    products,
    hydroxyapatiteIndex,
    fluorapatiteIndex,
    region: Uint8Array.from(hydroxyapatiteIndex, (hydroxy, i) => MAP_REGIONS.indexOf(regionOf(hydroxy, fluorapatiteIndex[i]!))),
    edges: fluids.map((totals) => ({
      fluorapatite: edgeOf(totals, 'fluorapatite', options),
      hydroxyapatite: edgeOf(totals, 'hydroxyapatite', options),
    })),
  };
}

/** One fluid that is too strong leaves the rest of the map as it is; its points say refused. The totals are checked by then. */
function edgeOf(totals: Totals, mineral: Mineral, options: ChemistryOptions): number | null {
  try {
    return criticalPh(totals, mineral, options);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function regionOf(hydroxyapatite: number, fluorapatite: number): MapRegion {
  if (Number.isNaN(hydroxyapatite)) return 'refused';
  if (hydroxyapatite < 0) return fluorapatite < 0 ? 'dissolves' : 'window';
  return fluorapatite < 0 ? 'odd' : 'grows';
}

function ratioOf({ calcium = 0, phosphate = 0 }: Totals): number {
  if (!(calcium > 0)) throw new RangeError(`fluid.calcium must be above 0: ${calcium}`);
  if (!(phosphate > 0)) throw new RangeError(`fluid.phosphate must be above 0: ${phosphate}`);
  return calcium / phosphate;
}

function requireCount(values: readonly number[], name: string): void {
  if (!(values.length >= 1 && values.length <= 1000)) throw new RangeError(`${name} must hold 1 to 1000 numbers: ${values.length}`);
}
