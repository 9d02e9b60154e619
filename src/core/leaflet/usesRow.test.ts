import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { namedRhythms, stripTimes, usualRhythms } from '../../content/dayRhythms.ts';
import en from '../../content/texts/locales/en.json' with { type: 'json' };
import { placeUses } from '../regimen/dayStrip/placeUses.ts';
import { namedRhythm, usualRhythm } from '../regimen/dayStrip/rhythmOfDay.ts';
import { RHYTHM_IDS, type TimedUse } from '../regimen/dayStrip/types.ts';
import { sayIn } from './sayMessage.ts';
import { layOutStripRow } from './stripRowLayout.ts';
import { sayWhoseDay, usesRow } from './usesRow.ts';

const say = sayIn(en, 'en');
const ITEMS: readonly TimedUse[] = [
  { shelfItemId: 'paste', timesPerDay: 2, rhythm: 'brushing', isPortable: false, waitMinutes: 30 },
  { shelfItemId: 'rinse', timesPerDay: 1, rhythm: 'apart-from-brushing', isPortable: false, waitMinutes: 30 },
  { shelfItemId: 'gum', timesPerDay: 3, rhythm: 'after-meals', isPortable: true, waitMinutes: 0 },
  { shelfItemId: 'spray', timesPerDay: 4, rhythm: 'when-dry', isPortable: true, waitMinutes: 0 },
];
const rowOf = (uses: readonly TimedUse[], rhythm = namedRhythm('night', 40, namedRhythms, usualRhythms)) => {
  const strip = placeUses({ uses, apart: [], rhythm, times: stripTimes });
  return { strip, row: usesRow({ strip, say, wordOf: (id) => id }) };
};

describe('a night worker', () => {
  const { row } = rowOf(ITEMS);

  test('sleeps by day, and is at work over midnight, named once', () => {
    expect(row.night).toEqual([{ from: 510, to: 900 }]);
    expect(row.away).toEqual([
      { from: 1260, to: 1440, name: 'work' },
      { from: 0, to: 390, name: '' },
    ]);
  });

  test('meals have their own words', () => {
    expect(row.eaten.map(({ name }) => name)).toEqual(['first meal', 'evening meal', 'meal at work', 'last meal']);
  });
});

test('a wait over midnight is cut there', () => {
  const rhythm = {
    ...usualRhythm(40, usualRhythms),
    upMinute: 12 * 60,
    bedMinute: 4 * 60,
    eating: [{ name: 'late', startMinute: 1400, minutes: 20 }],
  };
  const late: TimedUse = { ...(ITEMS[2] as TimedUse), timesPerDay: 1, waitMinutes: 30 };
  const { strip, row } = rowOf([late], rhythm);
  expect(strip.placed[0]).toMatchObject({ minute: 1430, nothingUntil: 20 });
  expect(row.waits).toEqual([
    { from: 1430, to: 1440 },
    { from: 0, to: 20 },
  ]);
});

test('whose day it is: told, named, or not asked', () => {
  expect(sayWhoseDay({ basis: 'usual', rhythm: 'school' }, say)).toContain('We did not ask');
  expect(sayWhoseDay({ basis: 'named', rhythm: 'night' }, say)).toMatch(/a night shift.*may differ/);
  expect(sayWhoseDay({ basis: 'told' }, say)).toBe('The times are as you told us.');
});

const chosen = fc.tuple(fc.subarray([...ITEMS], { minLength: 1 }), fc.constantFrom(...RHYTHM_IDS), fc.constantFrom(2, 5, 6, 17, 18, 80));
it('in every rhythm every use stands on the row once, no wait meets a meal, and no two words meet', () => {
  fc.assert(
    fc.property(chosen, ([uses, id, ageYears]) => {
      const { strip, row } = rowOf(uses, namedRhythm(id, ageYears, namedRhythms, usualRhythms));
      const { useWords } = layOutStripRow(row, 174);
      for (const { shelfItemId, timesPerDay } of uses) {
        const missing = strip.notPlaced.find((one) => one.shelfItemId === shelfItemId)?.times ?? 0;
        const marks = (row.uses ?? []).filter(({ name }) => name.split(', ').includes(shelfItemId));
        expect(marks.length + missing).toBe(timesPerDay);
      }
      expect(useWords).toHaveLength(row.uses?.length ?? -1);
      for (const wait of row.waits ?? []) for (const meal of row.eaten) expect(wait.to <= meal.from || meal.to <= wait.from).toBe(true);
      for (const [i, a] of useWords.entries())
        for (const b of useWords.slice(i + 1)) expect(a.row !== b.row || a.x + a.text.length * 2.15 <= b.x + 1e-9).toBe(true);
    }),
    { numRuns: 60 },
  );
});
