import { expect, test } from 'vitest';
import { namedRhythms, usualRhythms } from '../../content/dayRhythms.ts';
import en from '../../content/texts/locales/en.json' with { type: 'json' };
import { namedRhythm, usualRhythm } from '../regimen/dayStrip/rhythmOfDay.ts';
import type { DayRhythm } from '../regimen/dayStrip/types.ts';
import { sayIn } from './sayMessage.ts';
import { timesOfUses } from './timesOfUses.ts';

const say = sayIn(en, 'en-GB');
const at = (rhythm: DayRhythm, ...clocks: readonly string[]) =>
  timesOfUses(
    {
      rhythm,
      notPlaced: [],
      placed: clocks.map((clock) => {
        const [hours = 0, minutes = 0] = clock.split(':').map(Number);
        return { shelfItemId: 'item', minute: hours * 60 + minutes, nothingUntil: null };
      }),
    },
    say,
    'en-GB',
  ).map(({ says }) => says);

test('a day that nobody told has words and no clock', () => {
  expect(at(usualRhythm(40, usualRhythms), '7:10', '8:05', '10:30', '13:10', '21:30', '22:25')).toEqual([
    'When you get up',
    'After breakfast',
    'Between meals',
    'After the midday meal',
    'After the evening meal',
    'Before bed',
  ]);
});

test('a night worker goes to bed in the morning', () => {
  const night = namedRhythm('night', 40, namedRhythms, usualRhythms);
  expect(at(night, '15:10', '2:00', '8:25')).toEqual(['When you get up', 'After the meal at work', 'Before bed']);
});

test('a day that was told has the clock of the place', () => {
  const told: DayRhythm = { ...usualRhythm(40, usualRhythms), basis: 'told' };
  expect(at(told, '7:10', '22:25')).toEqual(['07:10', '22:25']);
});
