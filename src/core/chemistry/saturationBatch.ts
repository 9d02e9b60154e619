// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { constants37 } from './constants37.ts';
import { newLogs, saturationIndex, setLogs, solidRows } from './saturationIndex.ts';
import { fluidSolver, isPh, isTotal, requirePh, requireTotal } from './speciate.ts';
import { type ChemistryOptions, COMPONENTS, GOOD_IONIC_STRENGTH, MINERALS } from './types.ts';

export interface FluidBatch {
  /** One for each fluid, 2..12. */
  readonly pH: Float64Array;
  /** Ten for each fluid, in the order of COMPONENTS, mmol per kg of water, 0..1000. */
  readonly totalsMmolPerKg: Float64Array;
}

export const FLUID_STATE = { good: 0, strong: 1, refused: 2 } as const;

export interface BatchResult {
  /** FLUID_STATE: strong above 0.3 mol/kg; refused above 0.5, and then every number of that fluid is NaN. */
  readonly state: Uint8Array;
  readonly ionicStrength: Float64Array;
  readonly waterActivity: Float64Array;
  readonly chargeImbalanceMmolPerKg: Float64Array;
  /** Four for each fluid: activity of free calcium, phosphate, fluoride, carbonate. */
  readonly activity: Float64Array;
  /** Eight for each fluid, in the order of MINERALS; -Infinity where an ion is absent. */
  readonly saturationIndex: Float64Array;
  /** How often a fluid was solved at one ionic strength, and steps of Newton, of the whole batch. */
  strengthSteps: number;
  calciumSteps: number;
}

/** Room for a batch; keep it to use it again. */
export function newBatchResult(fluids: number): BatchResult {
  return {
    state: new Uint8Array(fluids),
    ionicStrength: new Float64Array(fluids),
    waterActivity: new Float64Array(fluids),
    chargeImbalanceMmolPerKg: new Float64Array(fluids),
    activity: new Float64Array(4 * fluids),
    saturationIndex: new Float64Array(MINERALS.length * fluids),
    strengthSteps: 0,
    calciumSteps: 0,
  };
}

export interface BatchOptions extends ChemistryOptions {
  /** Begin each fluid where `into` says that it ended before: for fluids that have changed a little since. */
  readonly warm?: boolean | undefined;
}

/**
 * `saturation` of many fluids, without making anything new for any of them.
 * @throws RangeError naming `pH.<row>` or `totalsMmolPerKg.<row>.<component>` outside its range, or lengths that do not fit. A fluid that is
 *         too strong is marked in `state`, and the batch goes on.
 * @accuracy as `saturation`
 */
export function saturationBatch({ pH, totalsMmolPerKg }: FluidBatch, into: BatchResult, options: BatchOptions = {}): BatchResult {
  const fluids = pH.length;
  requireFit(fluids, totalsMmolPerKg, into);
  checkRows(pH, totalsMmolPerKg);
  const solver = fluidSolver(options);
  const constants = options.constants ?? constants37;
  const rows = solidRows(constants);
  const logs = newLogs();
  into.strengthSteps = 0;
  into.calciumSteps = 0;
  for (let fluid = 0; fluid < fluids; fluid += 1) {
    solver.load(totalsMmolPerKg, fluid * COMPONENTS.length);
    const start = options.warm === true ? into.ionicStrength[fluid]! : 0;
    const isSolved = solver.solve(pH[fluid]!, start, options.warm === true ? into.activity[4 * fluid]! : 0);
    into.strengthSteps += solver.strengthSteps;
    into.calciumSteps += solver.calciumSteps;
    if (!isSolved) {
      refuse(into, fluid);
      continue;
    }
    setLogs(logs, solver, pH[fluid]!, constants);
    into.state[fluid] = solver.ionicStrength > GOOD_IONIC_STRENGTH ? FLUID_STATE.strong : FLUID_STATE.good;
    into.ionicStrength[fluid] = solver.ionicStrength;
    into.waterActivity[fluid] = solver.waterActivity;
    into.chargeImbalanceMmolPerKg[fluid] = solver.chargeImbalance * 1000;
    into.activity[4 * fluid] = solver.ca;
    into.activity[4 * fluid + 1] = solver.po4;
    into.activity[4 * fluid + 2] = solver.f;
    into.activity[4 * fluid + 3] = solver.co3;
    for (let place = 0; place < MINERALS.length; place += 1) {
      into.saturationIndex[MINERALS.length * fluid + place] = saturationIndex(logs, rows, place);
    }
  }
  return into;
}

function refuse(into: BatchResult, fluid: number): void {
  into.state[fluid] = FLUID_STATE.refused;
  into.ionicStrength[fluid] = Number.NaN;
  into.waterActivity[fluid] = Number.NaN;
  into.chargeImbalanceMmolPerKg[fluid] = Number.NaN;
  into.activity.fill(Number.NaN, 4 * fluid, 4 * fluid + 4);
  into.saturationIndex.fill(Number.NaN, MINERALS.length * fluid, MINERALS.length * (fluid + 1));
}

function requireFit(fluids: number, totals: Float64Array, into: BatchResult): void {
  if (totals.length !== fluids * COMPONENTS.length) {
    throw new RangeError(`totalsMmolPerKg must hold ${COMPONENTS.length} numbers for each of ${fluids} fluids: ${totals.length}`);
  }
  if (into.state.length !== fluids) throw new RangeError(`into must have room for ${fluids} fluids: ${into.state.length}`);
}

function checkRows(pH: Float64Array, totals: Float64Array): void {
  for (let fluid = 0; fluid < pH.length; fluid += 1) if (!isPh(pH[fluid]!)) requirePh(pH[fluid]!, `pH.${fluid}`);
  for (let at = 0; at < totals.length; at += 1) {
    // The name is made only for what is refused.
    if (!isTotal(totals[at]!)) requireTotal(totals[at]!, nameOf(at));
  }
}

const nameOf = (at: number): string => `totalsMmolPerKg.${Math.floor(at / COMPONENTS.length)}.${COMPONENTS[at % COMPONENTS.length]}`;
