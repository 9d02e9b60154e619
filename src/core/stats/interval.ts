export interface Interval {
  readonly low: number;
  readonly high: number;
}

export const around = (middle: number, reach: number): Interval => ({ low: middle - reach, high: middle + reach });

/** @throws RangeError unless the level is strictly between 0 and 1 */
export function requireLevel(level: number): number {
  if (!(level > 0 && level < 1)) throw new RangeError(`level must be between 0 and 1, exclusive: ${level}`);
  return level;
}
