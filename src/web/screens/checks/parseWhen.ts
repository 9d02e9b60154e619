import { parseTakenAt } from '../../../core/reading/parseTakenAt.ts';
import { formatDate } from '../../format.ts';
import { parseBirthday as parseDay } from '../findPeople.ts';

/** Clocks of a tablet and a server differ. */
const CLOCK_SLACK_MS = 5 * 60_000;

export type When = { readonly takenAt: string | undefined } | { readonly problem: string };

interface Here {
  /** Local date. */
  readonly today: string;
  readonly timeZone: string;
  readonly nowMs: number;
}

/** A time as it is typed: "8:15" or "0815" of today, "20261124 0815" of another day; nothing = now. */
export function parseWhen(typed: string, { today, timeZone, nowMs }: Here): When {
  if (typed.trim() === '') return { takenAt: undefined };
  const parts = /^\s*(?:(\d{4}[./-]?\d{2}[./-]?\d{2})[\sT,]+)?(\d{1,2})[:.]?(\d{2})\s*$/.exec(typed);
  const onDate = parts?.[1] === undefined ? today : parseDay(parts[1]);
  const time = parts && `${(parts[2] ?? '').padStart(2, '0')}:${parts[3]}`;
  if (!time || onDate === undefined || !/^([01]\d|2[0-3]):[0-5]\d$/.test(time))
    return { problem: 'Taken at: a time like 08:15, or a day and a time like 20261124 0815.' };
  const instantMs = instantOf(onDate, time, timeZone);
  if (instantMs === undefined) return { problem: `Taken at: there was no ${time} on ${formatDate(onDate)}, because the clocks changed.` };
  if (instantMs > nowMs + CLOCK_SLACK_MS)
    return { problem: `Taken at: ${time}${onDate === today ? '' : ` on ${formatDate(onDate)}`} is still to come.` };
  return { takenAt: new Date(instantMs).toISOString() };
}

const HOUR_MS = 3_600_000;
const FARTHEST_HOURS = 14;

/** The first moment at which a clock in this zone shows it; undefined where it is passed over. */
function instantOf(onDate: string, time: string, timeZone: string): number | undefined {
  const asIfUtc = Date.parse(`${onDate}T${time}:00Z`);
  // By quarters of an hour: so every zone in use differs from UTC.
  for (let quarters = -4 * FARTHEST_HOURS; quarters <= 4 * FARTHEST_HOURS; quarters++) {
    const instantMs = asIfUtc + (quarters * HOUR_MS) / 4;
    const there = parseTakenAt(new Date(instantMs).toISOString(), timeZone);
    if (there?.localDate === onDate && there.localTime === time) return instantMs;
  }
  return undefined;
}
