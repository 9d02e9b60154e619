// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import type { PlaqueModel } from './buildModel.ts';
import { ACETATE, AMMONIA, CARBONATE, LACTATE, PH, PHOSPHATE, PROTONS } from './layout.ts';
import type { ProtonCell, Workspace } from './workspace.ts';

/**
 * Newton stops when no ln activity moved more than this. What it leaves is of the order of its square, which the extrapolation takes away
 * as it does the error of the step; the balance closes whatever it is.
 */
const ENOUGH_LN = 0.1;
const LONGEST_LN = 1.2;
const MOST_ROUNDS = 40;
const LOCAL_ENOUGH_LN = 1e-3;

/**
 * Exchangeable protons of one layer or the film, and what carries them: only the forms that hold a proton take one along.
 * @param i     layer, tooth first; the film last, which has no fixed buffer
 * @param lnH   ln of the activity of hydrogen ions
 * @param cell  is filled in
 */
export function fillProtons(model: PlaqueModel, state: Float64Array, i: number, lnH: number, cell: ProtonCell): void {
  const { acidity, inner, surface, cells } = model;
  const m = cells + 1;
  const h = Math.exp(lnH);
  const free = acidity.free * h;
  const hydroxide = acidity.water / h;
  const lactic = h / (h + acidity.lactic);
  const acetic = h / (h + acidity.acetic);
  const primary = h / (h + acidity.phosphate);
  const ammonia = acidity.ammonium / (h + acidity.ammonium);
  const both = acidity.carbonic * acidity.bicarbonate;
  const whole = 1 / (h * h + h * acidity.carbonic + both);
  const dioxide = h * h * whole;
  const carbonate = both * whole;
  const lean = 1 + dioxide - carbonate;

  const lac = state[LACTATE * m + i]! * lactic;
  const ace = state[ACETATE * m + i]! * acetic;
  const pho = state[PHOSPHATE * m + i]! * primary;
  const car = state[CARBONATE * m + i]! * (dioxide - carbonate);
  const amm = -state[AMMONIA * m + i]! * ammonia;
  const ion = free - hydroxide;
  const lacSlope = lac * (1 - lactic);
  const aceSlope = ace * (1 - acetic);
  const phoSlope = pho * (1 - primary);
  const carSlope = state[CARBONATE * m + i]! * (dioxide * (2 - lean) + carbonate * lean);
  const ammSlope = -amm * (1 - ammonia);
  const ionSlope = free + hydroxide;

  cell.protons = lac + ace + pho + car + amm + ion;
  cell.protonSlope = lacSlope + aceSlope + phoSlope + carSlope + ammSlope + ionSlope;
  cell.inner =
    inner[LACTATE]! * lac +
    inner[ACETATE]! * ace +
    inner[PHOSPHATE]! * pho +
    inner[CARBONATE]! * car +
    inner[AMMONIA]! * amm +
    inner[PROTONS]! * ion;
  cell.innerSlope =
    inner[LACTATE]! * lacSlope +
    inner[ACETATE]! * aceSlope +
    inner[PHOSPHATE]! * phoSlope +
    inner[CARBONATE]! * carSlope +
    inner[AMMONIA]! * ammSlope +
    inner[PROTONS]! * ionSlope;
  if (i >= cells - 1) {
    cell.surface =
      surface[LACTATE]! * lac +
      surface[ACETATE]! * ace +
      surface[PHOSPHATE]! * pho +
      surface[CARBONATE]! * car +
      surface[AMMONIA]! * amm +
      surface[PROTONS]! * ion;
    cell.surfaceSlope =
      surface[LACTATE]! * lacSlope +
      surface[ACETATE]! * aceSlope +
      surface[PHOSPHATE]! * phoSlope +
      surface[CARBONATE]! * carSlope +
      surface[AMMONIA]! * ammSlope +
      surface[PROTONS]! * ionSlope;
  }
  if (i < cells) addFixedBuffer(model, h, cell);
}

function addFixedBuffer({ acidity: { buffer, bufferConstant } }: PlaqueModel, h: number, cell: ProtonCell): void {
  for (let j = 0; j < buffer.length; j += 1) {
    const share = h / (h + bufferConstant[j]!);
    const held = buffer[j]! * share;
    cell.protons += held;
    cell.protonSlope += held * (1 - share);
  }
}

/**
 * The pH after a step of backward Euler, all layers at once, by Newton on ln of the activity. `to` holds the new solutes and a guess of
 * the pH. Protons are taken from the last linear solve, so that what left one layer is what came to the next, to rounding.
 * @returns false where Newton did not settle: the step is then too long
 */
