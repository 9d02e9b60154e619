/**
 * How many have to be given something for one event less, where `baseline` happens without it. Baselines of events for each person (new
 * surfaces a year) give people for one event.
 * @param baseline   events per person without it, above 0
 * @param prevented  share of them that it prevents, at most 1
 * @returns not rounded; null where nothing is prevented
 * @throws RangeError outside these ranges
 */
export function numberNeededToTreat(baseline: number, prevented: number): number | null {
  if (!(baseline > 0 && Number.isFinite(baseline))) throw new RangeError(`baseline must be above 0: ${baseline}`);
  if (!(prevented <= 1)) throw new RangeError(`prevented must be at most 1: ${prevented}`);
  return prevented > 0 ? 1 / (baseline * prevented) : null;
}

/** 16.000000000000004 is 16. */
const ROUNDING = 1e-9;

/** Whole people: nobody is given a part of it. */
export const wholePeople = (number: number): number => Math.ceil(number * (1 - ROUNDING));
