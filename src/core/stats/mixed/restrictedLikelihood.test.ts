import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { restrictedLikelihood } from './restrictedLikelihood.ts';
import { dot, factorOf, logDeterminant, solve } from './symmetricMatrix.ts';
import { type OperatorEffect, type TrendObservation, trendDesign } from './trendDesign.ts';

/** The textbook way: the whole covariance matrix of all values, inverted. */
function denseDeviance(list: readonly TrendObservation[], effect: OperatorEffect, ratios: { subject: number; operator: number }) {
  const names = [...new Set(list.map(({ operator }) => operator))].sort();
  const marks = effect === 'fixed' ? names.slice(1) : [];
  const x = list.map(({ time, operator }) => [1, time, ...marks.map((name) => (name === operator ? 1 : 0))]);
  const y = list.map(({ value }) => value);
  const v = list.map((a, i) =>
    list.map(
      (b, j) =>
        (i === j ? 1 : 0) +
        (a.subject === b.subject ? ratios.subject : 0) +
        (effect === 'random' && a.operator === b.operator ? ratios.operator : 0),
    ),
  );
  const factor = factorOf(v);
  if (!factor) throw new Error('not positive definite');
  const columns = (x[0] ?? []).map((_, k) => x.map((row) => row[k] ?? 0));
  const solved = columns.map((column) => solve(factor, column));
  const information = factorOf(columns.map((column) => solved.map((other) => dot(column, other))));
  if (!information) return undefined;
  const right = solved.map((column) => dot(column, y));
  const sum = dot(y, solve(factor, y)) - dot(right, solve(information, right));
  const df = list.length - columns.length;
  return logDeterminant(factor) + logDeterminant(information) + df * (1 + Math.log((2 * Math.PI * sum) / df));
}

const number = fc.oneof(
  fc.constantFrom(0, 3, -3),
  fc.integer({ min: -30, max: 30 }).map((k) => k / 10),
);
const observation = fc.record({
  subject: fc.constantFrom('a', 'b', 'c', 'd'),
  operator: fc.constantFrom('x', 'y', 'z'),
  time: number,
  value: number,
});
const lists = fc.array(observation, { minLength: 10, maxLength: 16 });
const ratio = fc.oneof(fc.constantFrom(0, 1, 1000), fc.double({ min: 0, max: 10, noNaN: true }));

describe('restrictedLikelihood', () => {
  it.each(['none', 'fixed', 'random'] as const)('is the textbook value, and has the slope that it says, operators %s', (effect) => {
    fc.assert(
      fc.property(lists, ratio, ratio, (list, subject, b) => {
        const operator = effect === 'random' ? b : 0;
        const design = trendDesign(list, effect);
        const at = (s: number, o: number) => restrictedLikelihood(design, { subject: s, operator: o });
        const got = at(subject, operator);
        const want = denseDeviance(list, effect, { subject, operator });
        fc.pre(got !== undefined && want !== undefined && got.residualVariance > 1e-3);
        if (!got || want === undefined) return;
        expect(Math.abs(got.deviance - want)).toBeLessThan(1e-7);
        const step = 1e-5 * (1 + subject);
        const ahead = at(subject + step, operator)?.deviance ?? Number.NaN;
        const slope = (ahead - got.deviance) / step;
        expect(Math.abs(slope - got.slope.subject)).toBeLessThan(2e-2 * (1 + Math.abs(slope)));
        if (effect !== 'random') return;
        const stepO = 1e-5 * (1 + operator);
        const slopeO = ((at(subject, operator + stepO)?.deviance ?? Number.NaN) - got.deviance) / stepO;
        expect(Math.abs(slopeO - got.slope.operator)).toBeLessThan(2e-2 * (1 + Math.abs(slopeO)));
      }),
      { numRuns: 60 },
    );
  });
});
