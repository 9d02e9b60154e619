import { parseDate } from '../visit/calendar.ts';

/**
 * The last day of a pack as it is printed or typed: "2027-03-31", "20270331", "2027-03", "03/2027", "03 2027". A month alone means its last
 * day, as on packs. A day written in three numbers is only taken year first: 03/04/2027 is March to one hand and April to another.
 * @returns ISO local date; undefined when it is none of these
 */
export function parseExpiry(typed: string): string | undefined {
  const text = typed.trim();
  const day = /^(\d{4})[-./ ]?(\d{2})[-./ ]?(\d{2})$/.exec(text);
  if (day) return existing(`${day[1]}-${day[2]}-${day[3]}`);
  const month = /^(\d{4})[-./ ](\d{1,2})$/.exec(text) ?? swapped(/^(\d{1,2})[-./ ](\d{4})$/.exec(text));
  return month ? lastDayOf(Number(month[1]), Number(month[2])) : undefined;
}

const existing = (iso: string): string | undefined => (parseDate(iso) ? iso : undefined);

const swapped = (match: RegExpExecArray | null) => match && [match[0], match[2], match[1]];

function lastDayOf(year: number, month: number): string | undefined {
  const start = `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-`;
  return [31, 30, 29, 28].map((day) => existing(`${start}${day}`)).find((iso) => iso !== undefined);
}
