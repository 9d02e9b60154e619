import type { DayCurve, DayInput, PlaqueState } from '../types.ts';
import { endOfDay } from './dayEnd.ts';
import { heldAtEnd, listPhases, type Phase } from './phases.ts';
import { phByMinute } from './readCurve.ts';
import { protonBalanceError, toothPh } from './readState.ts';
import { type CommonStart, findCommonStart } from './resume.ts';
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
  readonly start: () => PlaqueState;
  readonly previous?: DayCurve | undefined;
  readonly mayStop?: MayStop | undefined;
}

/** Asked at every edge after minute 0, with the count of exposures that ended: true where the rest of the day need not be run. */
export type MayStop = (state: PlaqueState, index: number) => boolean;

/** One run through the day from a known start. Where `mayStop` ended it, the curve ends there. */
export function runPass(run: DayRun, { begin, start, previous, mayStop }: PassOptions): DayCurve {
  const { stepper, input, tolerancePh } = run;
  const { cells } = stepper.model;
  const fresh = begin === 'at-rest' ? undefined : start();
  const common = findCommonStart(input, { begin, start: fresh, tolerancePh, cells }, previous);
  if (common) return runFrom(run, begin, common, mayStop);
  const from = fresh ?? start();
  return runFrom(run, begin, { states: [from], steps: buildSteps(toothPh(from.values, cells)), protonBalanceError: 0 }, mayStop);
}

/** The rest of a day whose beginning is known. */
export function runFrom(run: DayRun, begin: DayCurve['begin'], known: CommonStart, mayStop?: MayStop): DayCurve {
  const { stepper, input, minutes, tolerancePh } = run;
  const { cells } = stepper.model;
  const { steps } = known;
  const states = [...known.states];
  const from = states.at(-1);
  if (!from) throw new Error('a run begins at a state');
  const state = from.values.slice();
  const phases = listPhases(stepper.model, input.exposures, minutes, states[0]?.held);
  runPhases(run, { phases, states, steps, state, mayStop });
  const stepMinutes = steps.minutes.slice(0, steps.count);
  const stepPh = steps.ph.slice(0, steps.count);
  return {
    ph: phByMinute({ stepMinutes, stepPh }, stepMinutes.at(-1) ?? 0),
    stepMinutes,
    stepPh,
    states,
    protonBalanceError: Math.max(known.protonBalanceError, protonBalanceError(stepper.model, from.values, state)),
    input,
    tolerancePh,
    cells,
    begin,
    end: endOfDay(state, heldAtEnd(phases), minutes),
  };
}

interface Pass {
  readonly phases: readonly Phase[];
  readonly states: PlaqueState[];
  readonly steps: Steps;
  readonly state: Float64Array;
  readonly mayStop: MayStop | undefined;
}

/** Runs what follows the last state, and keeps the state at the end of every exposure. */
function runPhases({ stepper, tolerancePh }: DayRun, { phases, states, steps, state, mayStop }: Pass): void {
  const { cells } = stepper.model;
  const known = states.length - 1;
  let ended = 0;
  for (const phase of phases) {
    if (ended >= known) runPhase(stepper, phase, state, tolerancePh, (second) => addStep(steps, second / 60, toothPh(state, cells)));
    if (!phase.heldAfter) continue;
    ended += 1;
    if (ended <= known) continue;
    const edge = { minute: phase.endS / 60, values: state.slice(), held: phase.heldAfter };
    states.push(edge);
    if (mayStop?.(edge, ended)) return;
  }
}
