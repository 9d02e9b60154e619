import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { compareLots, type LotComparison, type LotsCompared, swabsForLotComparison } from './compareLots.ts';

const compared = (given: LotsCompared): LotComparison => {
  const result = compareLots(given);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};
const plain = { sdLn: 0.1, allowedFraction: 0.3 };

test('ratio, interval and target of the new lot', () => {
  const got = compared({ ...plain, oldRlu: [1000, 1000], newRlu: [1100, 1100], oldTargetLn: Math.log(900) });
  expect(got.ratio).toBeCloseTo(1.1, 12);
  // 1.644854 · 0.1 · sqrt(1/2 + 1/2) = 0.1644854 on the log scale.
  expect(got.ratioInterval.high).toBeCloseTo(1.1 * Math.exp(0.1644853627), 9);
  expect(got.ratioInterval.low).toBeCloseTo(1.1 / Math.exp(0.1644853627), 9);
  expect(Math.exp(got.target?.meanLn ?? 0)).toBeCloseTo(990, 8);
  expect(got.target).toMatchObject({ sdLn: 0.1, count: 2 });
  expect(compared({ ...plain, oldRlu: [1], newRlu: [1] }).target).toBe(undefined);
  // sqrt(1/4 + 1) instead of sqrt(1): each lot brings its own number of swabs.
  const uneven = compared({ ...plain, oldRlu: [1, 1, 1, 1], newRlu: [1] });
  expect(Math.log(uneven.ratioInterval.high)).toBeCloseTo(0.1644853627 * Math.sqrt(1.25), 9);
});

/** Share of 4,000 seeded comparisons with this verdict. */
function shareOf(verdict: LotComparison['verdict'], trueRatio: number, swabs: number, sdLn: number): number {
  const { normal } = seededRandom(88);
  const draw = (level: number) => Array.from({ length: swabs }, () => level * Math.exp(sdLn * normal()));
  const verdicts = Array.from(
    { length: 4000 },
    () => compared({ sdLn, allowedFraction: 0.3, oldRlu: draw(3000), newRlu: draw(3000 * trueRatio) }).verdict,
  );
  return verdicts.filter((v) => v === verdict).length / verdicts.length;
}

// 4,000 seeded comparisons: 5 in 100 have a standard error of 0.0035.
describe('each verdict errs at most 5 times in 100', () => {
  test.each([1.3, 1 / 1.3])('on the limit, %s', (ratio) => {
    expect(shareOf('agrees', ratio, 8, 0.15)).toBeLessThan(0.05 + 3 * 0.0035);
    expect(shareOf('differs', ratio, 8, 0.15)).toBeLessThan(0.05 + 3 * 0.0035);
    expect(shareOf('differs', ratio, 8, 0.15)).toBeGreaterThan(0.05 - 3 * 0.0035);
  });
  test('a lot half as strong is seen', () => expect(shareOf('differs', 0.5, 4, 0.15)).toBeGreaterThan(0.9));
});

test('the number of swabs finds equal lots to agree 9 times in 10, and one swab fewer does not', () => {
  const swabs = swabsForLotComparison(0.15, 0.3);
  expect(swabs).toBe(8);
  expect(shareOf('agrees', 1, swabs, 0.15)).toBeGreaterThan(0.9);
  expect(shareOf('agrees', 1, swabs - 1, 0.15)).toBeLessThan(0.9);
});

it('is the same the other way round', () => {
  const [there, back] = [compared({ ...plain, oldRlu: [5, 7], newRlu: [9] }), compared({ ...plain, oldRlu: [9], newRlu: [5, 7] })];
  expect(there.ratio * back.ratio).toBeCloseTo(1, 12);
  expect(there.verdict).toBe(back.verdict);
});

test('says what is missing, and names what is no reading', () => {
  expect(compareLots({ ...plain, oldRlu: [], newRlu: [1] })).toEqual({ ok: false, reason: 'too-few-swabs' });
  expect(() => compareLots({ ...plain, oldRlu: [1], newRlu: [2, 0] })).toThrow(/^newRlu.1 must/);
  expect(() => compareLots({ ...plain, sdLn: 0, oldRlu: [1], newRlu: [2] })).toThrow(/^sdLn must/);
  expect(() => swabsForLotComparison(0.1, 0)).toThrow(/^allowedFraction must/);
});
