import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type CensoredValue, censoredNormalFit } from './censoredNormalFit.ts';
import { normalLogCdf, normalLogPdf } from './normal.ts';

/** The log-likelihood written out from its definition, without the solver's change of variables. */
function logLikelihood(values: readonly CensoredValue[], mean: number, sd: number): number {
  const part = ({ value, bound }: CensoredValue) => {
    const z = (value - mean) / sd;
    if (bound === 'exact') return normalLogPdf(z) - Math.log(sd);
    return normalLogCdf(bound === 'at-most' ? z : -z);
  };
  return values.reduce((sum, v) => sum + part(v), 0);
}

/** To three decimals: differences in the last digit of a double have no fit worth testing. */
const decimal = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => Math.round(1000 * x) / 1000);
const bounds = fc.constantFrom('exact' as const, 'at-most' as const, 'at-least' as const);
/** Half of the values sit on a few whole numbers, so that ties, equal bounds and degenerate sets are common. */
const values = fc.array(fc.record({ value: fc.oneof(fc.integer({ min: 0, max: 3 }), decimal(-20, 20)), bound: bounds }), {
  minLength: 1,
  maxLength: 12,
});

describe('censoredNormalFit', () => {
  it('is the top of the likelihood: nothing near it is higher, and its value is the likelihood there', () => {
    fc.assert(
      fc.property(values, (set) => {
        const fit = censoredNormalFit(set);
        fc.pre(fit.ok);
        const { mean, sd, logLikelihood: top } = fit.value;
        const slack = 1e-9 * (1 + Math.abs(top));
        expect(Math.abs(top - logLikelihood(set, mean, sd))).toBeLessThan(slack);
        for (const step of [1e-4, 0.1, 2]) {
          for (const [dMean, dLog] of [
            [step, 0],
            [-step, 0],
            [0, step],
            [0, -step],
            [step, step],
            [step, -step],
          ] as const) {
            expect(logLikelihood(set, mean + dMean * sd, sd * Math.exp(dLog))).toBeLessThan(top + slack);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  it('has the standard error of the observed information in (mean, log sd)', () => {
    fc.assert(
      fc.property(values, (set) => {
        const fit = censoredNormalFit(set);
        fc.pre(fit.ok && fit.value.sd > 1e-3 && fit.value.meanSe < 20 * fit.value.sd);
        if (!fit.ok) return;
        const { mean, sd, meanSe } = fit.value;
        const h = 1e-3;
        const at = (i: number, j: number) => logLikelihood(set, mean + i * h * sd, sd * Math.exp(j * h));
        const mm = -(at(1, 0) - 2 * at(0, 0) + at(-1, 0)) / h ** 2;
        const ss = -(at(0, 1) - 2 * at(0, 0) + at(0, -1)) / h ** 2;
        const ms = -(at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / (4 * h ** 2);
        expect(meanSe / (sd * Math.sqrt(ss / (mm * ss - ms ** 2)))).toBeCloseTo(1, 2);
      }),
      { numRuns: 200 },
    );
  });

  it('is the plain mean and the n-divisor sd without bounds', () => {
    const exact = fc.array(decimal(-50, 50), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(exact, (list) => {
        const mean = list.reduce((a, b) => a + b, 0) / list.length;
        const sd = Math.sqrt(list.reduce((a, b) => a + (b - mean) ** 2, 0) / list.length);
        fc.pre(sd > 1e-6);
        const fit = censoredNormalFit(list.map((value) => ({ value, bound: 'exact' })));
        expect(fit).toMatchObject({ ok: true });
        if (!fit.ok) return;
        expect(fit.value.mean).toBeCloseTo(mean, 9);
        expect(fit.value.sd / sd).toBeCloseTo(1, 9);
        expect(fit.value.meanSe / (sd / Math.sqrt(list.length))).toBeCloseTo(1, 9);
      }),
    );
  });

  const exact = (value: number) => ({ value, bound: 'exact' as const });
  const atMost = (value: number) => ({ value, bound: 'at-most' as const });
  const atLeast = (value: number) => ({ value, bound: 'at-least' as const });
  test.each([
    { what: 'only upper bounds', set: [atMost(1), atMost(2)], reason: 'all-at-most' },
    { what: 'only lower bounds', set: [atLeast(1)], reason: 'all-at-least' },
    { what: 'one exact value', set: [exact(3)], reason: 'no-spread' },
    { what: 'equal values and bounds that agree', set: [exact(3), exact(3), atMost(4), atLeast(3)], reason: 'no-spread' },
    { what: 'bounds that never overlap', set: [atMost(5), atLeast(1)], reason: 'no-finite-estimate' },
    { what: 'bounds without any slope', set: [atLeast(2), atLeast(0), atMost(0), atMost(2)], reason: 'no-finite-estimate' },
    { what: 'values that differ by no digits', set: [exact(0), exact(5e-324)], reason: 'no-spread' },
    { what: 'bounds that overlap the wrong way round', set: [atMost(1), atLeast(5)], reason: 'no-finite-estimate' },
  ])('has no estimate: $what', ({ set, reason }) => expect(censoredNormalFit(set)).toEqual({ ok: false, reason }));

  it('has an estimate as soon as a bound contradicts equal values, and from overlapping bounds alone', () => {
    expect(censoredNormalFit([exact(3), atLeast(3.5)]).ok).toBe(true);
    expect(censoredNormalFit([atMost(1), atMost(3), atMost(4), atLeast(0), atLeast(2)]).ok).toBe(true);
  });

  it('keeps the digits of values that lie close together beside a far bound', () => {
    const fit = censoredNormalFit([exact(1), exact(1 + 2e-9), atMost(1e6)]);
    expect(fit).toMatchObject({ ok: true });
    if (fit.ok) expect(fit.value.sd / 1e-9).toBeCloseTo(1, 5);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses %s', (value) =>
    expect(() => censoredNormalFit([exact(value)])).toThrow(RangeError),
  );
  it('refuses an empty list', () => expect(() => censoredNormalFit([])).toThrow(RangeError));
});
