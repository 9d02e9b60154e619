import { expect, test } from 'vitest';
import type { StudyReading, StudyRun } from '../../../../core/checks/study.ts';
import { readingsCsv } from './readingsCsv.ts';
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

test('numbers leave as a table in the order of the sheet; a cell that a spreadsheet would reckon with stays text', () => {
  const readings = [
    reading(1, 60_000, { bound: 'at-least' }),
    reading(0, 5150, { state: 'void', voidReason: '=1+1, "spilt"', operator: 'Una' }),
  ];
  expect(readingsCsv({ runs }, readings, nameOfLot).split('\r\n')).toEqual([
    'run,rlu,solution or person,operator,lot,taken at,counted,not counted because',
    `1,5150,Solution A,Una,"Lot, l1",2026-11-25T10:00:00.000Z,no,"'=1+1, ""spilt"""`,
    '2,>60000,Solution A,Ines,"Lot, l1",2026-11-25T10:00:00.000Z,yes,',
  ]);
});
