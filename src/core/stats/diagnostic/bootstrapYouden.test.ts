import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { seededUniform } from '../seededUniform.ts';
import { bootstrapYouden } from './bootstrapYouden.ts';
import { outcomeTable } from './outcomeTable.ts';
import { youdenCutoff } from './youdenCutoff.ts';

const reference = JSON.parse(readFileSync('test/reference/statistics/roc.json', 'utf8')).cases[0];
const { rlu, caries } = reference.dataset as { readonly rlu: readonly number[]; readonly caries: readonly number[] };
const withCaries = (yes: number) => rlu.filter((_, i) => caries[i] === yes);
const get = (...args: Parameters<typeof bootstrapYouden>) => {
  const result = bootstrapYouden(...args);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};

// Own seeded simulation, stratified resamples in R 4.2.2. Tolerance: 10 %, since both are random. The cut-offs of the resamples have a
// gap where the upper limit falls: three runs of 2,000 in R end at 2,544 to 2,587, one of 4,000 at 3,103.
test('readings of people with and without a lesion', () => {
  const table = outcomeTable(withCaries(1), withCaries(0));
  const got = get(table, { random: seededUniform(4) });
  const { cutoff_median, cutoff_pct95 } = reference.outputs.bootstrap_stratified_B4000;
  expect(got.resamples).toBe(2000);
  expect(Math.abs(got.medianCutoff / cutoff_median - 1)).toBeLessThan(0.1);
  expect(Math.abs(got.cutoffInterval.low / cutoff_pct95[0] - 1)).toBeLessThan(0.1);
  expect(got.cutoffInterval.high).toBeGreaterThan(0.9 * 2544);
  expect(got.cutoffInterval.high).toBeLessThan(1.1 * cutoff_pct95[1]);
  expect(get(table, { random: seededUniform(4) })).toEqual(got);
});

/** One resample done the long way: draw, sort anew, look for the best. */
function longWay(positives: readonly number[], negatives: readonly number[], random: () => number) {
  const draw = (from: readonly number[]) => {
    const sorted = [...from].sort((a, b) => a - b);
    return sorted.map(() => sorted[Math.floor(random() * sorted.length)] ?? Number.NaN);
  };
  const drawn = youdenCutoff(outcomeTable(draw(positives), draw(negatives)));
  if (!drawn.ok) throw new Error(drawn.reason);
  const { cutoff, index } = drawn.value;
  const share = (list: readonly number[]) => list.filter((x) => x >= cutoff).length / list.length;
  return { cutoff, optimism: index - (share(positives) - share(negatives)) };
}

describe('bootstrapYouden', () => {
  const value = fc.oneof(fc.constantFrom(0, 40), fc.integer({ min: 0, max: 8 }));
  const group = fc.array(value, { minLength: 1, maxLength: 12 });

  it('is what drawing, sorting and searching anew gives, ties and single cases too', () => {
    fc.assert(
      fc.property(group, group, fc.nat(), (positives, negatives, seed) => {
        const got = get(outcomeTable(positives, negatives), { random: seededUniform(seed), resamples: 1 });
        const want = longWay(positives, negatives, seededUniform(seed));
        expect(got.medianCutoff).toBe(want.cutoff);
        expect(got.optimism).toBeCloseTo(want.optimism, 12);
      }),
      { numRuns: 300 },
    );
  });

  it('the cut-off chosen on noise looks better than it is', () => {
    const random = seededUniform(9);
    const noise = () => Array.from({ length: 40 }, random);
    expect(get(outcomeTable(noise(), noise()), { random, resamples: 400 }).optimism).toBeGreaterThan(0.05);
  });

  it('says why there is none, and names what is out of range', () => {
    expect(bootstrapYouden(outcomeTable([], [1]), { random: seededUniform(1) })).toEqual({ ok: false, reason: 'no-positives' });
    expect(() => bootstrapYouden(outcomeTable([1], [1]), { random: seededUniform(1), resamples: 0 })).toThrow(/^resamples/);
    expect(() => bootstrapYouden(outcomeTable([1], [1]), { random: seededUniform(1), level: 1 })).toThrow(/^level/);
  });
});
