import type { DayCurve, DayInput, Exposure, PlaqueState } from '../types.ts';
import { type Steps, stepsUntil } from './steps.ts';

/** The stretch that two days have in common from their start: states at its edges, and the steps within it. */
export interface CommonStart {
  readonly states: readonly PlaqueState[];
  readonly steps: Steps;
}

/** True where the day begins in sleep: the rest before it is then sleep too. */
export function startsAsleep({ exposures }: Pick<DayInput, 'exposures'>): boolean {
  const first = exposures[0];
  return first !== undefined && first.kind === 'sleep' && first.startMinute === 0;
}

/**
 * What of an earlier curve holds for this day too: everything up to the end of the last exposure before the first one that differs.
 * Undefined where the mouth, the constants or the layers differ, or where the earlier one was computed less closely.
 */
export function findCommonStart(
  input: DayInput,
  { tolerancePh, cells }: { readonly tolerancePh: number; readonly cells: number },
  previous: DayCurve | undefined,
): CommonStart | undefined {
  if (previous === undefined || previous.cells !== cells || previous.tolerancePh > tolerancePh) return undefined;
  const before = previous.input;
  const isSameMouth =
    hasSameNumbers(before.saliva, input.saliva) &&
    hasSameNumbers(before.plaque, input.plaque) &&
    (before.constants === input.constants || hasSameNumbers(before.constants, input.constants));
  if (!isSameMouth || startsAsleep(before) !== startsAsleep(input)) return undefined;
  const count = input.exposures.findIndex((exposure, i) => !isSameExposure(exposure, before.exposures[i]));
  const states = previous.states.slice(0, (count < 0 ? input.exposures.length : count) + 1);
  const end = states.at(-1);
  return end && { states, steps: stepsUntil(previous.stepMinutes, previous.stepPh, end.minute) };
}

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
