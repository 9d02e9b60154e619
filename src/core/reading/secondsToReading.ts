import { parseTakenAt } from './parseTakenAt.ts';
import type { SwabReading } from './types.ts';

/**
 * Time from the activation of the swab to the reading of its number.
 * @returns whole seconds, 0 or more, rounded down; undefined when either time was not noted, has no zone, or the reading seems to come
 *          before the activation because a clock was set back: never a negative time
 */
export function secondsToReading({ activatedAt, takenAt }: Pick<SwabReading, 'activatedAt' | 'takenAt'>): number | undefined {
  const from = activatedAt === undefined ? undefined : parseTakenAt(activatedAt);
  const to = takenAt === undefined ? undefined : parseTakenAt(takenAt);
  if (from === undefined || to === undefined) return undefined;
  const elapsedMs = to.instantMs - from.instantMs;
  return elapsedMs < 0 ? undefined : Math.floor(elapsedMs / 1000);
}

/** "1 second", "38 seconds", "4 minutes", "2 hours". From two minutes on in whole minutes, from two hours on in whole hours. */
export function sayDuration(seconds: number): string {
  if (seconds < 120) return count(Math.floor(seconds), 'second');
  if (seconds < 7200) return count(Math.floor(seconds / 60), 'minute');
  return count(Math.floor(seconds / 3600), 'hour');
}

const count = (n: number, unit: string): string => `${n} ${n === 1 ? unit : `${unit}s`}`;
