import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { fleissKappa } from './fleissKappa.ts';

const { cases } = JSON.parse(readFileSync('test/reference/statistics/raters.json', 'utf8'));
const reference = cases.find(({ id }: { id: string }) => id === 'sim_fleiss');

// Own seeded simulation, 40 units, 5 raters; formulas in R 4.2.2. Tolerance: 1e-12 relative.
test('five raters', () => {
  const got = fleissKappa(reference.dataset.counts);
  if (!got.ok) throw new Error(got.reason);
  const { kappa, Pbar, Pe, se0, z, per_category } = reference.outputs;
  const pairs: readonly [number | null, number][] = [
    [got.value.kappa, kappa],
    [got.value.observed, Pbar],
    [got.value.expected, Pe],
    [got.value.nullSe, se0],
    [got.value.z, z],
    ...got.value.byCategory.map((value, j): [number | null, number] => [value, per_category[j]]),
  ];
  for (const [value, want] of pairs) expect(Math.abs((value ?? 0) / want - 1)).toBeLessThan(1e-12);
});

describe('fleissKappa', () => {
  const RATERS = 4;
  // Half of the units on the edges: all raters in one category.
  const unit = fc.oneof(
    fc.constantFrom([RATERS, 0, 0], [0, RATERS, 0]),
    fc.tuple(fc.nat(RATERS), fc.nat(RATERS)).map(([x, y]) => {
      const first = Math.min(x, y);
      return [first, Math.max(x, y) - first, RATERS - Math.max(x, y)];
    }),
  );

  it('lies between -1 / (raters - 1) and 1, and the order of units and categories does not matter', () => {
    fc.assert(
      fc.property(fc.array(unit, { minLength: 2, maxLength: 12 }), (counts) => {
        const got = fleissKappa(counts);
        const turned = fleissKappa([...counts].reverse().map((row) => [...row].reverse()));
        expect(turned.ok).toBe(got.ok);
        if (!got.ok || !turned.ok) return;
        expect(got.value.kappa).toBeCloseTo(turned.value.kappa, 12);
        expect(got.value.kappa).toBeLessThanOrEqual(1);
        expect(got.value.kappa).toBeGreaterThanOrEqual(-1 / (RATERS - 1) - 1e-12);
        expect(got.value.nullSe > 0 && Number.isFinite(got.value.z)).toBe(true);
      }),
    );
  });

  it('says why there is none, and names the row', () => {
    expect(fleissKappa([[2, 1]])).toEqual({ ok: false, reason: 'too-few-units' });
    expect(
      fleissKappa([
        [3, 0],
        [3, 0],
      ]),
    ).toEqual({ ok: false, reason: 'one-category' });
    expect(
      fleissKappa([
        [3, 0, 0],
        [0, 3, 0],
      ]),
    ).toMatchObject({ ok: true, value: { kappa: 1, byCategory: [1, 1, null] } });
    expect(() => fleissKappa([])).toThrow(/^counts must/);
    expect(() =>
      fleissKappa([
        [3, 0],
        [2, 0],
      ]),
    ).toThrow(/^counts\.1 must have 3 raters/);
    expect(() =>
      fleissKappa([
        [3, 0],
        [2, 0, 1],
      ]),
    ).toThrow(/^counts\.1 must have 2 categories/);
    expect(() =>
      fleissKappa([
        [1, 0],
        [1, 0],
      ]),
    ).toThrow(/^counts\.0 must have at least two raters/);
    expect(() =>
      fleissKappa([
        [3, 0],
        [4, -1],
      ]),
    ).toThrow(/^counts\.1\.1/);
  });
});
