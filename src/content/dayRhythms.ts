import type { DayUseTables } from '../core/regimen/dayStrip/dayUseTables.ts';
import type { NamedRhythms, UsualRhythm } from '../core/regimen/dayStrip/rhythmOfDay.ts';
import type { MealId, StripTimes } from '../core/regimen/dayStrip/types.ts';

const clock = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return 60 * hours + minutes;
};

const MEAL_NAMES: Readonly<Record<MealId, string>> = {
  breakfast: 'breakfast',
  midday: 'midday meal',
  evening: 'evening meal',
  first: 'first meal',
  'at-work': 'meal at work',
  last: 'last meal',
};

const eaten = (meal: MealId, time: string, minutes: number) => ({ meal, name: MEAL_NAMES[meal], startMinute: clock(time), minutes });
const away = (from: string, to: string) => ({ fromMinute: clock(from), toMinute: clock(to) });

/** A usual day by age, where nobody described one. Our proposal; the page says that it is not hers. */
export const usualRhythms: readonly UsualRhythm[] = [
  {
    fromAgeYears: 0,
    belowAgeYears: 6,
    rhythm: {
      basis: 'usual',
      rhythm: 'home',
      upMinute: clock('6:45'),
      bedMinute: clock('19:45'),
      eating: [eaten('breakfast', '7:30', 20), eaten('midday', '12:00', 25), eaten('evening', '17:30', 25)],
    },
  },
  {
    fromAgeYears: 6,
    belowAgeYears: 18,
    rhythm: {
      basis: 'usual',
      rhythm: 'school',
      upMinute: clock('7:00'),
      bedMinute: clock('21:15'),
      away: away('8:00', '15:30'),
      eating: [eaten('breakfast', '7:20', 15), eaten('midday', '12:15', 25), eaten('evening', '18:15', 30)],
    },
  },
  {
    fromAgeYears: 18,
    belowAgeYears: 150,
    rhythm: {
      basis: 'usual',
      rhythm: 'home',
      upMinute: clock('7:00'),
      bedMinute: clock('22:30'),
      eating: [eaten('breakfast', '7:30', 15), eaten('midday', '12:30', 30), eaten('evening', '18:30', 30)],
    },
  },
];

/** Usual times of a rhythm that a person names. Our proposal, like the usual days. */
export const namedRhythms: NamedRhythms = {
  school: {
    basis: 'named',
    upMinute: clock('7:00'),
    bedMinute: clock('21:15'),
    away: away('8:00', '15:30'),
    eating: [eaten('breakfast', '7:20', 15), eaten('midday', '12:15', 25), eaten('evening', '18:15', 30)],
  },
  work: {
    basis: 'named',
    upMinute: clock('6:45'),
    bedMinute: clock('22:45'),
    away: away('8:15', '17:30'),
    eating: [eaten('breakfast', '7:15', 15), eaten('midday', '12:30', 30), eaten('evening', '18:45', 30)],
  },
  early: {
    basis: 'named',
    upMinute: clock('4:30'),
    bedMinute: clock('21:00'),
    away: away('5:30', '14:30'),
    eating: [eaten('breakfast', '5:00', 10), eaten('at-work', '9:30', 20), eaten('midday', '15:00', 25), eaten('evening', '18:30', 30)],
  },
  late: {
    basis: 'named',
    upMinute: clock('8:30'),
    bedMinute: clock('0:30'),
    away: away('13:30', '22:30'),
    eating: [eaten('breakfast', '9:00', 15), eaten('midday', '12:15', 30), eaten('at-work', '18:00', 20)],
  },
  night: {
    basis: 'named',
    upMinute: clock('15:00'),
    bedMinute: clock('8:30'),
    away: away('21:00', '6:30'),
    eating: [eaten('first', '15:30', 20), eaten('evening', '19:15', 30), eaten('at-work', '1:30', 20), eaten('last', '7:00', 15)],
  },
};

/** A rhythm that was named holds as long as what is eaten and drunk. */
export const rhythmKept: DayUseTables['rhythmKept'] = {
  keepForMonths: 6,
  source: { key: 'project', status: 'proposal', note: 'our wording and keep-for time' },
};

/** What the placing of uses in a day goes by. */
export const stripTimes: StripTimes = {
  afterEating: { earliest: 10, latest: 20, source: { key: 'ada2011', status: 'read', note: 'gum 10 to 20 minutes after meals' } },
  between: { minutes: 120, source: { key: 'project', status: 'proposal', note: 'two uses of one item two hours apart' } },
  fromBrushing: { minutes: 60, source: { key: 'project', status: 'proposal', note: 'a rinse at another time than brushing' } },
};
