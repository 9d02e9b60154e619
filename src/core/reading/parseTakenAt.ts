import { keepByKey } from '../keep/keepByKey.ts';
import { parseDate } from '../visit/calendar.ts';

export interface TakenAt {
  readonly instantMs: number;
  /** Local date where the swab was taken, ISO. */
  readonly localDate: string;
  /** Local time of day, "10:36"; "10:36 UTC" when no zone is known. */
  readonly localTime: string;
}

const ISO_TIME = /^(\d{4}-\d{2}-\d{2})T([01]\d|2[0-3]):([0-5]\d)(?::[0-5]\d(?:\.\d+)?)?(Z|[+-](?:[01]\d|2[0-3]):[0-5]\d)$/;

/**
 * Reads an ISO time with its zone. A time that carries an offset is shown as written; a UTC time in `timeZone`, or as UTC without one.
 * @param iso       e.g. "2026-11-25T10:36:00+01:00" or "2026-11-25T09:36:00Z"
 * @param timeZone  IANA name, e.g. "Europe/London"
 * @returns undefined where the text is not such a time, or its day does not exist
 * @throws RangeError for an unknown time zone
 */
export function parseTakenAt(iso: string, timeZone?: string): TakenAt | undefined {
  const parts = ISO_TIME.exec(iso);
  if (parts === null) return undefined;
  const [, date = '', hour, minute, zone] = parts;
  if (!parseDate(date)) return undefined;
  const instantMs = Date.parse(iso);
  if (zone !== 'Z') return { instantMs, localDate: date, localTime: `${hour}:${minute}` };
  if (timeZone === undefined) return { instantMs, localDate: date, localTime: `${hour}:${minute} UTC` };
  return { instantMs, ...inZone(instantMs, timeZone) };
}

function inZone(instantMs: number, timeZone: string): { readonly localDate: string; readonly localTime: string } {
  const part = Object.fromEntries(
    clockIn(timeZone)
      .formatToParts(instantMs)
      .map(({ type, value }) => [type, value]),
  );
  return { localDate: `${part.year}-${part.month}-${part.day}`, localTime: `${part.hour}:${part.minute}` };
}

// Building a format costs a hundred times as much as using it.
const clockIn = keepByKey(
  (timeZone: string) =>
    new Intl.DateTimeFormat('en-GB', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    }),
);
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/**
 * "3 March 2026" from an ISO local date.
 * @throws RangeError when it is no date of the calendar
 */
export function sayDate(isoDate: string): string {
  const date = parseDate(isoDate);
  if (date === undefined) throw new RangeError(`not a local date YYYY-MM-DD: ${isoDate}`);
  return `${date.day} ${MONTHS[date.month - 1]} ${date.year}`;
}
