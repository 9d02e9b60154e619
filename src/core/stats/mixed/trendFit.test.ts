import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../../test/reference/statistics/seededRandom.ts';
import type { TrendObservation } from './trendDesign.ts';
import { crossedOperatorTrend, randomInterceptTrend } from './trendFit.ts';

interface Fit {
  readonly fixef: readonly number[];
  readonly se: readonly number[];
  readonly variance: Readonly<Record<'patient' | 'residual', number>> & { readonly operator?: number };
  readonly logLik: number;
}
interface Data {
  readonly patient: readonly string[];
  readonly month: readonly number[];
  readonly operator: readonly string[];
}
interface Reference {
  readonly randomIntercept: Data &
    Fit & { readonly rlu: readonly number[]; readonly first10Effects: readonly number[]; readonly operatorFixed: Fit };
  readonly crossedOperator: readonly (Data &
    Fit & {
      readonly y: readonly number[];
      readonly operators: readonly string[];
      readonly operatorEffects: readonly number[];
      readonly patientEffects: readonly number[];
    })[];
}
const reference: Reference = JSON.parse(readFileSync('test/reference/statistics/trend.json', 'utf8'));
const observationsOf = (
  { patient, month, operator }: Data,
  values: readonly number[],
): (TrendObservation & { readonly operator: string })[] =>
  values.map((value, i) => ({ subject: patient[i] ?? '', time: month[i] ?? 0, operator: operator[i] ?? '', value }));
const close = (got: number | undefined, want: number | undefined, tolerance: number) =>
  expect(Math.abs((got ?? Number.NaN) - (want ?? Number.NaN))).toBeLessThanOrEqual(tolerance * Math.abs(want ?? 0));

const { randomIntercept } = reference;
const readings = observationsOf(randomIntercept, randomIntercept.rlu.map(Math.log));

// Own seeded simulation, lme4 1.1-31 in R 4.2.2, REML (test/reference/statistics/trend.json). Tolerance: 1e-8 relative in effects and
// log-likelihood; 1e-6 in variances and standard errors, which is how far the reference's own search goes.
test('random intercept against lme4', () => {
  const got = randomInterceptTrend(readings);
  close(got.intercept, randomIntercept.fixef[0], 1e-8);
  close(got.slope, randomIntercept.fixef[1], 1e-8);
  close(got.interceptSe, randomIntercept.se[0], 1e-6);
  close(got.slopeSe, randomIntercept.se[1], 1e-6);
  close(got.variance.subject, randomIntercept.variance.patient, 1e-6);
  close(got.variance.residual, randomIntercept.variance.residual, 1e-6);
  close(got.logLikelihood, randomIntercept.logLik, 1e-8);
  randomIntercept.first10Effects.forEach((effect, i) => {
    close(got.subjects[i]?.effect, effect, 1e-6);
  });
});

// The same data and tolerances. lme4 compares each of the four operators to the first; here the intercept is that of the average operator.
test('four operators as fixed effects against lme4', () => {
  const want = randomIntercept.operatorFixed;
  const got = crossedOperatorTrend(readings);
  const [first = 0, slope, ...others] = want.fixef;
  const average = others.reduce((sum, x) => sum + x, 0) / (others.length + 1);
  close(got.intercept, first + average, 1e-8);
  close(got.slope, slope, 1e-8);
  close(got.slopeSe, want.se[1], 1e-6);
  [0, ...others].forEach((effect, k) => {
    close(got.operators[k]?.effect, effect - average, 1e-6);
  });
  close(got.variance.subject, want.variance.patient, 1e-6);
  close(got.variance.residual, want.variance.residual, 1e-6);
  close(got.logLikelihood, want.logLik, 1e-8);
  expect(got.variance.operator).toBe(0);
});

// Own seeded simulations with 8 and 6 operators, lme4 1.1-31 in R 4.2.2, REML (trend.R beside the data). In the second the best variance
// of the operators is 0. Tolerance: 1e-6 relative, 1e-8 for the log-likelihood.
test.each([0, 1])('crossed random operators against lme4, set %i', (set) => {
  const want = reference.crossedOperator[set];
  if (!want) throw new Error('no such set');
  const got = crossedOperatorTrend(observationsOf(want, want.y));
  close(got.intercept, want.fixef[0], 1e-6);
  close(got.slope, want.fixef[1], 1e-6);
  close(got.interceptSe, want.se[0], 1e-6);
  close(got.slopeSe, want.se[1], 1e-6);
  close(got.variance.subject, want.variance.patient, 1e-6);
  close(got.variance.operator, want.variance.operator, 1e-6);
  close(got.variance.residual, want.variance.residual, 1e-6);
  close(got.logLikelihood, want.logLik, 1e-8);
  want.operators.forEach((operator, k) => {
    const found = got.operators.find((one) => one.operator === operator);
    close(found?.effect, want.operatorEffects[k], 1e-5);
  });
  want.patientEffects.forEach((effect, i) => {
    close(got.subjects[i]?.effect, effect, 1e-5);
  });
});

