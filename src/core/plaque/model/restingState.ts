import { ACETATE, CARBONATE, MADE, PH, PHOSPHATE, PROTONS, stateLength, tailAt, UREA } from './layout.ts';
import type { Phase } from './phases.ts';
import { fillProtons } from './protons.ts';
import { runPhase } from './runPhase.ts';
import { fillFreshSaliva } from './stepMouth.ts';
import type { Stepper } from './stepper.ts';

const NEUTRAL_LN = -7 * Math.LN10;

/**
 * Plaque after a long rest: it begins as saliva at pH 7, and what it makes and loses comes to balance.
 * @param phase  the rest, awake or asleep, ending where the day begins
 */
export function restingState(stepper: Stepper, phase: Phase, tolerancePh: number): Float64Array {
  const { model } = stepper;
  const state = new Float64Array(stateLength(model.cells));
  fillAsSaliva(stepper, phase, state);
  runPhase(stepper, phase, state, tolerancePh, () => {});
  state.fill(0, tailAt(model.cells) + MADE);
  return state;
}

function fillAsSaliva({ model, work }: Stepper, phase: Phase, state: Float64Array): void {
  const m = model.cells + 1;
  fillFreshSaliva(model, phase.drive.untastedMlPerMin, work.saliva);
  for (let i = 0; i < m; i += 1) {
    for (const solute of [ACETATE, PHOSPHATE, CARBONATE, UREA]) state[solute * m + i] = work.saliva[solute] ?? 0;
    state[PH * m + i] = 7;
    fillProtons(model, state, i, NEUTRAL_LN, work.cell);
    state[PROTONS * m + i] = work.cell.protons;
  }
}
