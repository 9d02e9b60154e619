// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import type { PlaqueModel } from './buildModel.ts';
import { AMMONIA, BROUGHT, CARBONATE, LACTATE, MADE, PH, PROTONS, STORE, SUGAR, stateLength, TURNOVER, tailAt, UREA } from './layout.ts';
import type { Phase } from './phases.ts';
import { solvePh, solveProtons } from './protons.ts';
import { fillActivity, fillSinks, fillSources } from './react.ts';
import { solveDiffusion } from './solveDiffusion.ts';
import { stepMouth } from './stepMouth.ts';
import { buildWorkspace, type Workspace } from './workspace.ts';

/** The model with room to step in. */
export interface Stepper {
  readonly model: PlaqueModel;
  readonly work: Workspace;
  /** After one whole step, after the first half, after both, and what comes of them. */
  readonly whole: Float64Array;
  readonly middle: Float64Array;
  readonly halves: Float64Array;
  readonly next: Float64Array;
  readonly activity: Float64Array;
  /** How fast the pH of every layer and the film moved in the last step, 1/s: the next step's first guess. */
  readonly phPerS: Float64Array;
}

export function buildStepper(model: PlaqueModel): Stepper {
  const state = () => new Float64Array(stateLength(model.cells));
  return {
    model,
    work: buildWorkspace(model.cells),
    whole: state(),
    middle: state(),
    halves: state(),
    next: state(),
    activity: new Float64Array(model.cells),
    phPerS: new Float64Array(model.cells + 1),
  };
}

/** Makes the last tried step the state. */
export function acceptStep({ model, next, phPerS }: Stepper, state: Float64Array, seconds: number): void {
  const first = PH * (model.cells + 1);
  for (let i = 0; i < phPerS.length; i += 1) phPerS[i] = (next[first + i]! - state[first + i]!) / seconds;
  state.set(next);
}

/**
 * One step of second order: a whole step and two halves of backward Euler, extrapolated. The result stands in `stepper.next`.
 * @returns the largest difference of pH in the plaque between the whole step and the halves; NaN where the step was too long to be solved
 */
export function tryStep(stepper: Stepper, phase: Phase, from: Float64Array, startS: number, seconds: number): number {
  const { model, work, whole, middle, halves, activity, phPerS } = stepper;
  const first = PH * (model.cells + 1);
  const last = first + model.cells;
  fillActivity(model, from, activity);
  work.seconds = seconds;
  work.endS = startS + seconds;
  for (let i = first; i <= last; i += 1) whole[i] = from[i]! + seconds * phPerS[i - first]!;
  if (!stepEuler(stepper, phase, from, whole)) return Number.NaN;
  work.seconds = seconds / 2;
  work.endS = startS + seconds / 2;
  for (let i = first; i <= last; i += 1) middle[i] = (from[i]! + whole[i]!) / 2;
  if (!stepEuler(stepper, phase, from, middle)) return Number.NaN;
  fillActivity(model, middle, activity);
  work.endS = startS + seconds;
  for (let i = first; i <= last; i += 1) halves[i] = 2 * middle[i]! - from[i]!;
  if (!stepEuler(stepper, phase, middle, halves)) return Number.NaN;
  return extrapolate(stepper) ? largestDifference(whole, halves, first, last - 1) : Number.NaN;
}

/** One step of backward Euler from a state whose activity is filled in. `to` holds a guess of the pH. */
function stepEuler({ model, work, activity }: Stepper, phase: Phase, from: Float64Array, to: Float64Array): boolean {
  stepMouth(model, work, phase, from, to);
  fillSinks(model, work, from, activity);
  solveDiffusion(model, work, SUGAR, from, to);
  solveDiffusion(model, work, UREA, from, to);
  fillSources(model, work, from, to, activity);
  for (let solute = LACTATE; solute <= CARBONATE; solute += 1) solveDiffusion(model, work, solute, from, to);
  solveDiffusion(model, work, AMMONIA, from, to);
  if (!solveProtons(model, work, from, to)) return false;
  addBalance(model, work, from, to);
  return true;
}

function addBalance({ cells, layerM, filmM }: PlaqueModel, work: Workspace, from: Float64Array, to: Float64Array): void {
  const tail = tailAt(cells);
  let made = 0;
  for (let i = 0; i < cells; i += 1) made += work.protonSource[i]!;
  made *= layerM * work.seconds;
  const film = to[PROTONS * (cells + 1) + cells]!;
  const brought = filmM * work.seconds * work.exchangePerS * (work.saliva[PROTONS]! - film);
  to[tail + MADE] = from[tail + MADE]! + made;
  to[tail + BROUGHT] = from[tail + BROUGHT]! + brought;
  to[tail + TURNOVER] = from[tail + TURNOVER]! + Math.abs(made) + Math.abs(brought);
}

/** Twice the halves less the whole; sugar and its store, which cannot be below zero, stay with the halves where that would be. */
function extrapolate({ model, work, whole, halves, next }: Stepper): boolean {
  const m = model.cells + 1;
  for (let i = 0; i < next.length; i += 1) next[i] = 2 * halves[i]! - whole[i]!;
  for (let i = 0; i < m; i += 1) {
    if (next[SUGAR * m + i]! < 0) next[SUGAR * m + i] = halves[SUGAR * m + i]!;
    if (next[STORE * m + i]! < 0) next[STORE * m + i] = halves[STORE * m + i]!;
  }
  const mouth = tailAt(model.cells);
  if (next[mouth]! < 0) next[mouth] = halves[mouth]!;
  return solvePh(model, work, next);
}

function largestDifference(a: Float64Array, b: Float64Array, first: number, last: number): number {
  let largest = 0;
  for (let i = first; i <= last; i += 1) largest = Math.max(largest, Math.abs(a[i]! - b[i]!));
  return largest;
}
