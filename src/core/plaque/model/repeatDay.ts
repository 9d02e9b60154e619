import type { DayCurve, PlaqueState } from '../types.ts';
import { cellsOf, LEAST_RELEASE, startOf } from './dayEnd.ts';
import { MADE, PH, SUGAR, tailAt } from './layout.ts';
import { type Phase, releaseAt } from './phases.ts';
import { phByMinute } from './readCurve.ts';
import { type DayRun, runPass } from './runPass.ts';

/**
 * Two states this close go on alike. Chosen by trying: from 0.02 to 0.1 mmol/L the minutes below 5.5 of sixteen days moved by at most 0.05,
 * and with 0.1 most days are joined when she wakes.
 */
const SAME_PH = 1e-3;
const SAME_MMOL_PER_L = 0.1;
/** Days lived before the one that is shown. Each night forgets most of the day before it; three were always enough. */
const MOST_DAYS = 6;

/**
 * A usual day: the same day was lived before, so it begins as it ends. It is run again from its own end, until it ends as it began. Usually
 * the night has forgotten the day before by the first event of the morning, and from there on the first run holds: only the night is run twice.
 * @param first  the day from rest
 */
export function repeatDay(run: DayRun, first: DayCurve): DayCurve {
  let last = first;
  for (let day = 0; day < MOST_DAYS; day += 1) {
    if (isSame(last.end.values, startValues(last)) && last.end.held.length === 0 && last.carried.length === 0) break;
    const { curve, isClosed } = follow(run, last);
    last = curve;
    if (isClosed) break;
  }
  return { ...last, begin: 'usual-day', firstPass: first };
}

const startValues = ({ states }: DayCurve): Float64Array => {
  const [start] = states;
  if (!start) throw new Error('a curve holds its state at minute 0');
  return start.values;
};

/** The day again, after `before`; what is the same as there is taken from there. `isClosed`: it ends as `before` did, thus as it began. */
function follow(run: DayRun, before: DayCurve): { readonly curve: DayCurve; readonly isClosed: boolean } {
  let joined: number | undefined;
  const mayStop = (state: PlaqueState, index: number, { releases, endS }: Phase) => {
    const earlier = before.states[index];
    const yesterday = releases.filter(({ fromS }) => fromS <= 0);
    const isJoined = earlier !== undefined && releaseAt(yesterday, endS) < LEAST_RELEASE && isSame(state.values, earlier.values);
    if (isJoined) joined = index;
    return isJoined;
  };
  const pass = runPass(run, { begin: 'after', start: () => startOf(before.end), mayStop });
  return joined === undefined ? { curve: pass, isClosed: false } : { curve: joinAt(pass, before, joined, run.minutes), isClosed: true };
}

/** The beginning of one curve and the rest of another, which are the same at this edge. */
function joinAt(begun: DayCurve, rest: DayCurve, index: number, minutes: number): DayCurve {
  const edge = begun.states[index]?.minute ?? 0;
  const from = rest.stepMinutes.findIndex((at) => at > edge);
  const after = from < 0 ? rest.stepMinutes.length : from;
  const stepMinutes = joinArrays(begun.stepMinutes, rest.stepMinutes.subarray(after));
  const stepPh = joinArrays(begun.stepPh, rest.stepPh.subarray(after));
  return {
    ...begun,
    ph: phByMinute({ stepMinutes, stepPh }, minutes),
    stepMinutes,
    stepPh,
    states: [...begun.states, ...rest.states.slice(index + 1)],
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

/** pH in every layer, and everything that diffuses, is stored, or stands in the mouth. */
function isSame(a: Float64Array, b: Float64Array): boolean {
  const cells = cellsOf(a);
  const [ph, store] = [PH * (cells + 1), (PH + 1) * (cells + 1)];
  return (
    isWithin(a, b, [SUGAR, ph], SAME_MMOL_PER_L) &&
    isWithin(a, b, [ph, store], SAME_PH) &&
    isWithin(a, b, [store, tailAt(cells) + MADE], SAME_MMOL_PER_L)
  );
}

function isWithin(a: Float64Array, b: Float64Array, [from, to]: readonly [number, number], most: number): boolean {
  for (let i = from; i < to; i += 1) if (!(Math.abs((a[i] ?? Number.NaN) - (b[i] ?? Number.NaN)) <= most)) return false;
  return true;
}
