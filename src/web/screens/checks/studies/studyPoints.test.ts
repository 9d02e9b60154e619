import { expect, test } from 'vitest';
import type { StudyReading, StudyRun } from '../../../../core/checks/study.ts';
import { studyPicture } from './studyPoints.ts';

const runs: StudyRun[] = [
  { index: 0, part: 'Solution A', operator: 'Una', replicate: 1 },
  { index: 1, part: 'Solution A', operator: 'Ines', replicate: 1 },
  { index: 2, part: 'Solution B', operator: 'Ines', replicate: 1 },
];
const reading = (run: number, rlu: number, part: Partial<StudyReading> = {}): StudyReading => ({
  id: `r${run}`,
  studyId: 's',
  run,
  meterId: 'm',
  lotId: 'l1',
  operator: null,
  takenAt: '2026-11-25T10:00:00.000Z',
  rlu,
  bound: 'exact',
  state: 'valid',
  voidReason: null,
  version: 1,
  ...part,
});
const nameOfLot = (id: string) => `Lot, ${id}`;

test('each swab stands against the mean of its solution, by hand; a void one is hollow and moves no mean', () => {
  const readings = [reading(0, 1000), reading(1, 4000), reading(2, 90, { state: 'void', voidReason: 'spilt' })];
  const { groups, scale } = studyPicture({ kind: 'hands', runs }, readings, nameOfLot);
  expect(scale).toBe('ratio');
  expect(groups.map(({ name, points }) => [name, points.map(({ value }) => value)])).toEqual([
    ['Ines', [expect.closeTo(2)]],
    ['Una', [expect.closeTo(0.5)]],
  ]);
  const again = [reading(0, 1000), reading(1, 1000), reading(2, 500, { operator: 'Una' })];
  expect(studyPicture({ kind: 'hands', runs }, again, nameOfLot).groups.flatMap(({ points }) => points)).toHaveLength(2);
});
