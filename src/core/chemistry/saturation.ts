import { constants37 } from './constants37.ts';
import type { FluidSolver } from './fluidSolver.ts';
import { fluidSolver, type Speciation, speciate } from './speciate.ts';
import { type ChemistryConstants, type ChemistryOptions, MINERALS, type Mineral, type Solid, type Totals } from './types.ts';

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
  const index = ofEach((mineral) => {
    const value = saturationIndex(fluidSolver(options), pH, constants.solids[mineral], constants);
    return Number.isFinite(value) ? value : null;
  });
  const degree = ofEach((mineral) => {
    const value = index[mineral];
    return value === null ? null : 10 ** (value / constants.solids[mineral].ions);
  });
  return { ...speciation, saturationIndex: index, degreeOfSaturation: degree };
}

const ofEach = <T>(value: (mineral: Mineral) => T): PerMineral<T> =>
  Object.fromEntries(MINERALS.map((mineral) => [mineral, value(mineral)])) as Record<Mineral, T>;

/** Of the fluid that the solver has solved last, at this pH. -Infinity where an ion is absent. */
export function saturationIndex(solver: FluidSolver, pH: number, solid: Solid, { species }: ChemistryConstants): number {
  const logWater = Math.log10(solver.waterActivity);
  const { calcium = 0, phosphate = 0, fluoride = 0, carbonate = 0 } = solid.of;
  return (
    times(calcium, solver.ca) +
    times(phosphate, solver.po4) +
    times(fluoride, solver.f) +
    times(carbonate, solver.co3) +
    solid.hydroxide * (species['OH-'].logK + logWater + pH) -
    solid.protons * pH +
    solid.water * logWater -
    solid.logKsp
  );
}

const times = (count: number, activity: number): number => (count === 0 ? 0 : count * Math.log10(activity));
