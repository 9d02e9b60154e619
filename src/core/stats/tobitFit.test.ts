import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { censoredNormalFit } from './censoredNormalFit.ts';
import { normalLogCdf, normalLogPdf } from './normal.ts';
import { type TobitRow, tobitFit } from './tobitFit.ts';

const WORD = { left: 'at-most', right: 'at-least', none: 'exact' } as const;
const { dataset, outputs } = JSON.parse(readFileSync('test/reference/statistics/tobit.json', 'utf8')) as {
  dataset: { arm: number[]; rlu: number[]; censor: (keyof typeof WORD)[] };
  outputs: { intercept: number; arm: number; sigma: number; se: [number, number]; loglik_R: number };
};

// Own seeded simulation, fitted by survreg of the R package survival 3.5-3 (test/reference/statistics/tobit.json). Tolerance: 1e-6.
test('two arms with readings at the limit of the meter', () => {
  const fit = tobitFit(
    dataset.rlu.map((rlu, i) => ({ value: Math.log(rlu), bound: WORD[dataset.censor[i] ?? 'none'], predictors: [dataset.arm[i] ?? 0] })),
  );
  expect(fit).toMatchObject({ ok: true });
  if (!fit.ok) return;
  expect(fit.value.intercept.estimate / outputs.intercept).toBeCloseTo(1, 6);
  expect(fit.value.slopes[0]?.estimate).toBeCloseTo(outputs.arm, 6);
  expect(fit.value.sd / outputs.sigma).toBeCloseTo(1, 6);
  expect(fit.value.intercept.se / outputs.se[0]).toBeCloseTo(1, 6);
  expect((fit.value.slopes[0]?.se ?? 0) / outputs.se[1]).toBeCloseTo(1, 6);
  // There the density is on the RLU scale: it differs by the sum of the logs of the exact readings.
  const jacobian = dataset.rlu.reduce((sum, rlu, i) => sum + (dataset.censor[i] === 'none' ? Math.log(rlu) : 0), 0);
  expect((fit.value.logLikelihood - jacobian) / outputs.loglik_R).toBeCloseTo(1, 9);
});

/** The log-likelihood from its definition. */
function logLikelihood(rows: readonly TobitRow[], [intercept, slope, sd]: readonly [number, number, number]): number {
  return rows.reduce((sum, { value, bound, predictors: [x = 0] }) => {
    const z = (value - intercept - slope * x) / sd;
    return sum + (bound === 'exact' ? normalLogPdf(z) - Math.log(sd) : normalLogCdf(bound === 'at-most' ? z : -z));
  }, 0);
}

const row = fc.record({
  value: fc.oneof(
    fc.integer({ min: 0, max: 3 }),
    fc.integer({ min: -2000, max: 2000 }).map((v) => v / 100),
  ),
  bound: fc.constantFrom('exact' as const, 'exact' as const, 'at-most' as const, 'at-least' as const),
  predictors: fc.tuple(
    fc.oneof(
      fc.constantFrom(0, 1),
      fc.integer({ min: -30, max: 30 }).map((v) => v / 10),
    ),
  ),
});
const rows = fc.array(row, { minLength: 1, maxLength: 14 });

describe('tobitFit', () => {
  it('is the top of the likelihood: nothing near it is higher, and its value is the likelihood there', () => {
    fc.assert(
      fc.property(rows, (set) => {
        const fit = tobitFit(set);
        fc.pre(fit.ok);
        const { intercept, slopes, sd, logLikelihood: top } = fit.value;
        const [a, b] = [intercept.estimate, slopes[0]?.estimate ?? 0];
        const slack = 1e-8 * (1 + Math.abs(top));
        expect(Math.abs(logLikelihood(set, [a, b, sd]) - top)).toBeLessThan(slack);
        for (const step of [-0.5, -1e-3, 1e-3, 0.5])
          for (const near of [
            [a + step * sd, b, sd],
            [a, b + step * sd, sd],
            [a, b, sd * Math.exp(step)],
            [a + step * sd, b - step * sd, sd],
          ] as const) {
            expect(logLikelihood(set, near)).toBeLessThan(top + slack);
          }
      }),
      { numRuns: 60 },
    );
  });

  it('is the censored normal fit when there is no predictor', () => {
    fc.assert(
      fc.property(rows, (set) => {
        const [fit, plain] = [tobitFit(set.map((r) => ({ ...r, predictors: [] }))), censoredNormalFit(set)];
        expect(fit.ok).toBe(plain.ok);
        if (!fit.ok || !plain.ok) return;
        expect(fit.value.intercept.estimate).toBeCloseTo(plain.value.mean, 6);
        expect(fit.value.sd / plain.value.sd).toBeCloseTo(1, 7);
        expect(fit.value.intercept.se / plain.value.meanSe).toBeCloseTo(1, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('does not mind the unit and the zero of a predictor', () => {
    const set = [1, 4, 2, 6, 9, 5].map((value, i) => ({
      value,
      bound: i === 4 ? ('at-least' as const) : ('exact' as const),
      predictors: [i],
    }));
    const [plain, moved] = [tobitFit(set), tobitFit(set.map((r, i) => ({ ...r, predictors: [1000 + 60 * i] })))];
    if (!plain.ok || !moved.ok) throw new Error('no fit');
    expect((moved.value.slopes[0]?.estimate ?? 0) * 60).toBeCloseTo(plain.value.slopes[0]?.estimate ?? 0, 9);
    expect((moved.value.slopes[0]?.se ?? 0) * 60).toBeCloseTo(plain.value.slopes[0]?.se ?? 0, 9);
    expect(moved.value.sd).toBeCloseTo(plain.value.sd, 9);
  });

  const exact = (value: number, ...predictors: number[]) => ({ value, bound: 'exact' as const, predictors });
  const atMost = (value: number, ...predictors: number[]) => ({ value, bound: 'at-most' as const, predictors });
  test.each([
    { what: 'only upper bounds', set: [atMost(1, 0), atMost(2, 1)], reason: 'all-at-most' },
    { what: 'only lower bounds', set: [{ value: 1, bound: 'at-least' as const, predictors: [1] }], reason: 'all-at-least' },
    { what: 'a predictor that never changes', set: [exact(1, 5), exact(2, 5), exact(4, 5)], reason: 'collinear' },
    { what: 'two predictors that are one', set: [exact(1, 1, 2), exact(2, 2, 4), exact(4, 3, 6), exact(1, 4, 8)], reason: 'collinear' },
    { what: 'one value again and again', set: [exact(3), exact(3), exact(3)], reason: 'no-spread' },
    { what: 'a line through every value', set: [exact(3, 1), exact(5, 2), exact(7, 3), atMost(20, 4)], reason: 'no-spread' },
    {
      what: 'a group of bounds only',
      set: [exact(1, 0), exact(2, 0), exact(3, 0), atMost(0, 1), atMost(0, 1)],
      reason: 'no-finite-estimate',
    },
  ])('has no estimate: $what', ({ set, reason }) => expect(tobitFit(set)).toEqual({ ok: false, reason }));

  it('names what is wrong', () => {
    expect(() => tobitFit([])).toThrow(/^rows must/);
    expect(() => tobitFit([exact(1, 1), exact(1)])).toThrow(/^rows.1.predictors must/);
    expect(() => tobitFit([exact(1, Number.NaN)])).toThrow(/^rows.0.predictors.0 must/);
    expect(() => tobitFit([exact(Number.NaN)])).toThrow(/^rows.0.value must/);
  });
});
