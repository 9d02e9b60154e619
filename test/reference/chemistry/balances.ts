import { constants37 } from '../../../src/core/chemistry/constants37.ts';
import { type FreeIon, listSpecies, type Speciation } from '../../../src/core/chemistry/speciate.ts';
import type { ChemistryOptions, Component, Totals } from '../../../src/core/chemistry/types.ts';

const CHARGE: Readonly<Record<Component, number>> = {
  calcium: 2,
  phosphate: -3,
  fluoride: -1,
  carbonate: -2,
  lactate: -1,
  acetate: -1,
  magnesium: 2,
  sodium: 1,
  potassium: 1,
  chloride: -1,
};

export interface Balances {
  /** Found / given - 1, of each component that the fluid holds but chloride, which binds nothing. */
  readonly amounts: Readonly<Partial<Record<Component, number>>>;
  /** mmol/kg of charge, cations less anions. */
  readonly charge: number;
  /** mol/kg */
  readonly ionicStrength: number;
}

/** Sums over all species, written from the table of species and not from the solver's own sums. */
export function addUp(totals: Totals, solved: Speciation, options: ChemistryOptions = {}): Balances {
  const root = Math.sqrt(solved.ionicStrength);
  const perCharge = constants37.debyeHuckelA * (root / (1 + root) - 0.3 * solved.ionicStrength);
  const chloride = totals.chloride ?? 0;
  const protons = 1000 * 10 ** (perCharge - solved.pH);
  const found = new Map<Component, number>();
  let [charge, twice] = [protons - chloride, protons + chloride];
  for (const ion of Object.keys(totals).filter((name): name is FreeIon => name !== 'chloride')) {
    const log = solved.logActivity[ion];
    const free = log === null ? 0 : 1000 * 10 ** (log + perCharge * CHARGE[ion] ** 2);
    found.set(ion, free);
    charge += CHARGE[ion] * free;
    twice += CHARGE[ion] ** 2 * free;
  }
  for (const [name, amount] of listSpecies(solved, options)) {
    const { charge: z, of } = constants37.species[name];
    charge += z * amount;
    twice += z * z * amount;
    for (const [ion, count] of Object.entries(of) as [Component, number][]) found.set(ion, (found.get(ion) ?? 0) + count * amount);
  }
  const given = [...found].filter(([ion]) => (totals[ion] ?? 0) > 0);
  return {
    amounts: Object.fromEntries(given.map(([ion, amount]) => [ion, amount / (totals[ion] ?? Number.NaN) - 1])),
    charge,
    ionicStrength: twice / 2000,
  };
}
