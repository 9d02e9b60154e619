import type { DayCurve, DayInput, PlaqueState, SimulationOptions } from '../types.ts';
import { buildModel } from './buildModel.ts';
import { checkDay, checkOptions } from './checkDay.ts';
import { exposurePhase, listPhases, restPhase } from './phases.ts';
import { phByMinute } from './readCurve.ts';
import { protonBalanceError, toothPh } from './readState.ts';
import { restingState } from './restingState.ts';
import { findCommonStart, startsAsleep } from './resume.ts';
import { runPhase } from './runPhase.ts';
import { buildStepper, type Stepper } from './stepper.ts';
import { addStep, buildSteps, type Steps } from './steps.ts';

export const USUAL_MINUTES = 1440;
export const USUAL_TOLERANCE_PH = 0.01;
export const USUAL_CELLS = 6;
const REST_BEFORE_S = 6 * 3600;

/**
 * The pH of plaque at the tooth through a day, by a one-dimensional model of reaction and diffusion with a balance of protons. The day
 * begins after a long rest: asleep, if the first exposure is sleep from minute 0, else awake.
 * A model that compares days; it does not measure teeth. Not in it: starch, calcium phosphate of the enamel, the effect of fluoride on
 * acid formation, bacteria that change with the diet.
 * @throws RangeError naming the field and its range
 * @accuracy at the usual tolerance within 0.02 pH at every minute, and 0.5 min below a line, of SciPy at 1e-8
 * @source dibdin1990; dawes1983
 */
export function simulateDay(input: DayInput, options: SimulationOptions = {}): DayCurve {
  const minutes = input.minutes ?? USUAL_MINUTES;
  const { tolerancePh = USUAL_TOLERANCE_PH, cells = USUAL_CELLS, previous } = options;
  checkDay(input, minutes);
  checkOptions(tolerancePh, cells);
  const stepper = buildStepper(buildModel(input, input.constants, cells));
  const common = findCommonStart(input, { tolerancePh, cells }, previous);
  const start = common?.states[0] ?? { minute: 0, values: restBefore(stepper, input, tolerancePh) };
  const states: PlaqueState[] = [...(common?.states ?? [start])];
  const steps = common?.steps ?? buildSteps(toothPh(start.values, cells));
  const state = (states.at(-1) ?? start).values.slice();
  runDay(stepper, { input, minutes, tolerancePh }, { states, steps, state });
  const stepMinutes = steps.minutes.slice(0, steps.count);
  const stepPh = steps.ph.slice(0, steps.count);
  return {
    ph: phByMinute({ stepMinutes, stepPh }, minutes),
    stepMinutes,
    stepPh,
    states,
    protonBalanceError: protonBalanceError(stepper.model, start.values, state),
    input,
    tolerancePh,
    cells,
  };
}

interface Run {
  readonly states: PlaqueState[];
  readonly steps: Steps;
  readonly state: Float64Array;
}

/** Runs what follows the last state, and keeps the state at the end of every exposure. */
function runDay(
  stepper: Stepper,
  { input, minutes, tolerancePh }: { readonly input: DayInput; readonly minutes: number; readonly tolerancePh: number },
  { states, steps, state }: Run,
): void {
  const { cells } = stepper.model;
  const known = states.length - 1;
  let ended = 0;
  for (const phase of listPhases(stepper.model, input.exposures, minutes)) {
    if (ended >= known) runPhase(stepper, phase, state, tolerancePh, (second) => addStep(steps, second / 60, toothPh(state, cells)));
    if (!phase.endsExposure) continue;
    ended += 1;
    if (ended > known) states.push({ minute: phase.endS / 60, values: state.slice() });
  }
}

function restBefore(stepper: Stepper, input: DayInput, tolerancePh: number): Float64Array {
  const [first] = input.exposures;
  const phase =
    first !== undefined && startsAsleep(input)
      ? exposurePhase(stepper.model, first, { startS: -REST_BEFORE_S, endS: 0, releases: [] })
      : restPhase(stepper.model, -REST_BEFORE_S, 0, []);
  return restingState(stepper, phase, tolerancePh);
}
