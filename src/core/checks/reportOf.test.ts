import { describe, expect, test } from 'vitest';
import { readingNoise } from '../../content/readingNoise.ts';
import type { Meter } from '../reading/types.ts';
import { reportOf } from './reportOf.ts';
import type { Study, StudyReading, StudyRun } from './study.ts';

const meter: Meter = {
  ...{ id: 'm', name: 'Demo meter A', lowestRlu: 40, highestRlu: 60_000, cutoffRlu: 4200, countdownS: 25 },
  ...{ cvAnalytical: 0.25, cvAnalyticalAssumed: true, cvWithinPerson: 0.35, cvWithinPersonAssumed: true },
};
const study = (part: Partial<Study>): Study => ({
  ...{ id: 's', kind: 'new-lot', meterId: 'm', lotIds: ['old', 'new'], plannedBy: 'Ines', plannedAt: '2026-11-25T09:00:00.000Z' },
  ...{ design: { medium: 'atp-solution', parts: 2, operators: ['A', 'B'], replicates: 2, seed: 1 }, runs: [], state: 'running' },
  ...part,
});
const reading = (run: number, rlu: number, part: Partial<StudyReading> = {}): StudyReading => ({
  ...{ id: `r${run}`, studyId: 's', run, meterId: 'm', lotId: null, operator: null, takenAt: '2026-11-25T09:00:00.000Z' },
  ...{ rlu, bound: 'exact', state: 'valid', voidReason: null, version: 1 },
  ...part,
});
const report = (of: Study, readings: readonly StudyReading[]) => reportOf(of, readings, meter, readingNoise);

describe('a new lot', () => {
  const runs: StudyRun[] = [0, 1, 2, 3, 4, 5].flatMap((p) =>
    ['old', 'new'].map((lotId, l) => ({ index: 2 * p + l, part: `P${p}`, lotId, replicate: 1 })),
  );
  const readingsOf = (differences: readonly number[]) =>
    differences.flatMap((d, p) => [
      reading(2 * p, Math.exp(6 + p / 2), { lotId: 'old' }),
      reading(2 * p + 1, Math.exp(6 + p / 2 + d), { lotId: 'new' }),
    ]);
  const newLot = study({ runs });
  const first = (differences: readonly number[]) => {
    const got = report(newLot, readingsOf(differences));
    return got.ok ? got.report.sentences[0] : got.says;
  };

  test('differs by the geometric mean of its pairs', () => {
    // Mean 0.5, sd 0.1 sqrt(6/5), t(0.975, 5) = 2.5706: reach 0.115, so 1.65 with 1.47 to 1.85, beyond 1.2.
    expect(first([0.4, 0.6, 0.4, 0.6, 0.4, 0.6])).toMatch(
      /^The new lot reads otherwise by more than 20 % \(plus 65 %, 95 % interval plus 47 % to plus 85 %, 6 pairs\)/,
    );
  });

  test.each([
    ['the same', [0.01, -0.01, 0.01, -0.01, 0.01, -0.01], /^The new lot reads the same within 20 %/],
    ['nobody can tell yet', [0.4, -0.4, 0.4, -0.4, 0.4, -0.4], /^Too few pairs to say/],
    ['four pairs', [0.1, 0.1, 0.1, 0.1], /^There are too few pairs/],
  ])('%s', (_, differences, words) => expect(first(differences)).toMatch(words));

  test('void readings and numbers at a limit make no pair', () => {
    const readings = readingsOf([0.1, 0, 0.1, 0, 0.1, 0]);
    const isOk = (changed: Partial<StudyReading>) =>
      report(
        newLot,
        readings.map((r, i) => (i < 3 ? { ...r, ...changed } : r)),
      ).ok;
    expect([isOk({}), isOk({ state: 'void' }), isOk({ bound: 'at-least' })]).toEqual([true, false, false]);
  });

  test('with one lot alone it says what is missing', () => {
    expect(report({ ...newLot, lotIds: ['old'] }, [])).toMatchObject({ ok: false, wouldHelp: expect.stringContaining('two') });
  });
});

test('hands stand beside what people change from day to day, as the meter has it', () => {
  const runs: StudyRun[] = ['P', 'Q'].flatMap((part, p) =>
    ['A', 'B'].flatMap((operator, o) => [1, 2].map((replicate, r) => ({ index: 4 * p + 2 * o + r, part, operator, replicate }))),
  );
  const readings = [6.9, 7.1, 7.2, 7.4, 8.9, 9.1, 9.2, 9.4].map((ln, run) => reading(run, Math.exp(ln)));
  const got = report(study({ kind: 'hands', runs }), readings);
  // Between hands 0.041, swabs 0.016 pooled: (0.18 - 0.016) / 4 and 0.08 / 5; as coefficients of variation 20 % and 13 %.
  expect(got).toMatchObject({
    ok: true,
    report: { sentences: { 0: 'Hands add 20 %, swabs 13 %, people themselves 35 % from day to day (assumed).' } },
  });
});

test('a kind without a report says so', () => {
  expect(report(study({ kind: 'cutoff' }), [])).toMatchObject({ ok: false });
});
