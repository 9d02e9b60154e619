import { describe, expect, test } from 'vitest';
import { reportOf } from './reportOf.ts';
import type { Study, StudyReading, StudyRun } from './study.ts';

function study(part: Partial<Study>): Study {
  return {
    ...{ id: 's', kind: 'hands', meterId: 'm', lotIds: ['old', 'new'], plannedBy: 'Ines', plannedAt: '2026-11-25T09:00:00.000Z' },
    ...{ design: { medium: 'atp-solution', parts: 2, operators: ['A', 'B'], replicates: 2, seed: 1 }, runs: [], state: 'running' },
    ...part,
  };
}
const reading = (run: number, rlu: number, part: Partial<StudyReading> = {}): StudyReading => ({
  ...{ id: `r${run}`, studyId: 's', run, meterId: 'm', lotId: null, operator: null, takenAt: '2026-11-25T09:00:00.000Z' },
  ...{ rlu, bound: 'exact', state: 'valid', voidReason: null, version: 1 },
  ...part,
});

describe('hands', () => {
  const runs: StudyRun[] = ['P', 'Q'].flatMap((part, p) =>
    ['A', 'B'].flatMap((operator, o) => [1, 2].map((replicate, r) => ({ index: 4 * p + 2 * o + r, part, operator, replicate }))),
  );
  // ln RLU: solutions 7 and 9, hand B 0.3 above hand A, repeats 0.1 to either side. By hand: within cells 8 x 0.1^2 over 4 = 0.02; no
  // interaction, so pooled 0.08 / 5 = 0.016; between hands 8 x 0.15^2 = 0.18, and (0.18 - 0.016) / 4 = 0.041.
  const logs = [6.9, 7.1, 7.2, 7.4, 8.9, 9.1, 9.2, 9.4];
  const readings = logs.map((value, run) => reading(run, Math.exp(value)));

  test('gives the noise of swabs and of hands, by the form without an interaction', () => {
    const { estimates, sentences } = reportOf(study({ runs }), readings);
    expect(estimates).toEqual([
      { component: 'repeatability', variance: expect.closeTo(0.016, 10), degreesOfFreedom: 5, readings: 8 },
      { component: 'operator', variance: expect.closeTo(0.041, 10), degreesOfFreedom: 1, readings: 8 },
    ]);
    expect(sentences[0]).toMatch(/^Hands add 20 % \(95 % interval .*\), one swab after another 13 % \(/);
  });

  test('a void reading is left out, and what is then missing is said', () => {
    const withVoid = [...readings, reading(0, 50_000, { id: 'x', state: 'void' })];
    expect(reportOf(study({ runs }), withVoid)).toEqual(reportOf(study({ runs }), readings));
    expect(() => reportOf(study({ runs }), readings.slice(1))).toThrow(RangeError);
    expect(() => reportOf(study({ runs }), [])).toThrow(/two parts/);
  });

  test('another hand than the run sheet says is believed', () => {
    const byOne = readings.map((r) => ({ ...r, operator: 'A' }));
    expect(() => reportOf(study({ runs }), byOne)).toThrow(/two operators/);
  });
});

describe('a new lot', () => {
  const runs: StudyRun[] = [0, 1, 2, 3, 4, 5].flatMap((p) =>
    ['old', 'new'].map((lotId, l) => ({ index: 2 * p + l, part: `P${p}`, lotId, replicate: 1 })),
  );
  const readingsOf = (differences: readonly number[]) =>
    differences.flatMap((d, p) => [
      reading(2 * p, Math.exp(7 + p), { lotId: 'old' }),
      reading(2 * p + 1, Math.exp(7 + p + d), { lotId: 'new' }),
    ]);
  const newLot = study({ kind: 'new-lot', runs });

  test('reads higher by the geometric mean of its pairs, with an interval by t', () => {
    // Mean 0.2, sd 0.1 sqrt(6/5) = 0.109545, t(0.975, 5) = 2.570582: reach 0.114962.
    const { body, estimates, sentences } = reportOf(newLot, readingsOf([0.1, 0.3, 0.1, 0.3, 0.1, 0.3]));
    expect(body).toMatchObject({ pairs: 6, ratio: expect.closeTo(Math.exp(0.2), 9), low: expect.closeTo(Math.exp(0.2 - 0.114962), 5) });
    expect(estimates).toEqual([]);
    expect(sentences).toEqual(['The new lot reads 22 % higher (95 % interval plus 9 % to plus 37 %, 6 pairs): its target is set apart.']);
  });

  test('where the pairs cannot tell, it says so', () => {
    expect(reportOf(newLot, readingsOf([0.1, -0.1, 0.1, -0.1, 0.1, -0.1])).sentences[0]).toMatch(
      /^No difference between the lots that 6 pairs can see/,
    );
  });

  test('four pairs are too few, and one lot is none', () => {
    expect(() => reportOf(newLot, readingsOf([0.1, 0.1, 0.1, 0.1]))).toThrow(/5 pairs at least: 4/);
    expect(() => reportOf({ ...newLot, lotIds: ['old'] }, [])).toThrow(/two lots/);
  });
});

test('a kind without a computation says so', () => {
  expect(() => reportOf(study({ kind: 'meters' }), [])).toThrow(/kind meters/);
});
