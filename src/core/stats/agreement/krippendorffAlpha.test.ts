import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type AlphaMetric, krippendorffAlpha } from './krippendorffAlpha.ts';

const { cases } = JSON.parse(readFileSync('test/reference/statistics/raters.json', 'utf8'));
const reference = cases.find(({ id }: { id: string }) => id === 'sim_krippendorff_missing');
const ALL: readonly AlphaMetric[] = ['nominal', 'ordinal', 'interval', 'ratio'];

// Own seeded simulation, five raters with ratings missing; an independent program in R 4.2.2. Tolerance: 1e-12 relative.
test.each(ALL)('five raters, %s', (metric) => {
  const got = krippendorffAlpha(reference.dataset.observers, metric);
  expect(got.ok && Math.abs(got.value.alpha / reference.outputs[metric] - 1)).toBeLessThan(1e-12);
});

describe('krippendorffAlpha', () => {
  const rating = fc.oneof(fc.constantFrom(null, 0, 0), fc.integer({ min: 0, max: 4 }));
  const sets = fc
    .integer({ min: 1, max: 8 })
    .chain((units) => fc.array(fc.array(rating, { minLength: units, maxLength: units }), { minLength: 2, maxLength: 4 }));

  it('is at most 1, and the order of raters and units does not matter', () => {
    fc.assert(
      fc.property(sets, fc.constantFrom(...ALL), (ratings, metric) => {
        const got = krippendorffAlpha(ratings, metric);
        const turned = krippendorffAlpha(
          [...ratings].reverse().map((rater) => [...rater].reverse()),
          metric,
        );
        expect(turned.ok).toBe(got.ok);
        if (!got.ok || !turned.ok) return;
        expect(got.value.alpha).toBeCloseTo(turned.value.alpha, 12);
        expect(got.value.alpha).toBeLessThanOrEqual(1);
        expect(got.value.expectedDisagreement).toBeGreaterThan(0);
      }),
    );
  });

  it('is the same for the definition by all pairs, unit by unit (nominal)', () => {
    fc.assert(
      fc.property(sets, (ratings) => {
        const got = krippendorffAlpha(ratings, 'nominal');
        if (!got.ok) return;
        const units = (ratings[0] ?? []).map((_, u) => ratings.flatMap((rater) => rater[u] ?? [])).filter((unit) => unit.length > 1);
        const all = units.flat();
        const differ = (list: readonly number[]) => list.reduce((sum, x) => sum + list.filter((y) => y !== x).length, 0);
        const observed = units.reduce((sum, unit) => sum + differ(unit) / (unit.length - 1), 0) / all.length;
        const expected = differ(all) / (all.length * (all.length - 1));
        expect(got.value.alpha).toBeCloseTo(1 - observed / expected, 12);
      }),
    );
  });

  it('says why there is none, and names the rating', () => {
    expect(
      krippendorffAlpha(
        [
          [1, null],
          [null, 2],
        ],
        'nominal',
      ),
    ).toEqual({ ok: false, reason: 'no-pairs' });
    expect(krippendorffAlpha([[], []], 'nominal')).toEqual({ ok: false, reason: 'no-pairs' });
    expect(
      krippendorffAlpha(
        [
          [3, 3],
          [3, 3],
        ],
        'interval',
      ),
    ).toEqual({ ok: false, reason: 'one-value' });
    expect(
      krippendorffAlpha(
        [
          [0, 0],
          [-0, 0],
        ],
        'ratio',
      ),
    ).toEqual({ ok: false, reason: 'one-value' });
    expect(() => krippendorffAlpha([[1, 2]], 'nominal')).toThrow(/^ratings must/);
    expect(() => krippendorffAlpha([[1, 2], [1]], 'nominal')).toThrow(/^ratings\.1 must/);
    expect(() =>
      krippendorffAlpha(
        [
          [1, 2],
          [1, Number.NaN],
        ],
        'nominal',
      ),
    ).toThrow(/^ratings\.1\.1/);
    expect(() =>
      krippendorffAlpha(
        [
          [1, 2],
          [-1, 2],
        ],
        'ratio',
      ),
    ).toThrow(/^ratings\.1\.0/);
  });
});
