import { constants37 } from './constants37.ts';
import { newLogs, saturationIndex, setLogs, solidRows } from './saturationIndex.ts';
import { fluidSolver, type Speciation, speciate } from './speciate.ts';
import { type ChemistryOptions, MINERALS, type Mineral, type Totals } from './types.ts';

export type PerMineral<T> = Readonly<Record<Mineral, T>>;

export interface Saturation extends Speciation {
  /** log10(ion activity product / solubility product), apatites on the formula with 5 calcium; null where an ion is absent. */
  readonly saturationIndex: PerMineral<number | null>;
  /** 10^(index / number of ions): 1 = saturated, below 1 the mineral dissolves; null where an ion is absent. */
  readonly degreeOfSaturation: PerMineral<number | null>;
}

/**
 * How far a fluid is saturated with eight minerals, 37 °C.
 * @param totals  mmol per kg of water, 0..1000 each, absent = 0
 * @param pH      2..12
 * @throws RangeError as `speciate`
 * @accuracy agrees with PHREEQC on 34 fluids to 0.0001 in the index
 * @source phreeqc3, morenoMargolis1988
 */
export function saturation(totals: Totals, pH: number, options: ChemistryOptions = {}): Saturation {
  const speciation = speciate(totals, pH, options);
  const constants = options.constants ?? constants37;
  const logs = newLogs();
  setLogs(logs, fluidSolver(options), pH, constants);
  const index = ofEach((_, place) => {
    const value = saturationIndex(logs, solidRows(constants), place);
    return Number.isFinite(value) ? value : null;
  });
  const degree = ofEach((mineral) => {
    const value = index[mineral];
    return value === null ? null : 10 ** (value / constants.solids[mineral].ions);
  });
  return { ...speciation, saturationIndex: index, degreeOfSaturation: degree };
}

const ofEach = <T>(value: (mineral: Mineral, place: number) => T): PerMineral<T> =>
  Object.fromEntries(MINERALS.map((mineral, place) => [mineral, value(mineral, place)])) as Record<Mineral, T>;
