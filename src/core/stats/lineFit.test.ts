import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { correctDigits } from '../../../test/reference/statistics/nistSets.ts';
import { type LineFit, lineFit } from './lineFit.ts';

const { norris } = JSON.parse(readFileSync('test/reference/statistics/dilution.json', 'utf8'));

// NIST StRD, set Norris, certified values (test/reference/statistics/dilution.json). Tolerance: 12 correct digits.
test.each(['intercept', 'slope', 'interceptSe', 'slopeSe', 'residualSd', 'r2'] as const)('certified %s', (name) => {
  const fit = lineFit(norris.x, norris.y);
  expect(fit).toMatchObject({ ok: true });
  if (fit.ok) expect(correctDigits(fit.value[name], norris.certified[name])).toBeGreaterThan(12);
});

const lists = fc
  .array(fc.tuple(fc.oneof(fc.integer({ min: 0, max: 2 }), fc.double({ min: -9, max: 9, noNaN: true })), fc.integer({ min: -3, max: 3 })), {
    minLength: 3,
    maxLength: 12,
  })
  .map((pairs) => ({ x: pairs.map(([x]) => x), y: pairs.map(([, y]) => y) }));

it('leaves residuals that add up to 0 and do not lean on x, and its interval holds the slope', () => {
  fc.assert(
    fc.property(lists, ({ x, y }) => {
      const fit = lineFit(x, y);
      fc.pre(fit.ok && Math.max(...x) - Math.min(...x) > 1e-3);
      const { residuals, slope, slopeInterval, r2 } = (fit as { value: LineFit }).value;
      expect(residuals.reduce((sum, r) => sum + r, 0)).toBeCloseTo(0, 9);
      expect(residuals.reduce((sum, r, i) => sum + r * (x[i] ?? 0), 0)).toBeCloseTo(0, 8);
      expect(slopeInterval.low <= slope && slope <= slopeInterval.high).toBe(true);
      expect(r2).toBeGreaterThan(-1e-9);
      expect(r2).toBeLessThan(1 + 1e-9);
    }),
  );
});

test('says why there is no line', () => {
  expect(lineFit([1, 2], [1, 2])).toEqual({ ok: false, reason: 'too-few-points' });
  expect(lineFit([2, 2, 2], [1, 2, 3])).toEqual({ ok: false, reason: 'one-level' });
  expect(lineFit([1, 2, 3], [5, 5, 5])).toEqual({ ok: false, reason: 'no-spread' });
  expect(() => lineFit([1, 2], [1])).toThrow(/^y must/);
  expect(() => lineFit([1, Number.NaN], [1, 2])).toThrow(/^x.1 must/);
});
