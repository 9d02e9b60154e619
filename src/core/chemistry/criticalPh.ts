import { constants37 } from './constants37.ts';
import { newLogs, saturationIndex, setLogs, solidRows } from './saturationIndex.ts';
import { fluidSolver, tooStrong, totalsRow } from './speciate.ts';
import { type ChemistryOptions, MINERALS, type Mineral, PH_RANGE, type Totals } from './types.ts';

const SCAN_STEP = 0.5;
const SAME_PH = 1e-10;

/**
 * The pH at which the fluid is just saturated with a mineral: totals held, only the pH varied; the lowest such pH where the mineral dissolves
 * below and does not above.
 * Looks upwards from pH 2 in steps of 0.5, then halves the step that holds it, by false position where that is quicker.
 * @param totals  mmol per kg of water, 0..1000 each, absent = 0
 * @returns pH 2..12, or null where the index does not pass 0 in that range or an ion of the mineral is absent
 * @throws RangeError as `speciate`; the ionic strength counts only as far up as the search goes
 * @accuracy agrees with PHREEQC on 12 fluids to 0.0005; solved to 1e-10
 * @source dawes2003, phreeqc3
 */
export function criticalPh(totals: Totals, mineral: Mineral, options: ChemistryOptions = {}): number | null {
  const indexAt = indexByPh(totals, mineral, options);
  let low: number = PH_RANGE.from;
  let indexLow = indexAt(low);
  // Without one of its ions the index is -Infinity at every pH.
  if (!(indexLow < 0 && indexLow > Number.NEGATIVE_INFINITY)) return null;
  for (let high = low + SCAN_STEP; high <= PH_RANGE.to; high += SCAN_STEP) {
    const indexHigh = indexAt(high);
    if (indexHigh >= 0) return findCrossing(indexAt, { low, indexLow, high, indexHigh });
    low = high;
    indexLow = indexHigh;
  }
  return null;
}

/** The index as a function of pH; each call begins where the last one ended. */
function indexByPh(totals: Totals, mineral: Mineral, options: ChemistryOptions): (pH: number) => number {
  const solver = fluidSolver(options);
  const constants = options.constants ?? constants37;
  const rows = solidRows(constants);
  const place = MINERALS.indexOf(mineral);
  const logs = newLogs();
  solver.load(totalsRow(totals), 0);
  let [strength, ca] = [0, 0];
  return (pH) => {
    if (!solver.solve(pH, strength, ca)) throw tooStrong(pH);
    strength = solver.ionicStrength;
    ca = solver.ca;
    setLogs(logs, solver, pH, constants);
    return saturationIndex(logs, rows, place);
  };
}

interface Bracket {
  readonly low: number;
  readonly indexLow: number;
  readonly high: number;
  readonly indexHigh: number;
}

/** False position after Illinois: the end that stays twice counts half. Every fourth step halves the bracket, so it always ends. */
function findCrossing(indexAt: (pH: number) => number, bracket: Bracket): number {
  let { low, indexLow, high, indexHigh } = bracket;
  let stayed: 'low' | 'high' | undefined;
  for (let step = 1; high - low > SAME_PH; step += 1) {
    const between = step % 4 === 0 ? (low + high) / 2 : (low * indexHigh - high * indexLow) / (indexHigh - indexLow);
    const pH = Math.min(Math.max(between, low + SAME_PH / 2), high - SAME_PH / 2);
    const index = indexAt(pH);
    if (index < 0) {
      [low, indexLow] = [pH, index];
      if (stayed === 'high') indexHigh /= 2;
      stayed = 'high';
    } else {
      [high, indexHigh] = [pH, index];
      if (stayed === 'low') indexLow /= 2;
      stayed = 'low';
    }
  }
  return (low + high) / 2;
}
