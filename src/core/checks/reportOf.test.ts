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
      /^The lots differ by more than 20 %. The new lot reads 1.65 times the old one \(95 % interval 1.47 to 1.85, 6 pairs\)/,
    );
  });

  test.each([
    ['the same', [0.01, -0.01, 0.01, -0.01, 0.01, -0.01], /^Both lots read alike within 20 %/],
    ['nobody can tell yet', [0.4, -0.4, 0.4, -0.4, 0.4, -0.4], /^Too few pairs to say/],
    ['four pairs', [0.1, 0.1, 0.1, 0.1], /^4 pairs are complete, too few to say anything/],
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

describe('hands', () => {
  const runs: StudyRun[] = ['A', 'B', 'C'].flatMap((part, p) =>
    ['Ines', 'Tomas'].flatMap((operator, o) => [1, 2].map((replicate, r) => ({ index: 4 * p + 2 * o + r, part, operator, replicate }))),
  );
  const numbers = [1000, 1100, 1300, 1350, 2000, 2300, 2700, 2400, 4000, 4400, 5100, 5600];
  const readings = numbers.map((rlu, run) => reading(run, rlu));
  const hands = study({ kind: 'hands', runs });
  const sentencesOf = (list: readonly StudyReading[], on = meter) => {
    const got = reportOf(hands, list, on, readingNoise);
    return got.ok ? got.report.sentences : [got.says];
  };

  test('an own study of people stands beside them as such', () => {
    const own = {
      component: 'withinPerson',
      ...{ variance: 0.04, degreesOfFreedom: 12, studyId: 'd', reportedOn: '2026-01-01' },
      kind: 'paired-days',
    } as const;
    expect(sentencesOf(readings, { ...meter, own: [own] })[0]).toMatch(/people themselves \d+ % from day to day \(own study\)/);
  });

  test('a swab taken by other hands than planned is named and left out with its solution', () => {
    const swapped = readings.map((r) => (r.run === 5 ? { ...r, operator: 'Tomas' } : r));
    expect(sentencesOf(swapped).at(-1)).toBe(
      'Swab 6: taken by other hands than planned. The others of the same solution, 3 in all, are left out with it.',
    );
    expect(sentencesOf(readings.map((r) => ({ ...r, operator: runs[r.run]?.operator ?? null })))).toEqual(sentencesOf(readings));
  });
});

describe('two meters', () => {
  const runs: StudyRun[] = Array.from({ length: 8 }, (_, p) => p).flatMap((p) =>
    (p % 2 === 0 ? ['m', 'n'] : ['n', 'm']).map((meterId, i) => ({ index: 2 * p + i, part: `Solution ${p}`, meterId, replicate: 1 })),
  );
  const noise = [0.02, -0.05, 0.04, -0.01, 0.06, -0.03, 0.01, -0.04];
  const readings = (slope: number) =>
    runs.map(({ index, meterId }) => {
      const p = index >> 1;
      return reading(index, meterId === 'm' ? 500 * 1.7 ** p : 500 * 1.7 ** (slope * p) * Math.exp(noise[p] ?? 0));
    });
  const says = (list: readonly StudyReading[]) => {
    const got = report(study({ kind: 'meters', lotIds: ['l'], runs }), list);
    return got.ok ? got.report.sentences : [got.says, got.wouldHelp];
  };

  test('read alike at low and high readings, or not at one end', () => {
    expect(says(readings(1))).toEqual([
      expect.stringMatching(/^Both meters read alike within 20 %\. The new meter reads 1\.00 times the old one/),
      expect.stringMatching(/^It shows no dependence on the level that this study can see/),
      'Whatever it says, a new meter begins a new baseline, with the cut-off of its own instructions.',
    ]);
    expect(says(readings(1.15)).join(' ')).toMatch(
      /differ by more than 20 %.*It depends on the level: 1\.0\d times at 500 RLU and 1\.\d+ times at/,
    );
  });

  test('a pair with one number missing is left out and named; with fewer than five nothing is said', () => {
    expect(says(readings(1).slice(1)).at(-1)).toBe('Swab 1: not read yet. A pair with one number missing is left out.');
    expect(says(readings(1).slice(0, 8))).toEqual([
      '4 pairs are complete, too few to say anything.',
      'Needed are at least 5 solutions read with both. Swabs 9 to 16: not read yet.',
    ]);
  });
});

test('a kind without a report says so', () => {
  expect(report(study({ kind: 'cutoff' }), [])).toMatchObject({ ok: false });
});

describe('numbers that say nothing yet: why, and what would make it work', () => {
  const handsOf = (operators: readonly string[]) =>
    ['P', 'Q'].flatMap((part, p) =>
      operators.flatMap((operator, o) => [1, 2].map((replicate, r) => ({ index: 4 * p + 2 * o + r, part, operator, replicate }))),
    );
  const lots = ['old', 'new'].flatMap((lotId, l) => [1, 2].map((replicate, r) => ({ index: 2 * l + r, lotId, replicate })));
  const people = [1, 2].flatMap((p) => [1, 2].map((replicate, r) => ({ index: 2 * p - 2 + r, part: `Person ${p}`, replicate })));
  const pairs = [0, 1, 2, 3, 4].flatMap((p) =>
    ['old', 'new'].map((lotId, l) => ({ index: 2 * p + l, part: `P${p}`, lotId, replicate: 1 })),
  );
  const sheets: readonly (readonly [Study['kind'], StudyRun[], RegExp])[] = [
    ['hands', handsOf(['A', 'B']), /at least two solutions swabbed by every hand every time/],
    ['lots', lots, /at least two rounds with a swab of every lot/],
    ['paired-days', people, /at least two people with both of their days/],
    ['new-lot', pairs, /at least 5 solutions read with both/],
  ];
  test.each(sheets)('%s', (kind, runs, needed) => {
    const saysOf = (part: Partial<StudyReading>) => {
      const got = report(
        study({ kind, runs }),
        part.rlu === -1 ? [] : runs.map(({ index, lotId }) => reading(index, 500, { lotId: lotId ?? null, ...part })),
      );
      return got.ok ? got.report.sentences.join(' ') : `${got.says} ${got.wouldHelp}`;
    };
    for (const nothing of [{ rlu: -1 }, { state: 'void' as const }, { rlu: 0 }, { bound: 'at-least' as const }])
      expect(saysOf(nothing)).toMatch(needed);
    expect(saysOf({ rlu: 0 })).toMatch(/Swabs 1 to \d+: a number of 0\./);
    expect(saysOf({ bound: 'at-least' })).toMatch(/at the meter's limit; only a number within its scale counts\./);
    expect(saysOf({})).toMatch(/All repeats gave the same number.*with all their digits/);
    expect(saysOf({ operator: 'somebody', ...(kind === 'hands' ? {} : { state: 'void' as const }) })).not.toMatch(
      /NaN|Infinity|null|undefined/,
    );
  });

  test('a single pair of hands, and a single lot', () => {
    const one = handsOf(['A']);
    const alone = report(
      study({ kind: 'hands', runs: one }),
      one.map(({ index }) => reading(index, 500 + 40 * index)),
    );
    expect(alone).toMatchObject({ ok: false, wouldHelp: 'Let a second person swab the same solutions.' });
    const oneLot = lots.slice(0, 2);
    const single = report(
      study({ kind: 'lots', runs: oneLot }),
      oneLot.map(({ index }) => reading(index, 500 + 40 * index)),
    );
    expect(single).toMatchObject({ ok: false, wouldHelp: 'Add swabs of a second lot.' });
  });
});
