import type { DayCurve, DayInput, Exposure, HeldFood, PlaqueState } from '../types.ts';
import type { DayStart } from './dayEnd.ts';
import { type Steps, stepsUntil } from './steps.ts';

/** The stretch that two days have in common from their start: how they began, states at its edges, and the steps within it. */
export interface CommonStart {
  readonly first: PlaqueState;
  readonly carried: readonly HeldFood[];
  readonly states: readonly PlaqueState[];
  readonly steps: Steps;
}

/** True where the day begins in sleep: the rest before it is then sleep too. */
export function startsAsleep({ exposures }: Pick<DayInput, 'exposures'>): boolean {
  const first = exposures[0];
  return first !== undefined && first.kind === 'sleep' && first.startMinute === 0;
}

export interface ResumeOptions {
  readonly begin: DayCurve['begin'];
  /** Absent for a day from rest, which begins as every other from the same rest. */
  readonly start: DayStart | undefined;
  readonly tolerancePh: number;
  readonly cells: number;
}

/**
 * What of an earlier curve holds for this day too: everything up to the end of the last exposure before the first one that differs.
 * Undefined where the mouth, the constants, the layers or the beginning differ, or where the earlier one was computed less closely.
 */
export function findCommonStart(input: DayInput, options: ResumeOptions, earlier: DayCurve | undefined): CommonStart | undefined {
  const previous = options.begin === 'at-rest' ? (earlier?.firstPass ?? earlier) : earlier;
  if (previous?.cells !== options.cells || previous.tolerancePh > options.tolerancePh) return undefined;
  const before = previous.input;
  const isSameMouth =
    hasSameNumbers(before.saliva, input.saliva) &&
    hasSameNumbers(before.plaque, input.plaque) &&
    (before.constants === input.constants || hasSameNumbers(before.constants, input.constants));
  if (!isSameMouth || !hasSameBeginning(previous, input, options)) return undefined;
  const count = input.exposures.findIndex((exposure, i) => !isSameExposure(exposure, before.exposures[i]));
  const states = previous.states.slice(0, (count < 0 ? input.exposures.length : count) + 1);
  const [first] = states;
  const end = states.at(-1);
  if (!first || !end) return undefined;
  return { first, carried: previous.carried, states, steps: stepsUntil(previous.stepMinutes, previous.stepPh, end.minute) };
}

function hasSameBeginning(previous: DayCurve, input: DayInput, { begin, start }: ResumeOptions): boolean {
  if (previous.begin !== begin) return false;
  if (start === undefined) return startsAsleep(previous.input) === startsAsleep(input);
  return (
    isSameArray(previous.states[0]?.values, start.state.values) &&
    previous.carried.length === start.carried.length &&
    previous.carried.every((held, i) => hasSameNumbers(held, start.carried[i] ?? held))
  );
}

const isSameArray = (a: Float64Array | undefined, b: Float64Array): boolean =>
  a?.length === b.length && a.every((value, i) => value === b[i]);

function hasSameNumbers<T extends object>(a: T, b: T): boolean {
  return (Object.keys(a) as (keyof T)[]).every((key) => a[key] === b[key]);
}

function isSameExposure(a: Exposure, b: Exposure | undefined): boolean {
  return (
    b !== undefined &&
    a.kind === b.kind &&
    a.startMinute === b.startMinute &&
    a.minutes === b.minutes &&
    a.hexoseMmolPerL === b.hexoseMmolPerL &&
    a.pH === b.pH &&
    a.titratableMmolPerL === b.titratableMmolPerL &&
    a.bicarbonateMmolPerL === b.bicarbonateMmolPerL &&
    a.ureaMmolPerL === b.ureaMmolPerL &&
    a.flowMlPerMin === b.flowMlPerMin &&
    a.retained?.share === b.retained?.share &&
    a.retained?.halfTimeMinutes === b.retained?.halfTimeMinutes
  );
}
