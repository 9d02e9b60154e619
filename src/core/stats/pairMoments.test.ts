import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairMoments } from './pairMoments.ts';

describe('pairMoments', () => {
  const value = fc.oneof(fc.constantFrom(0, 0.1, 1e9), fc.double({ min: -1e3, max: 1e3, noNaN: true }));
  const pairs = fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 10 });

  it('is the definition, and the same for both lists', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const [a, b] = [list.map(([x]) => x), list.map(([, y]) => y)];
        const [got, turned] = [pairMoments(a, b), pairMoments(b, a)];
        expect(turned).toEqual({ ...got, meanA: got.meanB, meanB: got.meanA, saa: got.sbb, sbb: got.saa });
        const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
        const products = a.reduce((sum, x, i) => sum + (x - mean(a)) * ((b[i] ?? 0) - mean(b)), 0);
        const scale = Math.sqrt(got.saa * got.sbb) + 1e-300;
        expect(Math.abs(got.sab - products) / (scale + 1)).toBeLessThan(1e-6);
      }),
    );
  });

  it('equal values leave exactly nothing, and a far level costs no digits', () => {
    expect(pairMoments([0.1, 0.1, 0.1], [0.7, 0.7, 0.7])).toMatchObject({ saa: 0, sbb: 0, sab: 0, meanA: 0.1, meanB: 0.7 });
    expect(pairMoments([1e9 + 1, 1e9 + 2, 1e9 + 3], [2e9, 2e9 + 2, 2e9 + 4])).toMatchObject({ saa: 2, sbb: 8, sab: 4 });
  });
});
