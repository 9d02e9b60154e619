import type { DayCurve, PlaqueState } from '../types.ts';
import { type Closeness, goOnAlike, joinCurves, SAME } from './joinCurves.ts';
import { repeatDay } from './repeatDay.ts';
import { commonStart, countCommonEnd, isSameModel } from './resume.ts';
import { type DayRun, runFrom } from './runPass.ts';

/**
 * Sugar stored in plaque is forgotten last, over a night, and moves the pH least: 0.5 mmol/L of it less than 0.001 pH. All else as where a
 * day is repeated.
 */
const CLOSE: Closeness = { ...SAME, storedMmolPerL: 0.5 };

/**
 * A usual day by another one that differs little. It is run from the edge before the first difference on. Where it comes to agree with the
 * other day again, and the same things follow, the other day holds, its night and its beginning with it; where it does not before
 * midnight, the next day is run as well, until it agrees. A seam is always held against the state with which the rest was run, so
 * that a long chain of such days does not drift.
 * @returns undefined where the other day cannot be used
 */
export function followDay(run: DayRun, other: DayCurve): DayCurve | undefined {
  const { stepper, input, minutes, tolerancePh } = run;
  const isUsable = other.begin === 'usual-day' && minutesOf(other) === minutes;
  if (!isUsable || !isSameModel(other, input, { cells: stepper.model.cells, tolerancePh })) return undefined;
  const shift = other.input.exposures.length - input.exposures.length;
  const firstSame = input.exposures.length - countCommonEnd(input, other.input);
  let joined: number | undefined;
  const mayStop = (state: PlaqueState, index: number) => {
    const there = other.states[index + shift];
    if (index > firstSame && there && goOnAlike(state, there, CLOSE)) joined = index;
    return joined !== undefined;
  };
  const pass = runFrom(run, 'usual-day', commonStart(other, input), mayStop);
  if (joined === undefined) return repeatDay(run, pass);
  return joinCurves(pass, other, { begun: joined, rest: joined + shift }, minutes);
}

const minutesOf = ({ stepMinutes }: DayCurve): number => stepMinutes.at(-1) ?? 0;
