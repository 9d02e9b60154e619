import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { normalQuantile } from '../stats/normal.ts';
import { seededUniform } from '../stats/seededUniform.ts';
import { buildStudyReport, type StudyToReport } from './buildStudyReport.ts';
import type { RunReading } from './countedRuns.ts';
import { daysSheet, handsSheet, lotsSheet, type SheetRun } from './runSheet.ts';

const numbered = (runs: readonly SheetRun[]) => runs.map((run, index) => ({ ...run, index }));
const hands = numbered(
  handsSheet({ parts: ['Weak', 'Middle', 'Strong'], operators: ['Ines', 'Tomas', 'Una'], repeats: 3 }, seededUniform(1)),
);
const lots = numbered(lotsSheet(['lot-a', 'lot-b', 'lot-c'], 6, seededUniform(2)));
const days = numbered(daysSheet(12));

/** Numbers with known noise, so that a report can be held against it. */
function readingsOf(runs: readonly SheetRun[], sd: { hand: number; lot: number; swab: number }, seed = 3): RunReading[] {
  const uniform = seededUniform(seed);
  const effects = new Map<string, number>();
  const normal = (size: number) => size * normalQuantile(uniform() + 2 ** -33);
  const effect = (name: string | undefined, size: number) => {
    const key = `${size} ${name}`;
    if (!effects.has(key)) effects.set(key, name === undefined ? 0 : normal(size));
    return effects.get(key) ?? 0;
  };
  return runs.map(({ part, operator, lotId }, run) => ({
    run,
    rlu: Math.round(Math.exp(8 + effect(part, 1) + effect(operator, sd.hand) + effect(lotId, sd.lot) + normal(sd.swab))),
    bound: 'exact' as const,
    state: 'valid' as const,
  }));
}
const NOISE = { hand: 0.2, lot: 0.15, swab: 0.1 };
const study = (over: Partial<StudyToReport> = {}): StudyToReport => ({
  kind: 'hands',
  runs: hands,
  readings: readingsOf(hands, NOISE),
  ...over,
});
const built = (input: StudyToReport) => {
  const outcome = buildStudyReport(input);
  if (!outcome.ok) throw new Error(outcome.says);
  return outcome.report;
};

