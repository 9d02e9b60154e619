import type { UsualRhythm } from '../core/regimen/dayStrip/rhythmOfDay.ts';
import type { StripTimes } from '../core/regimen/dayStrip/types.ts';

const clock = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return 60 * hours + minutes;
};

const eaten = (name: string, time: string, minutes: number) => ({ name, startMinute: clock(time), minutes });

/** A usual day by age, where nobody described one. Our proposal; the page says that it is not hers. */
export const usualRhythms: readonly UsualRhythm[] = [
  {
    fromAgeYears: 0,
    belowAgeYears: 6,
    rhythm: {
      basis: 'usual',
      upMinute: clock('6:45'),
      bedMinute: clock('19:45'),
      eating: [eaten('breakfast', '7:30', 20), eaten('midday meal', '12:00', 25), eaten('evening meal', '17:30', 25)],
    },
  },
  {
    fromAgeYears: 6,
    belowAgeYears: 18,
    rhythm: {
      basis: 'usual',
      upMinute: clock('7:00'),
      bedMinute: clock('21:15'),
      away: { fromMinute: clock('8:00'), toMinute: clock('15:30') },
      eating: [eaten('breakfast', '7:20', 15), eaten('midday meal', '12:15', 25), eaten('evening meal', '18:15', 30)],
    },
  },
  {
    fromAgeYears: 18,
    belowAgeYears: 150,
    rhythm: {
      basis: 'usual',
      upMinute: clock('7:00'),
      bedMinute: clock('22:30'),
      eating: [eaten('breakfast', '7:30', 15), eaten('midday meal', '12:30', 30), eaten('evening meal', '18:30', 30)],
    },
  },
];

/** What the placing of uses in a day goes by. */
export const stripTimes: StripTimes = {
  afterEating: { earliest: 10, latest: 20, source: { key: 'ada2011', status: 'read', note: 'gum 10 to 20 minutes after meals' } },
  between: { minutes: 120, source: { key: 'project', status: 'proposal', note: 'two uses of one item two hours apart' } },
  fromBrushing: { minutes: 60, source: { key: 'project', status: 'proposal', note: 'a rinse at another time than brushing' } },
};
