import { describe, expect, test } from 'vitest';
import { readingNoise } from '../../content/readingNoise.ts';
import type { Meter } from '../reading/types.ts';
import { computeStudyReport } from './computeStudyReport.ts';
import type { StudyReading, StudyRun } from './study.ts';

const meter: Meter = {
  id: 'm',
  name: 'Meter',
  lowestRlu: 40,
  highestRlu: 60_000,
  cutoffRlu: 4_200,
  countdownS: 25,
  cvAnalytical: 0.25,
  cvAnalyticalAssumed: true,
  cvWithinPerson: 0.35,
  cvWithinPersonAssumed: true,
};
const runs: StudyRun[] = ['A', 'B', 'C'].flatMap((part, p) =>
  ['Ines', 'Tomas'].flatMap((operator, o) => [1, 2].map((replicate, r) => ({ index: 4 * p + 2 * o + r, part, operator, replicate }))),
);
const numbers = [1000, 1100, 1300, 1350, 2000, 2300, 2700, 2400, 4000, 4400, 5100, 5600];
const readings: StudyReading[] = numbers.map((rlu, run) => ({
  id: `r${run}`,
  studyId: 's',
  run,
  meterId: 'm',
  lotId: null,
  operator: null,
  takenAt: '2026-11-25T10:00:00.000Z',
  rlu,
  bound: 'exact',
  state: 'valid',
  voidReason: null,
  version: 1,
}));
const setting = { meter, table: readingNoise };
const design = { medium: 'atp-solution', parts: 3, operators: ['Ines', 'Tomas'], replicates: 2, seed: 1 } as const;
const sentencesOf = (list: readonly StudyReading[], m = meter) => {
  const outcome = computeStudyReport({ kind: 'hands', runs, meterId: 'm', lotIds: [], design }, list, { ...setting, meter: m });
  return outcome.ok ? outcome.report.sentences : [outcome.says];
};

test('says beside hands and swabs what people add, and whether that is assumed or from an own study', () => {
  expect(sentencesOf(readings)[0]).toMatch(/^Hands add \d+ %, swabs \d+ %, people themselves 35 % from day to day \(assumed\)\.$/);
  const own = {
    component: 'withinPerson',
    variance: 0.04,
    degreesOfFreedom: 12,
    studyId: 'd',
    reportedOn: '2026-01-01',
    kind: 'paired-days',
  } as const;
  expect(sentencesOf(readings, { ...meter, own: [own] })[0]).toMatch(/people themselves \d+ % from day to day \(own study\)/);
});

test('a swab taken by other hands than planned is named and left out with its solution', () => {
  const swapped = readings.map((r) => (r.run === 5 ? { ...r, operator: 'Tomas' } : r));
  expect(sentencesOf(swapped).at(-1)).toMatch(
    /^Swab 6: taken by other hands than planned\. The others of the same solution, 3 in all, are left out with it\.$/,
  );
  expect(sentencesOf(readings.map((r) => ({ ...r, operator: runs[r.run]?.operator ?? null })))).toEqual(sentencesOf(readings));
});

describe('a new lot beside the old one', () => {
  const pairs: StudyRun[] = Array.from({ length: 8 }, (_, p) => p).flatMap((p) =>
    ['old', 'new'].map((lotId, i) => ({ index: 2 * p + i, part: `Solution ${p + 1}`, lotId, replicate: 1 })),
  );
  const noise = [0.02, -0.05, 0.04, -0.01, 0.06, -0.03, 0.01, -0.04];
  const lots = (ratio: number) =>
    pairs.map(({ index, lotId }) => {
      const rlu = Math.round(1000 * 1.5 ** (index >> 1) * (lotId === 'new' ? ratio * (1 + (noise[index >> 1] ?? 0)) : 1));
      return { ...(readings[0] as StudyReading), id: `p${index}`, run: index, rlu, lotId: lotId ?? null };
    });
  const says = (list: readonly StudyReading[]) => {
    const planned = { ...design, parts: 8, wantedRatio: 1.2 };
    const outcome = computeStudyReport(
      { kind: 'new-lot', runs: pairs, meterId: 'm', lotIds: ['old', 'new'], design: planned },
      list,
      setting,
    );
    return outcome.ok ? outcome.report.sentences : [outcome.says, outcome.wouldHelp];
  };

  test('reads alike, or differs, or too few to say; and what the cut-off then is', () => {
    expect(says(lots(1.02))[0]).toMatch(
      /^Both lots read alike within 20 %. The new lot reads 1.02 times the old one \(95 % interval 0.9\d to 1.0\d, 8 pairs\)\.$/,
    );
    expect(says(lots(1.02))[1]).toMatch(
      /^Where a swab of the old lot reads the cut-off of 4,200, one of the new lot is expected to read 4,2\d\d/,
    );
    expect(says(lots(1.5))[0]).toMatch(/^The lots differ by more than 20 %/);
    expect(says(lots(1.2))[0]).toMatch(/^Too few pairs to say/);
  });

  test('a pair with one number missing is left out and named; with fewer than five nothing is said', () => {
    const all = lots(1.02);
    expect(says(all.slice(1)).at(-1)).toBe('Swab 1: not read yet. A pair with one number missing is left out.');
    expect(says(all.slice(0, 8))).toEqual([
      '4 pairs are complete, too few to say anything.',
      'Needed are at least 5 solutions read with both. Swabs 9, 10, 11, 12, 13, 14, 15 and 16: not read yet.',
    ]);
  });
});