describe('buildStudyReport', () => {
  it('says what hands and swabs add, with intervals and what is not in it', () => {
    const { sentences, estimates, body } = built(study({ dayNoise: { variance: Math.log1p(0.35 ** 2), isOwn: true } }));
    expect(sentences[0]).toMatch(/^Hands add \d+ %, swabs \d+ %, people themselves 35 % from day to day \(own study\)\.$/);
    expect(sentences[1]).toMatch(/^95 % intervals: hands \d+ (to \d+ %|% to far above 100 %), swabs \d+ to \d+ %\.$/);
    expect(sentences.at(-1)).toBe('Measured on solutions: how evenly hands pick up plaque is not in it.');
    expect(estimates.map(({ component, readings }) => [component, readings])).toEqual([
      ['operator', 27],
      ['repeatability', 27],
    ]);
    expect(estimates[0]?.degreesOfFreedom).toBe(2);
    expect(body.rows.map(({ what }) => what)).toEqual(['Hands', 'One swab after another', 'Hands and swabs together']);
    for (const { cv, low, high } of body.rows) expect(low <= cv && cv <= (high ?? Number.POSITIVE_INFINITY)).toBe(true);
  });

  // The components that the readings were made with, on average over studies: 2,000 of them are in test/property/coverage.test.ts.
  it('finds the noise that was put in, on average', () => {
    const found = Array.from({ length: 60 }, (_, seed) => {
      const of = (kind: 'hands' | 'lots' | 'paired-days', runs: typeof hands) =>
        built(study({ kind, runs, readings: readingsOf(runs, NOISE, seed) })).estimates;
      const [hand, swab] = of('hands', hands);
      const [lot] = of('lots', lots);
      return [hand?.variance ?? 0, swab?.variance ?? 0, lot?.variance ?? 0];
    });
    const mean = (i: number) => found.reduce((sum, values) => sum + (values[i] ?? 0), 0) / found.length;
    // Four standard errors of the mean of 60 studies.
    expect(Math.abs(mean(0) - 0.04)).toBeLessThan(0.025);
    expect(Math.abs(mean(1) - 0.01)).toBeLessThan(0.0025);
    expect(Math.abs(mean(2) - 0.0225)).toBeLessThan(0.015);
  });

  it('takes the noise of the swabs off the change from day to day, and says which was taken', () => {
    const readings = readingsOf(days, { ...NOISE, swab: 0.5 });
    const without = built(study({ kind: 'paired-days', runs: days, readings }));
    expect(without.estimates).toEqual([]);
    expect(without.sentences[1]).toBe('The noise of the swabs is not known, so it is still in this figure.');
    const swabNoise = { variance: 0.04, degreesOfFreedom: 30, isOwn: false };
    const { estimates, sentences, body } = built(study({ kind: 'paired-days', runs: days, readings, swabNoise }));
    expect(estimates[0]?.component).toBe('withinPerson');
    const total = Math.log1p((without.body.rows[0]?.cv ?? 0) ** 2);
    expect(estimates[0]?.variance).toBeCloseTo(total - 0.04, 10);
    expect(sentences[1]).toMatch(/^Without the noise of the swabs, 20 % assumed, people themselves add \d+ %/);
    expect(body.rows).toHaveLength(2);
  });

  it('leaves a solution with a missing or void swab out whole, and names both', () => {
    const readings = readingsOf(hands, NOISE).map((r) => (r.run === 4 ? { ...r, state: 'void' as const } : r));
    const { sentences, body } = built(study({ readings: readings.filter(({ run }) => run !== 4) }));
    expect(body.counted).toBe(18);
    expect(sentences.at(-1)).toBe('Swab 5: not read yet. The others of the same solution, 8 in all, are left out with it.');
    expect(built(study({ readings })).sentences.at(-1)).toContain('Swab 5: not counted.');
    const again = { run: 4, rlu: 4000, bound: 'exact', state: 'valid' } as const;
    expect(built(study({ readings: [...readings, again] })).body.counted).toBe(27);
  });

  const constant = (runs: readonly SheetRun[]) =>
    runs.map((_, run) => ({ run, rlu: 900, bound: 'exact' as const, state: 'valid' as const }));
  const onePair = numbered(handsSheet({ parts: ['A', 'B'], operators: ['Ines'], repeats: 3 }, seededUniform(1)));
  const oneLot = numbered(lotsSheet(['lot-a'], 6, seededUniform(2)));
  test.each([
    { what: 'no readings', over: { readings: [] }, says: 'Fewer than two solutions are complete.' },
    { what: 'every number the same', over: { readings: constant(hands) }, says: 'All repeats gave the same number' },
    { what: 'one pair of hands', over: { runs: onePair, readings: readingsOf(onePair, NOISE) }, says: 'One pair of hands' },
    { what: 'one lot', over: { kind: 'lots', runs: oneLot, readings: readingsOf(oneLot, NOISE) }, says: 'One lot alone' },
    { what: 'lots without noise', over: { kind: 'lots', runs: lots, readings: constant(lots) }, says: 'All repeats gave the same number' },
    {
      what: 'one person',
      over: { kind: 'paired-days', runs: numbered(daysSheet(1)), readings: constant(daysSheet(1)) },
      says: 'Fewer than two people',
    },
    {
      what: 'all at the limit',
      over: { readings: readingsOf(hands, NOISE).map((r) => ({ ...r, bound: 'at-least' })) },
      says: 'Fewer than two solutions',
    },
    { what: 'zeros', over: { readings: readingsOf(hands, NOISE).map((r) => ({ ...r, rlu: 0 })) }, says: 'Fewer than two solutions' },
  ] as const)('has no figure and says what would help: $what', ({ over, says }) => {
    const outcome = buildStudyReport(study(over as Partial<StudyToReport>));
    expect(outcome).toMatchObject({ ok: false, says: expect.stringContaining(says) });
    if (!outcome.ok) expect(outcome.wouldHelp).not.toBe('');
  });

  it('never gives a number that is none, whatever was entered', () => {
    const rlu = fc.oneof(fc.constantFrom(0, 1, 60_000), fc.integer({ min: 1, max: 60_000 }));
    const reading = (run: number) =>
      fc.record({
        run: fc.constant(run),
        rlu,
        bound: fc.constantFrom('exact' as const, 'exact' as const, 'exact' as const, 'at-most' as const),
        state: fc.constantFrom('valid' as const, 'valid' as const, 'valid' as const, 'valid' as const, 'void' as const),
      });
    const sheets = fc.constantFrom(
      { kind: 'hands' as const, runs: hands },
      { kind: 'lots' as const, runs: lots },
      { kind: 'paired-days' as const, runs: days },
    );
    const swabNoise = { variance: 0.02, degreesOfFreedom: 10, isOwn: true };
    const input = sheets.chain(({ kind, runs }) =>
      fc.tuple(...runs.map(({ index }) => reading(index))).map((readings) => ({ kind, runs, readings, swabNoise })),
    );
    fc.assert(
      fc.property(input, (entered) => {
        const outcome = buildStudyReport(entered);
        if (!outcome.ok) return;
        for (const { cv, low } of outcome.report.body.rows) expect([cv, low].every(Number.isFinite)).toBe(true);
        for (const { variance } of outcome.report.estimates) expect(Number.isFinite(variance)).toBe(true);
        expect(outcome.report.sentences.join(' ')).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 200 },
    );
  });
});
