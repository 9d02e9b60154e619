import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { cohenKappa, type KappaWeights } from './cohenKappa.ts';

const { cases } = JSON.parse(readFileSync('test/reference/statistics/raters.json', 'utf8'));
const reference = cases.find(({ id }: { id: string }) => id === 'sim_cohen_r1_r2');
const ALL: readonly KappaWeights[] = ['none', 'linear', 'quadratic'];
const get = (...args: Parameters<typeof cohenKappa>) => {
  const result = cohenKappa(...args);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};

// Own seeded simulation; formulas in R 4.2.2 and vcd 1.4.11. Tolerance: 1e-12 relative.
test.each(ALL)('two raters, five categories, weights %s', (weights) => {
  const want = reference.outputs[weights];
  const got = get(reference.dataset.table, weights);
  const pairs: readonly [number | undefined, number][] = [
    [got.kappa, want.kappa],
    [got.se, want.ase],
    [got.observed, want.po],
    [got.expected, want.pe],
    [got.interval?.low, want.ci95[0]],
    [got.interval?.high, want.ci95[1]],
  ];
  for (const [value, expected] of pairs) expect(Math.abs((value ?? 0) / expected - 1)).toBeLessThan(1e-12);
});

describe('cohenKappa', () => {
  const count = fc.oneof(fc.constantFrom(0, 0, 1), fc.integer({ min: 0, max: 40 }));
  const tables = fc
    .integer({ min: 2, max: 5 })
    .chain((k) => fc.array(fc.array(count, { minLength: k, maxLength: k }), { minLength: k, maxLength: k }));

  it('stays at most 1, has a finite width, and does not care who is first', () => {
    fc.assert(
      fc.property(tables, fc.constantFrom(...ALL), (table, weights) => {
        const got = cohenKappa(table, weights);
        const swapped = cohenKappa(
          table.map((_, i) => table.map((row) => row[i] ?? 0)),
          weights,
        );
        expect(swapped.ok).toBe(got.ok);
        if (!got.ok || !swapped.ok) return;
        const { kappa, se, interval } = got.value;
        expect(kappa).toBeCloseTo(swapped.value.kappa, 10);
        expect(se).toBeCloseTo(swapped.value.se, 8);
        expect(kappa).toBeLessThanOrEqual(1 + 1e-12);
        expect(Number.isFinite(se) && se >= 0).toBe(true);
        if (interval !== null) expect(-1 <= interval.low && interval.low <= interval.high && interval.high <= 1).toBe(true);
      }),
    );
  });

  it('ten times the units leave kappa and shorten its standard error by the root of ten', () => {
    const table = reference.dataset.table as number[][];
    const [one, ten] = [
      get(table, 'linear'),
      get(
        table.map((row) => row.map((n) => 10 * n)),
        'linear',
      ),
    ];
    expect(ten.kappa).toBeCloseTo(one.kappa, 12);
    expect(one.se / ten.se).toBeCloseTo(Math.sqrt(10), 10);
  });

  it('with two categories all weights are one', () => {
    const table = [
      [11, 3],
      [5, 7],
    ];
    for (const weights of ALL) expect(get(table, weights).kappa).toBeCloseTo(get(table).kappa, 14);
  });

  it('full agreement is 1 and gives no width', () => {
    expect(
      get([
        [4, 0],
        [0, 3],
      ]),
    ).toMatchObject({ kappa: 1, se: 0, interval: null });
  });

  it('says why there is none, and names the cell', () => {
    expect(
      cohenKappa([
        [0, 0],
        [0, 0],
      ]),
    ).toEqual({ ok: false, reason: 'no-units' });
    expect(
      cohenKappa([
        [0, 0],
        [0, 9],
      ]),
    ).toEqual({ ok: false, reason: 'one-category' });
    expect(() =>
      cohenKappa([
        [1, 2, 3],
        [1, 2, 3],
      ]),
    ).toThrow(/^table\.0 must/);
    expect(() => cohenKappa([[1]])).toThrow(/^table must/);
    expect(() =>
      cohenKappa([
        [1, 2],
        [1.5, 2],
      ]),
    ).toThrow(/^table\.1\.0/);
    expect(() =>
      cohenKappa([
        [1, 2],
        [-1, 2],
      ]),
    ).toThrow(/^table\.1\.0/);
  });
});
