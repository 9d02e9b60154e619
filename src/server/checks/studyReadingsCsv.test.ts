import { expect, test } from 'vitest';
import { readStudyCsv } from '../../actions/readStudyCsv.ts';
import type { StudyReading, StudyRun } from '../../core/checks/study.ts';
import { studyReadingsCsv } from './studyReadingsCsv.ts';

const runs: StudyRun[] = [
  { index: 0, part: 'Solution A', operator: '-Una', replicate: 1 },
  { index: 1, part: 'Solution A', operator: 'Ines', replicate: 1 },
];
const lots = [{ id: 'l1', name: ' Lot, "@1" ' }];
const takenAt = '2026-11-25T10:00:00.000Z';
const reading = (run: number, rlu: number, part: Partial<StudyReading> = {}): StudyReading => ({
  ...{ id: `r${run}`, studyId: 's', run, meterId: 'm', lotId: 'l1', operator: null, takenAt },
  ...{ rlu, bound: 'exact', state: 'valid', voidReason: null, version: 1 },
  ...part,
});
const readings = [
  reading(1, 60_000, { bound: 'at-least' }),
  reading(0, 5150, { state: 'void', voidReason: '=1+1, "spilt"' }),
  reading(0, 40, { bound: 'at-most', operator: '@Una', lotId: 'gone' }),
];

test('numbers leave in the order of the sheet; a cell that a spreadsheet would reckon with stays text', () => {
  expect(studyReadingsCsv({ runs }, readings, lots).split('\r\n')).toEqual([
    '\ufeff"run","rlu","solution or person","operator","lot","taken at","counted","not counted because"',
    `1,5150,"Solution A","'-Una"," Lot, ""@1"" ","${takenAt}","no","'=1+1, ""spilt"""`,
    `1,"<40","Solution A","'@Una","gone","${takenAt}","yes",`,
    `2,">60000","Solution A","Ines"," Lot, ""@1"" ","${takenAt}","yes",`,
    '',
  ]);
});

test('read back, nothing is lost: what did not count does not count, and no name has changed', () => {
  expect(readStudyCsv(studyReadingsCsv({ runs }, readings, lots))).toEqual({
    lines: [
      { line: 2, run: 0, rlu: 5150, bound: 'exact', operator: '-Una', lot: ' Lot, "@1" ', takenAt, against: '=1+1, "spilt"' },
      { line: 3, run: 0, rlu: 40, bound: 'at-most', operator: '@Una', lot: 'gone', takenAt, against: undefined },
      { line: 4, run: 1, rlu: 60_000, bound: 'at-least', operator: 'Ines', lot: ' Lot, "@1" ', takenAt, against: undefined },
    ],
    problems: [],
  });
});
