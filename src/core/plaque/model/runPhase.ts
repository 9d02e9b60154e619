import type { Phase } from './phases.ts';
import { acceptStep, type Stepper, tryStep } from './stepper.ts';

const FIRST_STEP_S = 0.25;
const LEAST_STEP_S = 1e-4;
const LONGEST_STEP_S = 900;
const MOST_GROWTH = 2.5;
const LEAST_GROWTH = 0.2;
const SAFETY = 0.85;
/** A longer step must err less in proportion: slow stretches decide how long the pH stays below a line. */
const WINDOW_S = 6;

/**
 * Runs one phase, from the state in `state` to the state at its end, which then stands there. Every phase begins with a short step and
 * ends on its edge.
 * @param onStep  told the second and the state after every step; must not keep the state
 * @throws Error where the equations cannot be solved, which no input in range is known to do
 */
export function runPhase(
  stepper: Stepper,
  phase: Phase,
  state: Float64Array,
  tolerancePh: number,
  onStep: (second: number, state: Float64Array) => void,
): void {
  let now = phase.startS;
  let wanted = FIRST_STEP_S;
  stepper.phPerS.fill(0);
  while (now < phase.endS) {
    const left = phase.endS - now;
    // No sliver of a step before the edge.
    const seconds = wanted >= left ? left : Math.min(wanted, left / 2);
    const error = tryStep(stepper, phase, state, now, seconds) * Math.max(1, seconds / WINDOW_S);
    const growth = error > 0 ? Math.min(MOST_GROWTH, SAFETY * Math.sqrt(tolerancePh / error)) : MOST_GROWTH;
    if (error <= tolerancePh) {
      acceptStep(stepper, state, seconds);
      now = seconds === left ? phase.endS : now + seconds;
      onStep(now, state);
      wanted = Math.min(LONGEST_STEP_S, seconds * Math.max(LEAST_GROWTH, growth));
      continue;
    }
    wanted = seconds * (error > 0 ? Math.max(LEAST_GROWTH, growth) : LEAST_GROWTH);
    if (wanted < LEAST_STEP_S) throw new Error(`the plaque model did not settle at second ${now} of the day`);
  }
}
