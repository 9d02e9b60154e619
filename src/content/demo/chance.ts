/** Draws that follow from a seed alone. */
export interface Chance {
  /** 0 up to but not including 1. */
  readonly fraction: () => number;
  /** Whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  readonly happens: (probability: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
  /** One of the names, each as often as its share of the sum of all shares. */
  readonly pickByShare: <T extends string>(shares: Readonly<Record<T, number>>) => T;
  /** Standard normal. */
  readonly normal: () => number;
  /** Mean 1, the smaller the shape the more uneven. */
  readonly gamma: (shape: number) => number;
  /** A Poisson count. */
  readonly count: (mean: number) => number;
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
  // Box-Muller; 1 - u, since the logarithm of 0 is not finite.
  const normal = () => Math.sqrt(-2 * Math.log(1 - fraction())) * Math.cos(2 * Math.PI * fraction());
  return {
    fraction,
    whole,
    happens: (probability) => fraction() < probability,
    pick: <T>(from: readonly T[]) => {
      const picked = from[whole(0, from.length - 1)];
      if (picked === undefined) throw new RangeError('nothing to pick from');
      return picked;
    },
    pickByShare: <T extends string>(shares: Readonly<Record<T, number>>) => {
      const entries = Object.entries<number>(shares);
      let left = fraction() * entries.reduce((sum, [, share]) => sum + share, 0);
      const found = entries.find(([, share]) => {
        left -= share;
        return left < 0;
      });
      if (!found) throw new RangeError('no share to pick from');
      return found[0] as T;
    },
    normal,
    gamma: (shape) => drawGamma(shape, fraction, normal) / shape,
    count: (mean) => drawCount(mean, fraction),
  };
}

/** Marsaglia and Tsang's method; below shape 1 by the draw for one more, thinned. */
function drawGamma(shape: number, fraction: () => number, normal: () => number): number {
  if (shape < 1) return drawGamma(shape + 1, fraction, normal) * (1 - fraction()) ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const x = normal();
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - fraction()) < x ** 2 / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** By multiplying fractions until they fall below exp(-mean). */
function drawCount(mean: number, fraction: () => number): number {
  const floor = Math.exp(-mean);
  let product = fraction();
  let count = 0;
  while (product > floor) {
    product *= fraction();
    count += 1;
  }
  return count;
}
