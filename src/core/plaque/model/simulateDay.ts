import type { DayCurve, DayInput, PlaqueState, SimulationOptions } from '../types.ts';
import { buildModel } from './buildModel.ts';
import { checkBegin, checkDay, checkOptions } from './checkDay.ts';
import { startOf } from './dayEnd.ts';
import { followDay } from './followDay.ts';
import { exposurePhase, restPhase } from './phases.ts';
import { repeatDay } from './repeatDay.ts';
import { restingState } from './restingState.ts';
import { startsAsleep } from './resume.ts';
import { type DayRun, runPass } from './runPass.ts';
import { buildStepper } from './stepper.ts';

export const USUAL_MINUTES = 1440;
export const USUAL_TOLERANCE_PH = 0.01;
export const USUAL_CELLS = 6;
const REST_BEFORE_S = 6 * 3600;

/**
 * The pH of plaque at the tooth through a day, by a one-dimensional model of reaction and diffusion with a balance of protons. The day
 * begins as `begin` says; after a long rest unless it says otherwise, asleep if the first exposure is sleep from minute 0, else awake.
 * A model that compares days; it does not measure teeth. Not in it: starch, calcium phosphate of the enamel, the effect of fluoride on
 * acid formation, bacteria that change with the diet.
 * @throws RangeError naming the field and its range
 * @accuracy at the usual tolerance within 0.02 pH at every minute, and 0.5 min below a line, of SciPy at 1e-8
 * @source dibdin1990; dawes1983
 */
export function simulateDay(input: DayInput, options: SimulationOptions = {}): DayCurve {
  const minutes = input.minutes ?? USUAL_MINUTES;
  const { tolerancePh = USUAL_TOLERANCE_PH, cells = USUAL_CELLS, begin = 'at-rest', previous, follow } = options;
  checkDay(input, minutes);
  checkOptions(tolerancePh, cells);
  checkBegin(begin, cells);
  const stepper = buildStepper(buildModel(input, input.constants, cells));
  const run: DayRun = { stepper, input, minutes, tolerancePh };
  if (typeof begin === 'object') return runPass(run, { begin: 'after', start: () => startOf(begin.end), previous });
  const followed = begin === 'usual-day' && follow ? followDay(run, follow) : undefined;
  if (followed) return followed;
  const first = runPass(run, { begin: 'at-rest', start: () => restBefore(run), previous });
  return begin === 'at-rest' ? first : { ...repeatDay(run, first), firstPass: first };
}

/** The state at minute 0 after hours in which nothing happened. */
function restBefore({ stepper, input, tolerancePh }: DayRun): PlaqueState {
  const [first] = input.exposures;
  const phase =
    first !== undefined && startsAsleep(input)
      ? exposurePhase(stepper.model, first, { startS: -REST_BEFORE_S, endS: 0, releases: [] })
      : restPhase(stepper.model, -REST_BEFORE_S, 0, []);
  return { minute: 0, values: restingState(stepper, phase, tolerancePh), held: [] };
}
