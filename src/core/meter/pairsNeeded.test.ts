import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { comparePairs, FEWEST_PAIRS } from './comparePairs.ts';
import { MOST_PAIRS_PLANNED, pairsForSame, pairsForWidth } from './pairsNeeded.ts';

const STUDIES = 2000;

/** Studies of two things that are the same, each with so many pairs. */
function simulate(pairs: number, { sdLogSingle, isKnown }: { sdLogSingle: number; isKnown: boolean }, withinFraction: number) {
  const { normal } = seededRandom(97);
  let [same, halfWidth] = [0, 0];
  for (let study = 0; study < STUDIES; study++) {
    const reading = () => Math.exp(8 + sdLogSingle * normal());
    const list = Array.from({ length: pairs }, () => ({ oldRlu: reading(), newRlu: reading() }));
    const got = comparePairs({ pairs: list, withinFraction, ...(isKnown && { knownSdLog: sdLogSingle }) });
    if (!got.ok) throw new Error(got.reason);
    if (got.value.verdict === 'same-within') same++;
    halfWidth += Math.log(got.value.ratio.high / got.value.ratio.low) / 2;
  }
  return { share: same / STUDIES, halfWidth: halfWidth / STUDIES };
}

// Tolerance: 2 % of the width; with known noise 1 in 40 studies scatters more than it allows and is a little wider.
test.each([
  { sdLogSingle: 0.15, isKnown: false, halfWidthFraction: 0.1 },
  { sdLogSingle: 0.3, isKnown: false, halfWidthFraction: 0.6 },
  { sdLogSingle: 0.15, isKnown: true, halfWidthFraction: 0.1 },
])('the width that is promised is the width that is found: %j', ({ halfWidthFraction, ...noise }) => {
  const plan = pairsForWidth(noise, halfWidthFraction);
  if (!plan.ok) throw new Error(plan.reason);
  const { pairs, expectedFraction } = plan.value;
  expect(expectedFraction).toBeLessThanOrEqual(halfWidthFraction);
  expect(Math.abs(simulate(pairs, noise, 0.2).halfWidth / Math.log1p(expectedFraction) - 1)).toBeLessThan(0.02);
});

// Tolerance: 0.04, formula against 2,000 studies (standard error 0.009).
test.each([
  { sdLogSingle: 0.15, isKnown: false, withinFraction: 0.2, chance: 0.8 },
  { sdLogSingle: 0.15, isKnown: true, withinFraction: 0.2, chance: 0.9 },
])('the chance to say same is the one that is promised: %j', ({ withinFraction, chance, ...noise }) => {
  const plan = pairsForSame(noise, { withinFraction, chance });
  if (!plan.ok) throw new Error(plan.reason);
  const { share } = simulate(plan.value.pairs, noise, withinFraction);
  expect(share).toBeGreaterThan(chance - 0.04);
  expect(share).toBeLessThan(chance + 0.08);
});

describe('pairs needed', () => {
  const sd = fc.oneof(fc.constantFrom(0.001, 3), fc.double({ min: 0.01, max: 1, noNaN: true }));
  const width = fc.oneof(fc.constantFrom(0.001, 5), fc.double({ min: 0.02, max: 1, noNaN: true }));

  it('rise with the noise, fall with the width, and stay between five and the most', () => {
    fc.assert(
      fc.property(sd, width, fc.boolean(), (sdLogSingle, fraction, isKnown) => {
        const plans = [
          [pairsForWidth({ sdLogSingle, isKnown }, fraction), pairsForWidth({ sdLogSingle: 1.5 * sdLogSingle, isKnown }, fraction)],
          [pairsForWidth({ sdLogSingle, isKnown }, 1.5 * fraction), pairsForWidth({ sdLogSingle, isKnown }, fraction)],
        ] as const;
        for (const [fewer, more] of plans) {
          if (!fewer.ok) expect(more.ok).toBe(false);
          if (!fewer.ok || !more.ok) continue;
          expect(fewer.value.pairs).toBeLessThanOrEqual(more.value.pairs);
          expect(fewer.value.pairs >= FEWEST_PAIRS && more.value.pairs <= MOST_PAIRS_PLANNED).toBe(true);
        }
      }),
    );
  });

  it('says when the noise is too much, and names what is out of range', () => {
    expect(pairsForWidth({ sdLogSingle: 2 }, 0.01)).toEqual({ ok: false, reason: 'too-noisy' });
    expect(pairsForSame({ sdLogSingle: 2 }, { withinFraction: 0.01, chance: 0.8 })).toEqual({ ok: false, reason: 'too-noisy' });
    expect(() => pairsForWidth({ sdLogSingle: 0 }, 0.1)).toThrow(/^sdLogSingle/);
    expect(() => pairsForWidth({ sdLogSingle: 0.1 }, 0)).toThrow(/^halfWidthFraction/);
    expect(() => pairsForSame({ sdLogSingle: 0.1 }, { withinFraction: 0.1, chance: 1 })).toThrow(/^chance/);
  });
});
