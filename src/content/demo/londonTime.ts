const LONDON = new Intl.DateTimeFormat('en-GB', { timeZone: 'Europe/London', hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
const HOUR_MS = 3_600_000;

/** UTC of a local time at the invented practice, as ISO text; within working hours, which no change of the clocks reaches. */
export function utcOf(onDate: string, atTime: string): string {
  const asIfUtc = Date.parse(`${onDate}T${atTime}:00.000Z`);
  const isWinter = LONDON.format(asIfUtc) === atTime;
  return new Date(isWinter ? asIfUtc : asIfUtc - HOUR_MS).toISOString();
}
