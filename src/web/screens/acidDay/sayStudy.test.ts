import { expect, test } from 'vitest';
import type { DayBand } from '../../../core/plaque/day/dayBand.ts';
import { sayChanged, sayTold } from './sayStudy.ts';
import type { DayStudy } from './studyDay.ts';

const band = (low: number, high: number) => ({ minutesBelow: { saliva: { low, high } } }) as unknown as DayBand;
const study = (part: Partial<DayStudy>): Partial<DayStudy> => ({
  bandTold: band(118, 184),
  bandChanged: band(58, 92),
  fewer: null,
  more: null,
  ...part,
});

test('nothing is said before there is a range', () => {
  const day = { wakeMinute: 400, sleepMinute: 1380, events: [] };
  expect(sayTold({ day, drawn: { minutes: { saliva: 150 } } as never, study: {} })).toBeNull();
  expect(sayChanged({ bandTold: band(1, 2) })).toBeNull();
});

test('a difference in minutes only where the band leaves out zero', () => {
  expect(sayChanged(study({ fewer: { low: 44, high: 81 } }))).toMatch(
    /roughly 2 to 3 hours a day.* as told, 60 to 90 minutes with the change: 40 to 80 minutes less\.$/,
  );
  expect(sayChanged(study({ more: { low: 44, high: 81 } }))).toMatch(/40 to 80 minutes more\.$/);
  expect(sayChanged(study({}))).toMatch(/with the change\. The model cannot tell a difference\.$/);
});
