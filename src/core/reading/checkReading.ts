import { parseTakenAt } from './parseTakenAt.ts';
import { sayNumber } from './sayRlu.ts';
import type { Meter, SwabLot, SwabReading } from './types.ts';

export interface ReadingProblem {
  readonly field: keyof SwabReading;
  readonly message: string;
}

/** Clocks of a tablet and a server differ, and a time is typed to the minute. */
const CLOCK_SLACK_MS = 5 * 60_000;

/**
 * What is wrong with a reading as typed, before it is taken over. An expired lot or a swab after cleaning is not an error but a failing
 * condition (see `assessReading`); these are numbers and names that cannot be right.
 * @param now  ISO time; without it a time in the future is not noticed
 * @returns one line per problem, empty when there is none
 */
export function checkReading(reading: SwabReading, meter: Meter | undefined, lots: readonly SwabLot[], now?: string): ReadingProblem[] {
  const problems: ReadingProblem[] = [...numberProblems(reading, meter), ...timeProblems(reading, now)];
  const { lotId, rlu } = reading;
  if (lotId !== undefined && !lots.some((lot) => lot.id === lotId)) problems.push({ field: 'lotId', message: 'no lot with this id' });
  if (reading.bound !== undefined && reading.bound !== 'exact' && rlu === undefined)
    problems.push({ field: 'bound', message: 'a bound needs its number' });
  if (reading.failed === true && rlu !== undefined) problems.push({ field: 'failed', message: 'a failed swab has no number' });
  if (reading.notTaken !== undefined && (rlu !== undefined || reading.failed === true))
    problems.push({ field: 'notTaken', message: 'a swab that was not taken has no number and cannot fail' });
  if (reading.notTakenNote !== undefined && reading.notTaken === undefined)
    problems.push({ field: 'notTakenNote', message: 'a note needs the reason it stands beside' });
  return problems;
}

/** Numbers that no assessment can use: outside the meter, negative, not finite. */
export function numberProblems(reading: SwabReading, meter: Meter | undefined): ReadingProblem[] {
  const problems: ReadingProblem[] = [];
  const message = reading.rlu === undefined ? undefined : rluProblem(reading.rlu, meter);
  if (message !== undefined) problems.push({ field: 'rlu', message });
  for (const field of ['minutesSinceEating', 'minutesSinceBrushing', 'minutesSinceRinsing'] as const) {
    const minutes = reading[field];
    if (minutes !== undefined && !(minutes >= 0 && minutes < Number.POSITIVE_INFINITY))
      problems.push({ field, message: 'must be a number of minutes, 0 or more' });
  }
  return problems;
}

function rluProblem(rlu: number, meter: Meter | undefined): string | undefined {
  if (!Number.isFinite(rlu)) return 'must be a number';
  if (rlu < 0) return 'a reading cannot be below 0';
  if (meter === undefined) return undefined;
  if (rlu < meter.lowestRlu) return `below the lowest reading of this meter, ${sayNumber(meter.lowestRlu)}`;
  if (rlu > meter.highestRlu) return `above the highest reading of this meter, ${sayNumber(meter.highestRlu)}`;
  return undefined;
}

function timeProblems(reading: SwabReading, now: string | undefined): ReadingProblem[] {
  const latestMs = now === undefined ? Number.POSITIVE_INFINITY : Date.parse(now) + CLOCK_SLACK_MS;
  if (Number.isNaN(latestMs)) throw new RangeError(`now must be an ISO time: ${now}`);
  return (['activatedAt', 'takenAt'] as const).flatMap((field) => {
    const noted = reading[field];
    if (noted === undefined) return [];
    const at = parseTakenAt(noted);
    if (at === undefined) return [{ field, message: 'must be a time with its zone, like 2026-11-25T10:36:00+01:00' }];
    return at.instantMs > latestMs ? [{ field, message: 'is in the future' }] : [];
  });
}
