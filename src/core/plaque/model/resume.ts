import type { DayCurve, DayInput, Exposure, PlaqueState } from '../types.ts';
import { type Steps, stepsUntil } from './steps.ts';

/** The stretch that two days have in common from their start: states at its edges, the first at minute 0, and the steps within it. */
export interface CommonStart {
  readonly states: readonly PlaqueState[];
  readonly steps: Steps;
  readonly protonBalanceError: number;
}

/** True where the day begins in sleep: the rest before it is then sleep too. */
export function startsAsleep({ exposures }: Pick<DayInput, 'exposures'>): boolean {
  const first = exposures[0];
  return first !== undefined && first.kind === 'sleep' && first.startMinute === 0;
}

export interface Precision {
  readonly tolerancePh: number;
  readonly cells: number;
}

export interface ResumeOptions extends Precision {
  readonly begin: DayCurve['begin'];
  /** Absent for a day from rest, which begins as every other from the same rest. */
  readonly start: PlaqueState | undefined;
}

/**
 * What of an earlier curve holds for this day too: everything up to the end of the last exposure before the first one that differs.
 * Undefined where the mouth, the constants, the layers or the beginning differ, or where the earlier one was computed less closely.
 */
export function findCommonStart(input: DayInput, options: ResumeOptions, earlier: DayCurve | undefined): CommonStart | undefined {
  const previous = options.begin === 'at-rest' ? (earlier?.firstPass ?? earlier) : earlier;
  if (!previous || !isSameModel(previous, input, options) || !hasSameBeginning(previous, input, options)) return undefined;
  return commonStart(previous, input);
}

/** Whether an earlier curve was computed by the same equations, and at least as closely. */
export function isSameModel({ input: before, ...previous }: DayCurve, input: DayInput, { cells, tolerancePh }: Precision): boolean {
  return (
    previous.cells === cells &&
    previous.tolerancePh <= tolerancePh &&
    hasSameNumbers(before.saliva, input.saliva) &&
    hasSameNumbers(before.plaque, input.plaque) &&
    (before.constants === input.constants || hasSameNumbers(before.constants, input.constants))
  );
}

/** Of a curve of the same model, up to the end of the last exposure before the first one that differs. */
export function commonStart(earlier: DayCurve, { exposures }: DayInput): CommonStart {
  const { input: before, stepMinutes, stepPh, protonBalanceError } = earlier;
  const count = exposures.findIndex((exposure, i) => !isSameExposure(exposure, before.exposures[i]));
  const states = earlier.states.slice(0, (count < 0 ? exposures.length : count) + 1);
  return { states, steps: stepsUntil(stepMinutes, stepPh, states.at(-1)?.minute ?? 0), protonBalanceError };
}

/** How many exposures two days have in common before their end. */
export function countCommonEnd({ exposures: a }: DayInput, { exposures: b }: DayInput): number {
  const most = Math.min(a.length, b.length);
  let count = 0;
  while (count < most) {
    const exposure = a[a.length - 1 - count];
    if (!exposure || !isSameExposure(exposure, b[b.length - 1 - count])) break;
    count += 1;
  }
  return count;
}

function hasSameBeginning(previous: DayCurve, input: DayInput, { begin, start }: ResumeOptions): boolean {
  if (previous.begin !== begin) return false;
  if (start === undefined) return startsAsleep(previous.input) === startsAsleep(input);
  const [first] = previous.states;
  return (
    isSameArray(first?.values, start.values) &&
    first?.held.length === start.held.length &&
    first.held.every((held, i) => hasSameNumbers(held, start.held[i] ?? held))
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
