const DAY_MS = 86_400_000;

/** An ISO date some days later or, with a negative number, earlier. Dates are whole days of the calendar, without a time zone. */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}
