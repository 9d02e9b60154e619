import { describe, expect, it } from 'vitest';
import { stripTimes, usualRhythms } from '../../../content/dayRhythms.ts';
import { awakeMinutes, sinceUp } from './dayMinutes.ts';
import { placeUses } from './placeUses.ts';
import { usualRhythm } from './rhythmOfDay.ts';
import type { ApartInTime, DayRhythm, TimedUse } from './types.ts';

const adult = usualRhythm(40, usualRhythms);
const school = usualRhythm(9, usualRhythms);
const nightShift: DayRhythm = {
  basis: 'told',
  upMinute: 15 * 60,
  bedMinute: 7 * 60 + 30,
  away: { fromMinute: 21 * 60, toMinute: 6 * 60 },
  eating: [
    { name: 'dinner', startMinute: 17 * 60, minutes: 30 },
    { name: 'canteen', startMinute: 60, minutes: 20 },
  ],
};

const paste: TimedUse = { shelfItemId: 'paste', timesPerDay: 2, rhythm: 'brushing', isPortable: false, waitMinutes: 0 };
const rinse: TimedUse = { shelfItemId: 'rinse', timesPerDay: 1, rhythm: 'apart-from-brushing', isPortable: false, waitMinutes: 30 };
const gum: TimedUse = { shelfItemId: 'gum', timesPerDay: 3, rhythm: 'after-meals', isPortable: true, waitMinutes: 0 };
const spray: TimedUse = { shelfItemId: 'spray', timesPerDay: 4, rhythm: 'when-dry', isPortable: true, waitMinutes: 0 };

const place = (uses: readonly TimedUse[], rhythm = adult, apart: readonly ApartInTime[] = []) =>
  placeUses({ uses, rhythm, apart, times: stripTimes });
const minutesOf = (strip: ReturnType<typeof place>, id: string) => strip.placed.filter((p) => p.shelfItemId === id).map((p) => p.minute);
const clock = (time: string) => Number(time.split(':')[0]) * 60 + Number(time.split(':')[1]);

describe('placeUses', () => {
  it('brushes in the morning and last thing at night', () => {
    expect(minutesOf(place([paste]), 'paste')).toEqual([clock('7:10'), clock('22:25')]);
  });

  it('brushes before bed where it is once a day', () => {
    expect(minutesOf(place([{ ...paste, timesPerDay: 1 }]), 'paste')).toEqual([clock('22:25')]);
  });

  it('keeps the wait of a strong paste free of breakfast', () => {
    const strip = place([{ ...paste, waitMinutes: 30 }]);
    // Up at 7:00, breakfast 7:30 to 7:45: the half hour after brushing at 7:10 would meet it.
    expect(minutesOf(strip, 'paste')[0]).toBeGreaterThanOrEqual(clock('7:45'));
    expect(strip.placed.at(-1)?.nothingUntil).toBeNull();
    expect(strip.placed[0]?.nothingUntil).toBe((strip.placed[0]?.minute ?? 0) + 30);
  });

  it('puts gum after what makes most acid first', () => {
    const eating = adult.eating.map((e, i) => ({ ...e, acidMinutes: [5, 60, 20][i] }));
    expect(place([{ ...gum, timesPerDay: 1 }], { ...adult, eating }).placed).toMatchObject([
      { after: 'midday meal', minute: clock('13:10') },
    ]);
    expect(place([gum], { ...adult, eating }).placed.map((p) => p.after)).toEqual(['breakfast', 'midday meal', 'evening meal']);
  });

  it('puts a piece beyond the meals into the longest stretch without one, not before breakfast', () => {
    expect(minutesOf(place([{ ...gum, timesPerDay: 4 }]), 'gum')).toEqual(['7:55', '13:10', '16:00', '19:10'].map(clock));
    // The paste after breakfast keeps its half hour: the piece of that meal goes elsewhere too.
    const strip = place([
      { ...paste, waitMinutes: 30 },
      { ...gum, timesPerDay: 4 },
    ]);
    expect(minutesOf(strip, 'gum')).toEqual(['10:15', '13:10', '16:00', '19:10'].map(clock));
  });

  it('finds another time for the piece of a meal that ends in the wait of a paste', () => {
    const strip = place([{ ...paste, waitMinutes: 30 }, gum]);
    expect(minutesOf(strip, 'gum')).toEqual(['13:10', '16:00', '19:10'].map(clock));
    expect(strip.notPlaced).toEqual([]);
  });

  it('leaves a rinse for home when the child is at school, and an hour from brushing', () => {
    const strip = place([paste, rinse], school);
    const [at = -1] = minutesOf(strip, 'rinse');
    expect(at >= clock('15:30') || at < clock('8:00')).toBe(true);
    for (const brushing of minutesOf(strip, 'paste')) expect(Math.abs(brushing - at)).toBeGreaterThanOrEqual(60);
  });

  it('goes by her own day on a night shift', () => {
    const strip = place([paste, rinse, gum], nightShift);
    expect(strip.notPlaced).toEqual([]);
    // Two meals, three uses: the third takes any other time.
    expect(strip.placed.filter((p) => p.shelfItemId === 'gum').map((p) => p.after)).toEqual(
      expect.arrayContaining(['dinner', 'canteen', undefined]),
    );
    expect(minutesOf(strip, 'paste')).toEqual([clock('15:10'), clock('7:25')]);
    expect(strip.placed.map((p) => sinceUp(p.minute, nightShift))).toEqual(
      strip.placed.map((p) => sinceUp(p.minute, nightShift)).toSorted((a, b) => a - b),
    );
  });

  it('keeps a pair apart', () => {
    const apart = [{ pair: ['paste', 'chx'] as const, minutes: 120, ruleId: 'I01' }];
    const chx: TimedUse = { ...rinse, shelfItemId: 'chx', waitMinutes: 0 };
    const strip = place([paste, chx], adult, apart);
    const [at = 0] = minutesOf(strip, 'chx');
    for (const brushing of minutesOf(strip, 'paste')) expect(Math.abs(brushing - at)).toBeGreaterThanOrEqual(120);
  });

  it('says what found no time', () => {
    const short: DayRhythm = { basis: 'told', upMinute: 600, bedMinute: 660, eating: [{ name: 'meal', startMinute: 600, minutes: 90 }] };
    expect(
      place(
        [
          { ...rinse, waitMinutes: 30 },
          { ...paste, waitMinutes: 30 },
        ],
        short,
      ).notPlaced,
    ).toEqual([
      { shelfItemId: 'paste', times: 2, because: expect.stringContaining('no time of this day') },
      { shelfItemId: 'rinse', times: 1, because: expect.stringContaining('no time of this day') },
    ]);
  });

  it('leaves out what is used more rarely than once a day', () => {
    expect(place([{ ...rinse, timesPerDay: 1 / 7 }])).toMatchObject({ placed: [], notPlaced: [] });
  });

  it('gives the same day in whatever order the uses come', () => {
    expect(place([gum, spray, paste, rinse])).toEqual(place([rinse, paste, spray, gum]));
  });

  it.each([
    ['bedMinute', { ...adult, bedMinute: 1440 }, paste],
    ['upMinute', { ...adult, upMinute: 7.5 }, paste],
    ['eating.0.startMinute', { ...adult, eating: [{ name: 'x', startMinute: -1, minutes: 5 }] }, paste],
    ['eating.0.minutes', { ...adult, eating: [{ name: 'x', startMinute: 5, minutes: -5 }] }, paste],
    ['timesPerDay of paste', adult, { ...paste, timesPerDay: 7 }],
    ['waitMinutes of paste', adult, { ...paste, waitMinutes: -1 }],
  ])('names the field that is out of range: %s', (field, rhythm, use) => {
    expect(() => place([use], rhythm)).toThrow(new RegExp(`^${field} must be`));
  });
});

