import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { compareLots } from './compareLots.ts';
import { compareMeters } from './compareMeters.ts';
import type { ReadingPair } from './comparePairs.ts';

/** Solutions from low to high, noise of 5 % on each reading; new = factor x old ^ slope about the middle solution. */
function study({ factor = 1, slope = 1, levels = [200, 700, 2000, 6000, 20_000], seed = 5 }): ReadingPair[] {
  const { normal } = seededRandom(seed);
  return levels
    .flatMap((rlu) => [rlu, rlu, rlu])
    .map((rlu) => ({
      oldRlu: rlu * Math.exp(0.05 * normal()),
      newRlu: factor * 2000 * (rlu / 2000) ** slope * Math.exp(0.05 * normal()),
    }));
}
const get = (pairs: readonly ReadingPair[], withinFraction = 0.2) => {
  const result = compareMeters({ pairs, withinFraction });
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};

describe('compareMeters', () => {
  it('the same meter twice is the same at every level', () => {
    const got = get(study({}));
    expect(got).toMatchObject({ verdict: 'same-within', because: 'ratio', level: { changes: false } });
    expect(got.concordance).toBeGreaterThan(0.99);
    expect(got.level?.slopeInterval.low).toBeLessThan(1);
    expect(got.level?.slopeInterval.high).toBeGreaterThan(1);
  });

  it('another scale differs by its ratio, evenly', () => {
    expect(get(study({ factor: 2.5 }))).toMatchObject({ verdict: 'differs', because: 'ratio', level: { changes: false } });
  });

  it('a ratio that changes with the level differs though it is 1 in the middle', () => {
    const got = get(study({ slope: 0.8 }));
    expect(Math.abs(Math.log(got.ratio.estimate))).toBeLessThan(0.1);
    expect(got).toMatchObject({ verdict: 'differs', because: 'level', level: { changes: true } });
    expect(got.level?.slope).toBeCloseTo(0.8, 1);
    // 200 / 2000 and 20,000 / 2000 to the power of -0.2.
    expect(got.level?.ratioAtLowest).toBeCloseTo(10 ** 0.2, 0);
    expect(got.level?.ratioAtHighest).toBeCloseTo(10 ** -0.2, 0);
    expect(get(study({ slope: 2 })).level?.changes).toBe(true);
  });

  it('one solution says nothing of other levels', () => {
    expect(get(study({ levels: [2000, 2000, 2000] }))).toMatchObject({ level: null, verdict: 'same-within' });
  });

  it('passes the reasons on', () => {
    expect(compareMeters({ pairs: study({}).slice(0, 4), withinFraction: 0.2 })).toEqual({ ok: false, reason: 'too-few-pairs' });
  });
});

describe('compareLots', () => {
  it('says what the new lot reads at the cut-off', () => {
    const got = compareLots({ pairs: study({ factor: 1.1 }), withinFraction: 0.2 }, 4200);
    for (const end of ['estimate', 'low', 'high'] as const)
      expect(got.ok && got.value.atCutoffRlu[end]).toBeCloseTo(4200 * (got.ok ? got.value.ratio[end] : 0), 9);
    expect(got.ok && Math.abs(got.value.atCutoffRlu.estimate / 4620 - 1)).toBeLessThan(0.05);
    expect(got).toMatchObject({ ok: true, value: { verdict: 'same-within' } });
    expect(compareLots({ pairs: [], withinFraction: 0.2 }, 4200)).toEqual({ ok: false, reason: 'too-few-pairs' });
    expect(() => compareLots({ pairs: [], withinFraction: 0.2 }, 0)).toThrow(/^cutoffRlu/);
  });
});
