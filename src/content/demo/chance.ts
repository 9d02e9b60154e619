/** Draws that follow from a seed alone. */
export interface Chance {
  /** 0 up to but not including 1. */
  readonly fraction: () => number;
  /** Whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  readonly happens: (probability: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
  /** Standard normal. */
  readonly normal: () => number;
}

/** The small generator "mulberry32": enough for invented people, not for statistics or secrets. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const fraction = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (low: number, high: number) => low + Math.floor(fraction() * (high - low + 1));
  return {
    fraction,
    whole,
    happens: (probability) => fraction() < probability,
    pick: <T>(from: readonly T[]) => {
      const picked = from[whole(0, from.length - 1)];
      if (picked === undefined) throw new RangeError('nothing to pick from');
      return picked;
    },
    // Box-Muller; 1 - u, since the logarithm of 0 is not finite.
    normal: () => Math.sqrt(-2 * Math.log(1 - fraction())) * Math.cos(2 * Math.PI * fraction()),
  };
}