/** A small generator of days, so that the property has its edges: days of no length, meals that touch, night work. */
function randomDay(seed: number): { readonly rhythm: DayRhythm; readonly uses: readonly TimedUse[] } {
  let state = seed;
  const next = (below: number) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  const pick = <T>(list: readonly T[]): T => list[next(list.length)] as T;
  const upMinute = pick([0, 420, 900, 1439, next(1440)]);
  const rhythm: DayRhythm = {
    basis: 'told',
    upMinute,
    bedMinute: pick([upMinute, (upMinute + 960) % 1440, (upMinute + 30) % 1440, next(1440)]),
    eating: Array.from({ length: next(6) }, (_, i) => ({
      name: `meal ${i}`,
      startMinute: next(1440),
      minutes: pick([0, 1, 30, 120]),
      acidMinutes: pick([0, 10, 100]),
    })),
    ...(next(2) === 0 ? { away: { fromMinute: next(1440), toMinute: next(1440) } } : {}),
  };
  const uses = Array.from(
    { length: 1 + next(4) },
    (_, i): TimedUse => ({
      shelfItemId: `item${i}`,
      timesPerDay: pick([0, 0.5, 1, 2, 3]),
      rhythm: pick(['brushing', 'apart-from-brushing', 'after-meals', 'when-dry'] as const),
      isPortable: next(2) === 0,
      waitMinutes: pick([0, 15, 30, 240]),
    }),
  );
  return { rhythm, uses };
}

it('never puts a use into sleep, eating, a wait, or too near another, and accounts for every use (150 days)', () => {
  for (let seed = 1; seed <= 150; seed++) {
    const { rhythm, uses } = randomDay(seed);
    const apart = uses.length > 1 ? [{ pair: ['item0', 'item1'] as const, minutes: 45, ruleId: 'test' }] : [];
    const { placed, notPlaced } = place(uses, rhythm, apart);
    const byId = new Map(uses.map((u) => [u.shelfItemId, u]));
    for (const use of uses) {
      const times = placed.filter((p) => p.shelfItemId === use.shelfItemId).length;
      const missing = notPlaced.find((n) => n.shelfItemId === use.shelfItemId)?.times ?? 0;
      expect(times + missing).toBe(use.timesPerDay >= 1 ? use.timesPerDay : 0);
    }
    for (const [i, a] of placed.entries()) {
      const at = sinceUp(a.minute, rhythm);
      const wait = byId.get(a.shelfItemId)?.waitMinutes ?? 0;
      expect(at).toBeLessThanOrEqual(awakeMinutes(rhythm));
      for (const meal of rhythm.eating) {
        const from = sinceUp(meal.startMinute, rhythm);
        expect(at >= from + meal.minutes || at + wait <= from, `seed ${seed}`).toBe(true);
      }
      for (const b of placed.slice(i + 1)) {
        const gap = sinceUp(b.minute, rhythm) - at;
        expect(gap, `seed ${seed}`).toBeGreaterThanOrEqual(a.shelfItemId === b.shelfItemId ? 120 : gap === 0 ? 0 : wait);
        if ([a.shelfItemId, b.shelfItemId].toSorted().join() === 'item0,item1') expect(gap).toBeGreaterThanOrEqual(45);
      }
    }
  }
});
