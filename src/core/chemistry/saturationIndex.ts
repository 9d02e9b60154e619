// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { keepByTable } from '../keep/keepByTable.ts';
import type { FluidSolver } from './fluidSolver.ts';
import { type ChemistryConstants, MINERALS } from './types.ts';

/** log10 of the activities that a solid is made of: calcium, phosphate, fluoride, carbonate, hydroxide, protons, water. */
export const newLogs = () => new Float64Array(7);

/** How often each of them stands in each mineral, then log Ksp: eight numbers a mineral, in the order of MINERALS. */
export const solidRows = keepByTable(({ solids }: ChemistryConstants) =>
  Float64Array.from(
    MINERALS.flatMap((mineral) => {
      const { of, hydroxide, protons, water, logKsp } = solids[mineral];
      return [of.calcium ?? 0, of.phosphate ?? 0, of.fluoride ?? 0, of.carbonate ?? 0, hydroxide, protons, water, logKsp];
    }),
  ),
);

/** Of the fluid that the solver has solved last, at this pH. -Infinity where an ion is absent. */
export function setLogs(logs: Float64Array, solver: FluidSolver, pH: number, { species }: ChemistryConstants): void {
  const logWater = Math.log10(solver.waterActivity);
  logs[0] = Math.log10(solver.ca);
  logs[1] = Math.log10(solver.po4);
  logs[2] = Math.log10(solver.f);
  logs[3] = Math.log10(solver.co3);
  logs[4] = species['OH-'].logK + logWater + pH;
  logs[5] = -pH;
  logs[6] = logWater;
}

/**
 * log10(ion activity product / solubility product) of one mineral; -Infinity where an ion is absent.
 * @param place  of the mineral in MINERALS
 */
export function saturationIndex(logs: Float64Array, rows: Float64Array, place: number): number {
  const at = place * 8;
  let index = -rows[at + 7]!;
  for (let part = 0; part < 7; part += 1) {
    const count = rows[at + part]!;
    if (count !== 0) index += count * logs[part]!;
  }
  return index;
}
