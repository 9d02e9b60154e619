import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { comparePairs, FEWEST_PAIRS, type ReadingPair } from './comparePairs.ts';

const get = (...args: Parameters<typeof comparePairs>) => {
  const result = comparePairs(...args);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};
const pairsOf = (ratios: readonly number[]): ReadingPair[] =>
  ratios.map((ratio, i) => ({ oldRlu: 500 * (i + 1), newRlu: 500 * (i + 1) * ratio }));

describe('comparePairs', () => {
  it('says same only when the whole interval lies within the limits, differs only when it lies outside', () => {
    const close = pairsOf([0.98, 1.02, 1.01, 0.97, 1.03, 1]);
    expect(get({ pairs: close, withinFraction: 0.1 }).verdict).toBe('same-within');
    expect(get({ pairs: close, withinFraction: 0.01 }).verdict).toBe('too-few');
    expect(get({ pairs: pairsOf([1.48, 1.52, 1.5, 1.55, 1.45]), withinFraction: 0.2 }).verdict).toBe('differs');
    // As far down as up: 1 / 1.2 = 0.83, and 0.81 lies outside.
    expect(get({ pairs: pairsOf([0.81, 0.812, 0.808, 0.81, 0.811]), withinFraction: 0.2 }).verdict).toBe('differs');
    expect(get({ pairs: pairsOf([0.5, 2, 0.6, 1.7, 1]), withinFraction: 0.2 }).verdict).toBe('too-few');
  });

  it('gives the geometric mean of the ratios; exchanging old and new turns everything over', () => {
    const rlu = fc.oneof(fc.constantFrom(1, 40, 60_000), fc.integer({ min: 1, max: 60_000 }));
    const pairs = fc.array(fc.record({ oldRlu: rlu, newRlu: rlu }), { minLength: FEWEST_PAIRS, maxLength: 15 });
    fc.assert(
      fc.property(pairs, fc.option(fc.constantFrom(0.05, 0.3), { nil: undefined }), (list, knownSdLog) => {
        const turned = list.map(({ oldRlu, newRlu }) => ({ oldRlu: newRlu, newRlu: oldRlu }));
        const [got, other] = [
          comparePairs({ pairs: list, withinFraction: 0.2, knownSdLog }),
          comparePairs({ pairs: turned, withinFraction: 0.2, knownSdLog }),
        ];
        expect(other.ok).toBe(got.ok);
        if (!got.ok || !other.ok) return;
        const { ratio, verdict, noise } = got.value;
        const logMean = list.reduce((sum, p) => sum + Math.log(p.newRlu / p.oldRlu), 0) / list.length;
        expect(Math.log(ratio.estimate)).toBeCloseTo(logMean, 9);
        expect(ratio.low * other.value.ratio.high).toBeCloseTo(1, 9);
        expect(other.value.verdict).toBe(verdict);
        expect(other.value.noise).toBe(noise);
      }),
    );
  });

  it('holds the true ratio in 95 of 100 studies, and says same of a ratio at the limit in 2.5 of 100 at most', () => {
    const { normal } = seededRandom(41);
    const studies = 2000;
    let [held, same] = [0, 0];
    for (let study = 0; study < studies; study++) {
      const pairs = Array.from({ length: 8 }, () => ({ oldRlu: Math.exp(8 + 0.1 * normal()), newRlu: 1.2 * Math.exp(8 + 0.1 * normal()) }));
      const { ratio, verdict } = get({ pairs, withinFraction: 0.2 });
      if (ratio.low <= 1.2 && 1.2 <= ratio.high) held++;
      if (verdict === 'same-within') same++;
    }
    // Three standard errors of shares of 0.95 and 0.025 in 2,000.
    expect(Math.abs(held / studies - 0.95)).toBeLessThan(0.0147);
    expect(same / studies).toBeLessThan(0.025 + 0.0105);
  });

  it('uses the known noise until the pairs scatter more than it allows', () => {
    const pairs = pairsOf([0.98, 1.02, 1.01, 0.97, 1.03]);
    const known = get({ pairs, withinFraction: 0.2, knownSdLog: 0.02 });
    expect(known).toMatchObject({ noise: 'known', scattersMore: false });
    expect(Math.log(known.ratio.high / known.ratio.estimate)).toBeCloseTo((1.959964 * Math.SQRT2 * 0.02) / Math.sqrt(5), 6);
    expect(get({ pairs: pairsOf([0.8, 1.3, 0.7, 1.2, 1]), withinFraction: 0.2, knownSdLog: 0.02 })).toMatchObject({
      noise: 'own-pairs',
      scattersMore: true,
    });
  });

  it('leaves pairs at a limit out and counts them', () => {
    const pairs: ReadingPair[] = [...pairsOf([1, 1.1, 0.9, 1, 1.05]), { oldRlu: 60_000, newRlu: 55_000, oldBound: 'at-least' }];
    expect(get({ pairs, withinFraction: 0.2 })).toMatchObject({ pairs: 5, leftOut: 1 });
    expect(comparePairs({ pairs: pairs.slice(1), withinFraction: 0.2 })).toEqual({ ok: false, reason: 'too-few-pairs' });
  });

  it('says why there is nothing to say, and names the reading', () => {
    expect(comparePairs({ pairs: [], withinFraction: 0.2 })).toEqual({ ok: false, reason: 'too-few-pairs' });
    expect(comparePairs({ pairs: pairsOf([1, 1, 1, 1, 1]), withinFraction: 0.2 })).toEqual({ ok: false, reason: 'no-spread' });
    expect(get({ pairs: pairsOf([1, 1, 1, 1, 1]), withinFraction: 0.2, knownSdLog: 0.1 }).verdict).toBe('same-within');
    expect(() => comparePairs({ pairs: [{ oldRlu: 0, newRlu: 5 }], withinFraction: 0.2 })).toThrow(/^pairs\.0\.oldRlu/);
    expect(() => comparePairs({ pairs: [{ oldRlu: 5, newRlu: Number.NaN }], withinFraction: 0.2 })).toThrow(/^pairs\.0\.newRlu/);
    expect(() => comparePairs({ pairs: [], withinFraction: 0 })).toThrow(/^withinFraction/);
    expect(() => comparePairs({ pairs: [], withinFraction: 0.2, knownSdLog: -1 })).toThrow(/^knownSdLog/);
  });
});