describe('randomInterceptTrend', () => {
  const { normal } = seededRandom(7);
  const noise = Array.from({ length: 40 }, normal);
  const made = (subjectSpread: number): TrendObservation[] =>
    noise.map((e, i) => ({
      subject: `s${i % 8}`,
      time: Math.floor(i / 8),
      value: 5 + subjectSpread * (i % 8) - 0.3 * Math.floor(i / 8) + e,
    }));

  it('is the same whatever the order, and moves with the units of time and value', () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 1e6, -4), fc.constantFrom(1, 1e-4, 30), fc.constantFrom(0, 0.5, 20), (shift, unit, spread) => {
        const list = made(spread);
        const got = randomInterceptTrend(list);
        const changed = [...list].reverse().map((x) => ({ ...x, time: (x.time + shift) * unit, value: 100 + 3 * x.value }));
        const again = randomInterceptTrend(changed);
        expect(again.slope * unit).toBeCloseTo(3 * got.slope, 6);
        expect(again.variance.subject).toBeCloseTo(9 * got.variance.subject, 5);
        expect(again.variance.residual).toBeCloseTo(9 * got.variance.residual, 6);
        const level = again.intercept + again.slope * shift * unit;
        expect(level).toBeCloseTo(100 + 3 * got.intercept, 2);
      }),
      { numRuns: 25 },
    );
  });

  it('sees no spread between subjects where there is none, and then is the straight line through all', () => {
    const list = made(0).map((x, i) => ({ ...x, subject: `s${(i * 3 + Math.floor(i / 8)) % 8}` }));
    const lessSpread = list.map((x) => ({
      ...x,
      value: x.value - meanOf(list.filter((y) => y.subject === x.subject).map((y) => y.value)),
    }));
    const got = randomInterceptTrend(lessSpread);
    expect(got.variance.subject).toBe(0);
    for (const { effect } of got.subjects) expect(Math.abs(effect)).toBe(0);
    const [mt, mv] = [meanOf(lessSpread.map((x) => x.time)), meanOf(lessSpread.map((x) => x.value))];
    const sxy = lessSpread.reduce((sum, x) => sum + (x.time - mt) * (x.value - mv), 0);
    const sxx = lessSpread.reduce((sum, x) => sum + (x.time - mt) ** 2, 0);
    expect(got.slope).toBeCloseTo(sxy / sxx, 10);
    expect(got.intercept).toBeCloseTo(mv - (sxy / sxx) * mt, 10);
  });

  it('keeps its digits where the value is large', () => {
    const list = made(0.5);
    const moved = randomInterceptTrend(list.map((x) => ({ ...x, value: x.value + 2 ** 30 })));
    expect(moved.variance.residual).toBeCloseTo(randomInterceptTrend(list).variance.residual, 6);
  });

  const row = (subject: string, time: number, value: number, operator?: string) => ({ subject, time, value, operator });
  it('says what is missing and what would make it work', () => {
    expect(() => randomInterceptTrend([])).toThrow(/must not be empty/);
    expect(() => randomInterceptTrend([row('a', 0, 1), row('a', 1, 3)])).toThrow(/at least two subjects: 1/);
    expect(() => randomInterceptTrend([row('a', 1, 1), row('b', 1, 2), row('a', 1, 4)])).toThrow(/two different times/);
    expect(() => randomInterceptTrend([row('a', 0, 1), row('a', 1, 3), row('b', 0, 2)])).toThrow(/repeat more: 3 of 2 subjects. 1 more/);
    expect(() => randomInterceptTrend([row('a', 0, 1), row('b', 1, 3), row('c', 2, 2)])).toThrow(/repeat more: 3 of 3 subjects. 1 more/);
    expect(() => randomInterceptTrend([row('a', 0, 1), row('a', 0, 3), row('b', 1, 2), row('b', 1, 5)])).toThrow(/more subjects: 2/);
    const line = ['a', 'b', 'c'].flatMap((s, i) => [0, 1, 2].map((t) => row(s, t, 10 * i + t)));
    expect(() => randomInterceptTrend(line)).toThrow(/must scatter/);
    expect(() => randomInterceptTrend(line.map((x) => ({ ...x, value: 5 })))).toThrow(/must scatter/);
    expect(() => randomInterceptTrend(line.map((x) => ({ ...x, value: 0.1 * x.value + 0.1 })))).toThrow(/must scatter/);
  });

  it('says where operators cannot be told from the times', () => {
    const byTime = noise.map((e, i) => row(`s${i % 8}`, i < 20 ? 0 : 1, e, i < 20 ? 'x' : 'y'));
    expect(() => crossedOperatorTrend(byTime)).toThrow(/cannot tell the operators from the times/);
    expect(() => crossedOperatorTrend(byTime.map((x) => ({ ...x, operator: 'x' })))).toThrow(/at least two operators/);
    expect(() => crossedOperatorTrend(byTime.map((x, i) => ({ ...x, operator: i === 3 ? undefined : 'x' })))).toThrow(
      /observations\.3\.operator/,
    );
  });
});

const meanOf = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;
