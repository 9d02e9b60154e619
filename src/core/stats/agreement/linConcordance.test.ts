import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { linConcordance } from './linConcordance.ts';

const reference = JSON.parse(readFileSync('test/reference/statistics/agreement.json', 'utf8')).cases[0];

// Own seeded simulation on the log scale; epiR 2.0.57 for R 4.2.2. Tolerance: 1e-12 relative.
test('two meters on the log scale', () => {
  const got = linConcordance(reference.dataset.meterA.map(Math.log), reference.dataset.meterB.map(Math.log));
  const { ccc, C_b, se, ci95_z } = reference.outputs.ccc;
  if (!got.ok) throw new Error(got.reason);
  const { concordance, biasCorrection, se: gotSe, interval } = got.value;
  const pairs: readonly [number | null | undefined, number][] = [
    [concordance, ccc],
    [biasCorrection, C_b],
    [gotSe, se],
    [interval?.low, ci95_z[0]],
    [interval?.high, ci95_z[1]],
  ];
  for (const [value, want] of pairs) expect(Math.abs((value ?? 0) / want - 1)).toBeLessThan(1e-12);
});

describe('linConcordance', () => {
  const value = fc.oneof(fc.constantFrom(0, 1, 2), fc.integer({ min: -50, max: 50 }));
  const pairs = fc.array(fc.tuple(value, value), { minLength: 2, maxLength: 10 });

  it('lies within -1..1, not above the correlation, and does not care who is first', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const [a, b] = [list.map(([x]) => x), list.map(([, y]) => y)];
        const [got, swapped] = [linConcordance(a, b), linConcordance(b, a)];
        expect(got.ok).toBe(swapped.ok);
        if (!got.ok || !swapped.ok) {
          expect(new Set([...a, ...b]).size).toBe(1);
          return;
        }
        const { concordance, biasCorrection, se, interval } = got.value;
        expect(concordance).toBeCloseTo(swapped.value.concordance, 12);
        expect(Math.abs(concordance)).toBeLessThanOrEqual(biasCorrection + 1e-12);
        expect(biasCorrection).toBeLessThanOrEqual(1 + 1e-12);
        if (se !== null) expect(se).toBeGreaterThanOrEqual(0);
        if (interval === null) return;
        expect(interval.low).toBeLessThanOrEqual(concordance);
        expect(interval.high).toBeGreaterThanOrEqual(concordance);
        expect(interval.low).toBeGreaterThanOrEqual(-1);
        expect(interval.high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('full agreement has no interval; a shift alone lowers it', () => {
    expect(linConcordance([1, 2, 3], [1, 2, 3])).toMatchObject({ ok: true, value: { concordance: 1, se: 0, interval: null } });
    // Means differ by 1, variances 2/3: 2 * 2/3 / (4/3 + 1).
    const shifted = linConcordance([1, 2, 3], [2, 3, 4]);
    expect(shifted.ok && shifted.value.concordance).toBeCloseTo(4 / 7, 14);
  });

  it('says why there is none', () => {
    expect(linConcordance([1], [1])).toEqual({ ok: false, reason: 'too-few' });
    expect(linConcordance([0.1, 0.1, 0.1], [0.1, 0.1, 0.1])).toEqual({ ok: false, reason: 'no-spread' });
    expect(linConcordance([1, 1], [2, 2])).toMatchObject({ ok: true, value: { concordance: 0, interval: null } });
    expect(() => linConcordance([1, 2], [1])).toThrow(/^b must/);
  });
});
