import type { DayCurve, DayInput, PlaqueState } from '../types.ts';
import { type DayStart, endOfDay } from './dayEnd.ts';
import { heldAfter, listPhases, type Phase } from './phases.ts';
import { phByMinute } from './readCurve.ts';
import { protonBalanceError, toothPh } from './readState.ts';
import { findCommonStart } from './resume.ts';
import { runPhase } from './runPhase.ts';
import type { Stepper } from './stepper.ts';
import { addStep, buildSteps, type Steps } from './steps.ts';

/** What a run of one day needs. */
export interface DayRun {
  readonly stepper: Stepper;
  readonly input: DayInput;
  readonly minutes: number;
  readonly tolerancePh: number;
}

export interface PassOptions {
  readonly begin: DayCurve['begin'];
  /** Asked only where nothing can be taken from the earlier curve. */
  readonly start: () => DayStart;
  readonly previous?: DayCurve | undefined;
  /** Asked at every edge after minute 0: true where the rest of the day need not be run. */
  readonly mayStop?: ((state: PlaqueState, index: number, phase: Phase) => boolean) | undefined;
}

/** One run through the day from a known start. Where `mayStop` ended it, the curve ends there. */
export function runPass(run: DayRun, { begin, start, previous, mayStop }: PassOptions): DayCurve {
  const { stepper, input, minutes, tolerancePh } = run;
  const { cells } = stepper.model;
  const fresh = begin === 'at-rest' ? undefined : start();
  const common = findCommonStart(input, { begin, start: fresh, tolerancePh, cells }, previous);
  const { state: from, carried } = common ? { state: common.first, carried: common.carried } : (fresh ?? start());
  const states: PlaqueState[] = [...(common?.states ?? [from])];
  const steps = common?.steps ?? buildSteps(toothPh(from.values, cells));
  const state = (states.at(-1) ?? from).values.slice();
  const phases = listPhases(stepper.model, input.exposures, minutes, carried);
  runPhases(run, { phases, states, steps, state, mayStop });
  const stepMinutes = steps.minutes.slice(0, steps.count);
  const stepPh = steps.ph.slice(0, steps.count);
  return {
    ph: phByMinute({ stepMinutes, stepPh }, stepMinutes.at(-1) ?? 0),
    stepMinutes,
    stepPh,
    states,
    protonBalanceError: protonBalanceError(stepper.model, from.values, state),
    input,
    tolerancePh,
    cells,
    begin,
    carried,
    end: endOfDay(state, heldAfter(phases, input.exposures), minutes),
  };
}

interface Pass {
  readonly phases: readonly Phase[];
  readonly states: PlaqueState[];
  readonly steps: Steps;
  readonly state: Float64Array;
  readonly mayStop: PassOptions['mayStop'];
}

/** Runs what follows the last state, and keeps the state at the end of every exposure. */
function runPhases({ stepper, tolerancePh }: DayRun, { phases, states, steps, state, mayStop }: Pass): void {
  const { cells } = stepper.model;
  const known = states.length - 1;
  let ended = 0;
  for (const phase of phases) {
    if (ended >= known) runPhase(stepper, phase, state, tolerancePh, (second) => addStep(steps, second / 60, toothPh(state, cells)));
    if (!phase.endsExposure) continue;
    ended += 1;
    if (ended <= known) continue;
    const edge = { minute: phase.endS / 60, values: state.slice() };
    states.push(edge);
    if (mayStop?.(edge, ended, phase)) return;
  }
}
