import { keepByTable } from '../keep/keepByTable.ts';
import { constants37 } from './constants37.ts';
import { FluidSolver } from './fluidSolver.ts';
import {
  type ChemistryConstants,
  type ChemistryOptions,
  COMPONENTS,
  type Component,
  GOOD_IONIC_STRENGTH,
  MAX_IONIC_STRENGTH,
  MAX_TOTAL_MMOL_PER_KG,
  PH_RANGE,
  type SpeciesName,
  type Totals,
} from './types.ts';

export type FreeIon = Exclude<Component, 'chloride'>;

export interface Speciation {
  readonly pH: number;
  /** mol per kg of water, all ions and pairs counted. */
  readonly ionicStrength: number;
  /** Above 0.3 mol/kg the activities are less sure. */
  readonly isStrong: boolean;
  readonly waterActivity: number;
  /** log10 of the activity of the free ion; null where the fluid holds none of it. */
  readonly logActivity: Readonly<Record<FreeIon, number | null>> & { readonly hydroxide: number };
  /** Cations less anions. The fluid is taken as given: nothing is added to make it neutral. */
  readonly chargeImbalanceMmolPerKg: number;
}

const solverOf = {
  calcium: keepByTable((constants: ChemistryConstants) => new FluidSolver(constants, { withBackgroundPairs: false })),
  'with-background': keepByTable((constants: ChemistryConstants) => new FluidSolver(constants, { withBackgroundPairs: true })),
};

/** One solver for each set of constants; it keeps the last fluid, so use it up before the next call. */
export const fluidSolver = ({ pairs = 'calcium', constants = constants37 }: ChemistryOptions): FluidSolver => solverOf[pairs](constants);

/**
 * Free ions, ion pairs and ionic strength of an oral fluid, drink or rinse at 37 °C: mass balances with Davies activities.
 * @param totals  mmol per kg of water of each component, 0..1000, absent = 0
 * @param pH      -log10 of the activity of protons, 2..12
 * @throws RangeError naming `totalsMmolPerKg.<component>` or `pH` outside its range, or `totalsMmolPerKg` where the ionic strength is above
 *         0.5 mol/kg
 * @accuracy agrees with PHREEQC on 34 fluids (pH 3.5 to 11): indices to 0.001, ionic strength to 0.01 % (test/reference/chemistry)
 * @source davies1962, phreeqc3
 */
export function speciate(totals: Totals, pH: number, options: ChemistryOptions = {}): Speciation {
  const solver = fluidSolver(options);
  solver.load(totalsRow(totals), 0);
  if (!solver.solve(requirePh(pH))) throw tooStrong(pH);
  return {
    pH,
    ionicStrength: solver.ionicStrength,
    isStrong: solver.ionicStrength > GOOD_IONIC_STRENGTH,
    waterActivity: solver.waterActivity,
    logActivity: logActivities(solver, pH, options.constants ?? constants37),
    chargeImbalanceMmolPerKg: solver.chargeImbalance * 1000,
  };
}

function logActivities(solver: FluidSolver, pH: number, { species }: ChemistryConstants): Speciation['logActivity'] {
  return {
    calcium: logOrNull(solver.ca),
    phosphate: logOrNull(solver.po4),
    fluoride: logOrNull(solver.f),
    carbonate: logOrNull(solver.co3),
    lactate: logOrNull(solver.lac),
    acetate: logOrNull(solver.ace),
    magnesium: logOrNull(solver.mg),
    sodium: logOrNull(solver.na),
    potassium: logOrNull(solver.k),
    hydroxide: species['OH-'].logK + Math.log10(solver.waterActivity) + pH,
  };
}

const logOrNull = (activity: number): number | null => (activity > 0 ? Math.log10(activity) : null);

/** One row of a batch. @throws RangeError naming the component */
export function totalsRow(totals: Totals): Float64Array {
  for (const name of Object.keys(totals)) if (!isComponent(name)) throw new RangeError(`totalsMmolPerKg.${name} is not a component`);
  return Float64Array.from(COMPONENTS, (name) => requireTotal(totals[name] ?? 0, `totalsMmolPerKg.${name}`));
}

const isComponent = (name: string): boolean => (COMPONENTS as readonly string[]).includes(name);

export const isTotal = (value: number): boolean => value >= 0 && value <= MAX_TOTAL_MMOL_PER_KG;
export const isPh = (pH: number): boolean => pH >= PH_RANGE.from && pH <= PH_RANGE.to;

export function requireTotal(value: number, name: string): number {
  if (!isTotal(value)) {
    throw new RangeError(`${name} must be 0..${MAX_TOTAL_MMOL_PER_KG} mmol/kg: ${value}`);
  }
  return value;
}

export function requirePh(pH: number, name = 'pH'): number {
  if (!isPh(pH)) throw new RangeError(`${name} must be ${PH_RANGE.from}..${PH_RANGE.to}: ${pH}`);
  return pH;
}

/** @returns the error to throw */
export const tooStrong = (pH: number): RangeError =>
  new RangeError(`totalsMmolPerKg must give an ionic strength of at most ${MAX_IONIC_STRENGTH} mol/kg; at pH ${pH} they give more`);

/** Amounts of each species, mmol per kg, written from the table of species alone and not from the solver's own sums. */
export function listSpecies(
  { pH, ionicStrength, waterActivity, logActivity }: Speciation,
  { pairs = 'calcium', constants = constants37 }: ChemistryOptions = {},
): Map<SpeciesName, number> {
  const root = Math.sqrt(ionicStrength);
  const perCharge = constants.debyeHuckelA * (root / (1 + root) - 0.3 * ionicStrength);
  const amounts = new Map<SpeciesName, number>();
  for (const [name, { charge, of, protons, water, logK }] of Object.entries(constants.species) as [
    SpeciesName,
    (typeof constants.species)[SpeciesName],
  ][]) {
    const isBackground = of.magnesium !== undefined || of.sodium !== undefined || of.potassium !== undefined;
    if (isBackground && pairs === 'calcium') continue;
    let log = logK - protons * pH + water * Math.log10(waterActivity) + perCharge * charge ** 2;
    for (const [part, count] of Object.entries(of) as [FreeIon, number][]) log += count * (logActivity[part] ?? Number.NEGATIVE_INFINITY);
    amounts.set(name, 1000 * 10 ** log);
  }
  return amounts;
}
