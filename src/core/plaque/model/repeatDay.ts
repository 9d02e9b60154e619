import type { DayCurve, PlaqueState } from '../types.ts';
import { startOf } from './dayEnd.ts';
import { goOnAlike, isSameState, joinCurves, SAME } from './joinCurves.ts';
import { type DayRun, runPass } from './runPass.ts';

/** Days lived before the one that is shown. Each night forgets most of the day before it; three were always enough. */
const MOST_DAYS = 6;

/**
 * A usual day: the same day was lived before, so it begins as it ends. It is run again from its own end, until it ends as it began. Usually
 * the night has forgotten the day before by the first event of the morning, and from there on the first run holds: only the night is run twice.
 * @param first  the day from another beginning
 */
export function repeatDay(run: DayRun, first: DayCurve): DayCurve {
  let last = first;
  for (let day = 0; day < MOST_DAYS && !endsAsItBegan(last); day += 1) {
    const { curve, isClosed } = repeatOnce(run, last);
    last = curve;
    if (isClosed) break;
  }
  return { ...last, begin: 'usual-day' };
}

function endsAsItBegan({ states: [start], end }: DayCurve): boolean {
  return start !== undefined && isSameState(end.values, start.values, SAME) && end.held.length === 0 && start.held.length === 0;
}

/** The day again, after `before`; what is the same as there is taken from there. `isClosed`: it ends as `before` did, thus as it began. */
function repeatOnce(run: DayRun, before: DayCurve): { readonly curve: DayCurve; readonly isClosed: boolean } {
  let joined: number | undefined;
  const mayStop = (state: PlaqueState, index: number) => {
    const earlier = before.states[index];
    if (earlier && goOnAlike(state, earlier, SAME)) joined = index;
    return joined !== undefined;
  };
  const pass = runPass(run, { begin: 'after', start: () => startOf(before.end), mayStop });
  if (joined === undefined) return { curve: pass, isClosed: false };
  return { curve: joinCurves(pass, before, { begun: joined, rest: joined }, run.minutes), isClosed: true };
}
