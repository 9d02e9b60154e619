import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { clopperPearsonInterval } from './clopperPearsonInterval.ts';
import { wilsonInterval } from './wilsonInterval.ts';

// R 4.2.2: the score formula, and qbeta for Clopper-Pearson. Tolerance: 1e-10 relative, exactly 0 at 0.
// The counts are those of Newcombe 1998, Table I, whose printed 0.2553..0.3662 and so on agree (from memory).
test.each([
  { successes: 81, trials: 263, wilson: [0.2552885198782743, 0.3662095769828001], clopper: [0.2527367455852712, 0.3676219226013514] },
  { successes: 15, trials: 148, wilson: [0.0623863995307363, 0.160487241723308], clopper: [0.057844010083448555, 0.16165049034947898] },
  { successes: 0, trials: 20, wilson: [0, 0.1611251580528193], clopper: [0, 0.16843347098308536] },
  { successes: 1, trials: 29, wilson: [0.006113214292762653, 0.17175521879320282], clopper: [0.0008726468835799228, 0.17764429548872285] },
])('$successes of $trials', ({ successes, trials, wilson, clopper }) => {
  const both = [
    [wilsonInterval(successes, trials), wilson],
    [clopperPearsonInterval(successes, trials), clopper],
  ] as const;
  for (const [{ low, high }, [wantLow = 0, wantHigh = 0]] of both) {
    expect(Math.abs(low - wantLow)).toBeLessThanOrEqual(1e-10 * wantLow);
    expect(Math.abs(high / wantHigh - 1)).toBeLessThan(1e-10);
  }
});

describe('intervals of a share', () => {
  const counts = fc.integer({ min: 1, max: 5000 }).chain((trials) =>
    fc.record({
      trials: fc.constant(trials),
      successes: fc.oneof(fc.constantFrom(0, 1, trials - 1, trials), fc.nat(trials)).filter((s) => s >= 0 && s <= trials),
    }),
  );

  it('stay in 0..1, hold the share, mirror, and the exact one never covers too little', () => {
    fc.assert(
      fc.property(
        counts,
        fc.oneof(fc.constantFrom(0.5, 1.96), fc.double({ min: 0.1, max: 4, noNaN: true })),
        ({ successes, trials }, z) => {
          const score = (part: number, whole: number) => wilsonInterval(part, whole, z);
          for (const interval of [score, clopperPearsonInterval]) {
            const [one, other] = [interval(successes, trials), interval(trials - successes, trials)];
            const share = successes / trials;
            expect(0 <= one.low && one.low <= share && share <= one.high && one.high <= 1).toBe(true);
            expect(one.low).toBeCloseTo(1 - other.high, 9);
          }
        },
      ),
    );
    // Coverage of the exact interval at shares in the middle and near 0, summed over all outcomes of 12 trials.
    for (const p of [0.02, 0.3, 0.5]) {
      let [covered, chance] = [0, (1 - p) ** 12];
      for (let s = 0; s <= 12; s++) {
        const { low, high } = clopperPearsonInterval(s, 12);
        if (low <= p && p <= high) covered += chance;
        chance *= ((12 - s) / (s + 1)) * (p / (1 - p));
      }
      expect(covered).toBeGreaterThanOrEqual(0.95);
    }
  });

  it('name what is out of range', () => {
    for (const interval of [wilsonInterval, clopperPearsonInterval]) {
      expect(() => interval(1, 0)).toThrow(/^trials/);
      expect(() => interval(3, 2)).toThrow(/^successes/);
      expect(() => interval(0.5, 2)).toThrow(/^successes/);
    }
    expect(() => wilsonInterval(1, 2, 0)).toThrow(/^z/);
    expect(() => clopperPearsonInterval(1, 2, 95)).toThrow(/^level/);
  });
});