export function solveProtons(model: PlaqueModel, work: Workspace, from: Float64Array, to: Float64Array): boolean {
  const { cells } = model;
  const m = cells + 1;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    fillFlows(model, work, to);
    const longest = solveChanges(model, work, from);
    if (!(longest < Number.POSITIVE_INFINITY)) return false;
    const scale = longest > LONGEST_LN ? LONGEST_LN / longest : 1;
    for (let i = 0; i <= cells; i += 1) {
      to[PH * m + i] = to[PH * m + i]! - (scale * work.change[i]!) / Math.LN10;
    }
    if (longest > ENOUGH_LN) continue;
    for (let i = 0; i <= cells; i += 1) to[PROTONS * m + i] = work.protons[i]! + work.protonSlope[i]! * work.change[i]!;
    return true;
  }
  return false;
}

function fillFlows(model: PlaqueModel, work: Workspace, to: Float64Array): void {
  const { cells } = model;
  const { cell, outerFlow } = work;
  for (let i = 0; i <= cells; i += 1) {
    fillProtons(model, to, i, -Math.LN10 * to[PH * (cells + 1) + i]!, cell);
    work.protons[i] = cell.protons;
    work.protonSlope[i] = cell.protonSlope;
    work.flow[i] = cell.inner;
    work.flowSlope[i] = cell.innerSlope;
    if (i < cells - 1) continue;
    const place = 2 * (i - cells + 1);
    outerFlow[place] = cell.surface;
    outerFlow[place + 1] = cell.surfaceSlope;
  }
}

/** The linear solve: `work.change` becomes the change of ln activity. @returns the largest of them */
function solveChanges(model: PlaqueModel, work: Workspace, from: Float64Array): number {
  const { cells, layerM, filmM } = model;
  const { seconds, protons, protonSlope, flow, flowSlope, outerFlow, change, factors } = work;
  const base = PROTONS * (cells + 1);
  // What came over from the layer before: its flow, this layer's flow back, and their slopes.
  let arriving = 0;
  let arrivingSlope = 0;
  let leavingSlope = 0;
  let carried = 0;
  let factor = 0;
  for (let i = 0; i < cells; i += 1) {
    const isOuter = i === cells - 1;
    const out = isOuter ? outerFlow[0]! - outerFlow[2]! : flow[i]! - flow[i + 1]!;
    const outSlope = isOuter ? outerFlow[1]! : flowSlope[i]!;
    const backSlope = isOuter ? outerFlow[3]! : flowSlope[i + 1]!;
    const gained = protons[i]! - from[base + i]! - seconds * work.protonSource[i]!;
    const residual = layerM * gained + seconds * (out - arriving);
    const pivot = 1 / (layerM * protonSlope[i]! + seconds * (outSlope + leavingSlope - arrivingSlope * factor));
    carried = (seconds * arrivingSlope * carried - residual) * pivot;
    factor = seconds * backSlope * pivot;
    change[i] = carried;
    factors[i] = factor;
    arriving = out;
    arrivingSlope = outSlope;
    leavingSlope = backSlope;
  }
  const exchange = seconds * work.exchangePerS;
  const gained = protons[cells]! - from[base + cells]! + exchange * (protons[cells]! - work.saliva[PROTONS]!);
  const slope = filmM * protonSlope[cells]! * (1 + exchange) + seconds * (leavingSlope - arrivingSlope * factor);
  let value = (seconds * arrivingSlope * carried - (filmM * gained - seconds * arriving)) / slope;
  change[cells] = value;
  let longest = Math.abs(value);
  for (let i = cells - 1; i >= 0; i -= 1) {
    value = change[i]! + factors[i]! * value;
    change[i] = value;
    longest = Math.max(longest, Math.abs(value));
  }
  return longest;
}

/** The pH of every layer and the film from its protons and solutes, starting from the pH that stands there. */
export function solvePh(model: PlaqueModel, work: Workspace, state: Float64Array): boolean {
  const { cells } = model;
  const m = cells + 1;
  for (let i = 0; i <= cells; i += 1) {
    let lnH = -Math.LN10 * state[PH * m + i]!;
    let change = Number.POSITIVE_INFINITY;
    for (let round = 0; round < MOST_ROUNDS && Math.abs(change) > LOCAL_ENOUGH_LN; round += 1) {
      fillProtons(model, state, i, lnH, work.cell);
      change = (state[PROTONS * m + i]! - work.cell.protons) / work.cell.protonSlope;
      lnH += Math.max(-LONGEST_LN, Math.min(LONGEST_LN, change));
    }
    if (!(Math.abs(change) <= LOCAL_ENOUGH_LN)) return false;
    state[PH * m + i] = -lnH / Math.LN10;
  }
  return true;
}
