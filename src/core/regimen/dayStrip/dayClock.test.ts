import { expect, test } from 'vitest';
import { namedRhythms, stripTimes, usualRhythms } from '../../../content/dayRhythms.ts';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables } from '../../../content/regimenTables.ts';
import { leafletUses } from '../../../content/texts/leafletUses.ts';
import type { PlannedUse } from '../planFluoride.ts';
import type { ShelfItem } from '../types.ts';
import { dayClock } from './dayClock.ts';
import { namedRhythm } from './rhythmOfDay.ts';

const plannedOf = (id: string, part: Partial<ShelfItem> = {}): PlannedUse => {
  const item = demoShelf.find((other) => other.id === id);
  if (!item) throw new Error(`${id} is not on the demo shelf`);
  return { item: { ...item, ...part }, use: item.use, state: 'proposed' };
};
const clockOf = (planned: readonly PlannedUse[]) =>
  dayClock({
    planned,
    place: 'UK',
    rhythm: namedRhythm('home', 45, namedRhythms, usualRhythms),
    uses: leafletUses,
    times: stripTimes,
    tables: regimenTables,
  });

test('what is used whenever the mouth is dry has no time, and the day goes on as without it', () => {
  const gum = plannedOf('gum-xylitol');
  const clock = clockOf([gum, plannedOf('spray-saliva')]);
  expect(clock.notTimed).toEqual([{ shelfItemId: 'spray-saliva', because: 'used whenever the mouth is dry, by day or by night' }]);
  expect(clock.now).toEqual(clockOf([gum]).now);
  expect(clock.now.placed.map(({ shelfItemId }) => shelfItemId)).toEqual(['gum-xylitol', 'gum-xylitol', 'gum-xylitol']);
});
