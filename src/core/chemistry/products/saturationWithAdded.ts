import { type Saturation, saturation } from '../saturation.ts';
import { type ChemistryOptions, COMPONENTS, type Totals } from '../types.ts';

export interface SaturationWithAdded {
  readonly before: Saturation;
  readonly after: Saturation;
  /** After: does enamel not dissolve, by the composition given? null where calcium or phosphate is absent. */
  readonly isSaturatedWithEnamel: boolean | null;
}

/**
 * A drink or a remineralising product before and after calcium, phosphate or fluoride is added, pH held as it is measured in the ready
 * product. Citrate binds calcium and is not in the constants: with citric acid the true saturation is lower.
 * @param added  mmol per kg of water on top of `totals`
 * @throws RangeError as `saturation`; `added.<component>` below 0
 * @source larsenNyvad1999
 */
export function saturationWithAdded(totals: Totals, added: Totals, pH: number, options: ChemistryOptions = {}): SaturationWithAdded {
  for (const ion of COMPONENTS) {
    const amount = added[ion] ?? 0;
    if (!(amount >= 0)) throw new RangeError(`added.${ion} must be 0 or more: ${amount}`);
  }
  const sum = Object.fromEntries(COMPONENTS.map((ion) => [ion, (totals[ion] ?? 0) + (added[ion] ?? 0)]));
  const after = saturation(sum, pH, options);
  const index = after.saturationIndex.enamel;
  return { before: saturation(totals, pH, options), after, isSaturatedWithEnamel: index === null ? null : index >= 0 };
}
