import { criticalPh } from './criticalPh.ts';
import { type FluidCriticalPh, fluidCriticalPh } from './fluidCriticalPh.ts';
import type { MeasuredIons, OralFluid } from './oralFluid.ts';
import { saturationMap } from './saturationMap.ts';
import { type ChemistryOptions, COMPONENTS, type Totals } from './types.ts';

/** Where three minerals are just saturated at one calcium times phosphate; null where there is no such pH. */
export interface MapRow {
  /** (mmol/L)². */
  readonly product: number;
  readonly hydroxyapatite: number | null;
  readonly fluorapatite: number | null;
  readonly enamel: number | null;
}

export interface FluidMap {
  readonly fluid: OralFluid;
  /** Of enamel, with its range. */
  readonly critical: FluidCriticalPh;
  /** At the fluid's own calcium times phosphate. */
  readonly here: MapRow;
  /** As people vary in what was not measured; null where both were. */
  readonly productRange: { readonly low: number; readonly high: number } | null;
  /** In the order of the products asked for. */
  readonly rows: readonly MapRow[];
}

/**
 * One fluid in the saturation map: where it stands, how far people spread about it, and the lines of the map for its ratio of calcium to
 * phosphate, its fluoride and its background. What was not measured is taken as typical.
 * @param measured  mmol/L; calcium and phosphate above 0 where given
 * @param products  calcium times phosphate, (mmol/L)², above 0, 1 to 1000 of them
 * @throws RangeError as `fluidCriticalPh` and `saturationMap`
 * @source larsen1975, dawes2003
 */
export function fluidMap(fluid: OralFluid, measured: MeasuredIons, products: readonly number[], options: ChemistryOptions = {}): FluidMap {
  const totals: Totals = Object.fromEntries(COMPONENTS.map((ion) => [ion, measured[ion] ?? fluid.ions[ion]?.typical ?? 0]));
  const { calcium = 0, phosphate = 0 } = totals;
  const rowsAt = (asked: readonly number[]) => listRows(totals, asked, options);
  const [here] = rowsAt([calcium * phosphate]);
  if (here === undefined) throw new RangeError('products must hold 1 to 1000 numbers: 0');
  return {
    fluid,
    critical: fluidCriticalPh(fluid, measured, options),
    here,
    productRange: productRangeOf(fluid, measured),
    rows: rowsAt(products),
  };
}

function listRows(totals: Totals, products: readonly number[], options: ChemistryOptions): readonly MapRow[] {
  const { calcium = 0, phosphate = 0 } = totals;
  // Only the edges are wanted; they do not depend on the pH of the grid.
  const { edges } = saturationMap({ fluid: totals, pHs: [7], products }, options);
  return products.map((product, i) => {
    const { hydroxyapatite = null, fluorapatite = null } = edges[i] ?? {};
    const factor = Math.sqrt(product / (calcium * phosphate));
    const enamel =
      hydroxyapatite === null
        ? null
        : criticalPh({ ...totals, calcium: calcium * factor, phosphate: phosphate * factor }, 'enamel', options);
    return { product, hydroxyapatite, fluorapatite, enamel };
  });
}

function productRangeOf(fluid: OralFluid, measured: MeasuredIons): FluidMap['productRange'] {
  if (measured.calcium !== undefined && measured.phosphate !== undefined) return null;
  const endOf = (end: 'low' | 'high') =>
    (measured.calcium ?? fluid.ions.calcium?.[end] ?? 0) * (measured.phosphate ?? fluid.ions.phosphate?.[end] ?? 0);
  return { low: endOf('low'), high: endOf('high') };
}
