import { requirePositive } from '../reading/requirePositive.ts';
import { addMonthsToDate, parseDate } from '../visit/calendar.ts';

/** A counted reading of a person, and what was seen of the teeth afterwards. */
export interface FollowedReading {
  readonly personId: string;
  /** ISO local date. */
  readonly takenOn: string;
  /** RLU, above 0. */
  readonly rlu: number;
  /** ISO local date of the first new lesion found after the reading; absent = none found. */
  readonly newLesionOn?: string | undefined;
  /** ISO local date of the last look at the teeth; absent = not seen since. */
  readonly followedUntil?: string | undefined;
}

export interface LeftOut {
  /** People of whom no reading was followed for the whole time, and no lesion found within it: their outcome is not known. */
  readonly notFollowed: number;
  /** Further readings of people who count already. */
  readonly furtherReadings: number;
}

export interface OnePerPerson {
  /** RLU of the people with a new lesion within the time, and of those without. */
  readonly withLesion: readonly number[];
  readonly without: readonly number[];
  readonly leftOut: LeftOut;
}

/**
 * The earliest reading of each person whose outcome is known.
 * A lesion found within the time counts however long the person was followed; no lesion counts only when the teeth were looked at when the
 * time was over or later: not seen is not "none". People who leave early therefore drop out unless a lesion was found, so the share with a
 * lesion is not the practice's rate of new decay; sensitivity, specificity and likelihood ratios do not rest on that share.
 * @param withinMonths  whole number, 1 or more; the last day counts
 * @throws RangeError naming the reading and field: a date that is none, a lesion or a look before the reading, rlu not above 0
 */
export function chooseOnePerPerson(readings: readonly FollowedReading[], withinMonths: number): OnePerPerson {
  if (!(Number.isSafeInteger(withinMonths) && withinMonths >= 1))
    throw new RangeError(`withinMonths must be a whole number of at least 1: ${withinMonths}`);
  readings.forEach(requireFollowed);
  const people = new Map<string, { rlu: number; hasLesion: boolean } | undefined>();
  let furtherReadings = 0;
  for (const reading of [...readings].sort((a, b) => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0))) {
    if (people.get(reading.personId) !== undefined) {
      furtherReadings++;
      continue;
    }
    const hasLesion = outcomeOf(reading, withinMonths);
    people.set(reading.personId, hasLesion === undefined ? undefined : { rlu: reading.rlu, hasLesion });
  }
  const known = [...people.values()].filter((person) => person !== undefined);
  const rluWhere = (hasLesion: boolean) => known.filter((person) => person.hasLesion === hasLesion).map(({ rlu }) => rlu);
  return {
    withLesion: rluWhere(true),
    without: rluWhere(false),
    leftOut: { notFollowed: people.size - known.length, furtherReadings },
  };
}

/** undefined = not known. */
function outcomeOf({ takenOn, newLesionOn, followedUntil }: FollowedReading, withinMonths: number): boolean | undefined {
  const end = addMonthsToDate(takenOn, withinMonths);
  if (newLesionOn !== undefined && newLesionOn <= end) return true;
  const wasLookedAt = [newLesionOn, followedUntil].some((date) => date !== undefined && date >= end);
  return wasLookedAt ? false : undefined;
}

function requireFollowed({ takenOn, rlu, newLesionOn, followedUntil }: FollowedReading, i: number): void {
  const path = `readings.${i}`;
  requirePositive(rlu, `${path}.rlu`);
  if (parseDate(takenOn) === undefined) throw new RangeError(`${path}.takenOn must be a date YYYY-MM-DD: ${takenOn}`);
  for (const [name, date] of Object.entries({ newLesionOn, followedUntil }))
    if (date !== undefined && parseDate(date) === undefined) throw new RangeError(`${path}.${name} must be a date YYYY-MM-DD: ${date}`);
  // A lesion found on the day of the reading was there already.
  if (newLesionOn !== undefined && newLesionOn <= takenOn)
    throw new RangeError(`${path}.newLesionOn must lie after the reading of ${takenOn}: ${newLesionOn}`);
  if (followedUntil !== undefined && followedUntil < takenOn)
    throw new RangeError(`${path}.followedUntil must not lie before the reading of ${takenOn}: ${followedUntil}`);
}
