import type { DayCurve, HeldFood, PlaqueState } from '../types.ts';
import { cellsOf, LEAST_RELEASE } from './dayEnd.ts';
import { MADE, PH, STORE, SUGAR, tailAt } from './layout.ts';
import { releaseAt } from './phases.ts';
import { phByMinute } from './readCurve.ts';

/** How close two states must be to go on alike: pH in every layer, and what diffuses, stands in the mouth, or is stored, mmol/L. */
export interface Closeness {
  readonly ph: number;
  readonly mmolPerL: number;
  readonly storedMmolPerL: number;
}

/**
 * Chosen by trying: from 0.02 to 0.1 mmol/L the minutes below 5.5 of sixteen days moved by at most 0.05, and with 0.1 most days are joined
 * when she wakes.
 */
export const SAME: Closeness = { ph: 1e-3, mmolPerL: 0.1, storedMmolPerL: 0.1 };

/** Whether two days go on alike from an edge at which both stand, when the same things follow. */
export function goOnAlike(a: PlaqueState, b: PlaqueState, most: Closeness): boolean {
  return isSameState(a.values, b.values, most) && differingRelease(a.held, b.held, a.minute * 60) < LEAST_RELEASE;
}

export function isSameState(a: Float64Array, b: Float64Array, most: Closeness): boolean {
  const cells = cellsOf(a);
  const [ph, store, mouth] = [PH * (cells + 1), STORE * (cells + 1), tailAt(cells)];
  return (
    isWithin(a, b, [SUGAR, ph], most.mmolPerL) &&
    isWithin(a, b, [ph, store], most.ph) &&
    isWithin(a, b, [store, mouth], most.storedMmolPerL) &&
    isWithin(a, b, [mouth, mouth + MADE], most.mmolPerL)
  );
}

function isWithin(a: Float64Array, b: Float64Array, [from, to]: readonly [number, number], most: number): boolean {
  for (let i = from; i < to; i += 1) if (!(Math.abs((a[i] ?? Number.NaN) - (b[i] ?? Number.NaN)) <= most)) return false;
  return true;
}

/** Sugar that only one of two days still gives off, mmol/L of saliva and second. */
function differingRelease(a: readonly HeldFood[], b: readonly HeldFood[], atS: number): number {
  const onlyIn = (some: readonly HeldFood[], others: readonly HeldFood[]) =>
    releaseAt(
      some.filter((one) => !others.some((other) => isSameFood(one, other))),
      atS,
    );
  return onlyIn(a, b) + onlyIn(b, a);
}

const isSameFood = (a: HeldFood, b: HeldFood): boolean => a.fromS === b.fromS && a.perS === b.perS && a.mmolPerLPerS === b.mmolPerLPerS;

/** The edge at which two curves are joined, by its place among the states of each. */
export interface Join {
  readonly begun: number;
  readonly rest: number;
}

/** The beginning of one curve and the rest of another, which go on alike from an edge; its state is that with which the rest was run. */
export function joinCurves(begun: DayCurve, rest: DayCurve, at: Join, minutes: number): DayCurve {
  const edge = rest.states[at.rest]?.minute ?? 0;
  const from = rest.stepMinutes.findIndex((minute) => minute > edge);
  const after = from < 0 ? rest.stepMinutes.length : from;
  const stepMinutes = joinArrays(begun.stepMinutes, rest.stepMinutes.subarray(after));
  const stepPh = joinArrays(begun.stepPh, rest.stepPh.subarray(after));
  return {
    ...begun,
    ph: phByMinute({ stepMinutes, stepPh }, minutes),
    stepMinutes,
    stepPh,
    states: [...begun.states.slice(0, at.begun), ...rest.states.slice(at.rest)],
    protonBalanceError: Math.max(begun.protonBalanceError, rest.protonBalanceError),
    end: rest.end,
  };
}

function joinArrays(first: Float64Array, second: Float64Array): Float64Array {
  const joined = new Float64Array(first.length + second.length);
  joined.set(first);
  joined.set(second, first.length);
  return joined;
}
