import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { dayTables } from '../../../content/plaque/dayTables.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { readyDays } from '../../../content/readyDays.ts';
import { checkDay } from '../model/checkDay.ts';
import { buildDayModel } from './dayModel.ts';
import { findDayProblems } from './findDayProblems.ts';
import { toExposures } from './toExposures.ts';
import type { AcidDay, DayEvent, EatingEvent } from './types.ts';

const { foods } = dayTables;
const model = buildDayModel(mouthPresets.average, dayTables);
const context = { foods, eating: model.eating };
const eating = (changes: Partial<EatingEvent> = {}): EatingEvent => ({
  id: 'e',
  kind: 'eating',
  occasion: 'meal',
  startMinute: 720,
  minutes: 20,
  portions: [{ food: 'cola', amount: 250 }],
  ...changes,
});
const dayOf = (...events: readonly DayEvent[]): AcidDay => ({ wakeMinute: 420, sleepMinute: 1380, events });
const exposuresOf = (...events: readonly DayEvent[]) => toExposures(dayOf(...events), context);
const awakeOf = (...events: readonly DayEvent[]) => exposuresOf(...events).filter(({ kind }) => kind !== 'sleep');

describe('toExposures', () => {
  it('meets a drink as it is: 9.94 g of sugar in 100 mL of cola, 5.84 mmol of hexose in a gram', () => {
    const [drink] = awakeOf(eating());
    expect(drink).toMatchObject({ kind: 'drinking', startMinute: 720, pH: 2.65, titratableMmolPerL: 21 });
    expect(drink?.hexoseMmolPerL).toBeCloseTo(99.4 * 5.84, 6);
    // 250 mL are 10 sips of 25 mL and a quarter of a minute.
    expect(drink?.minutes).toBe(2.5);
    expect(drink?.retained).toBeUndefined();
  });

  it('counts milk sugar by its share, and keeps what sticks', () => {
    const [milk] = awakeOf(eating({ portions: [{ food: 'milk', amount: 200 }] }));
    expect(milk?.hexoseMmolPerL).toBeCloseTo(0.04 * 50.5 * 5.84, 6);
    const [bread] = awakeOf(eating({ portions: [{ food: 'white-bread', amount: 60 }] }));
    expect(bread).toMatchObject({ kind: 'eating', minutes: 20, flowMlPerMin: 3, retained: { share: 0.5, halfTimeMinutes: 10 } });
    const [mixed] = awakeOf(
      eating({
        portions: [
          { food: 'sugar', amount: 10 },
          { food: 'honey', amount: 10 },
        ],
      }),
    );
    expect(mixed?.retained?.share).toBeCloseTo((0.3 * 8.212) / (9.98 + 8.212), 6);
    expect(mixed?.retained?.halfTimeMinutes).toBeCloseTo(4, 9);
  });

  it('dilutes what is chewed by its water, what is drunk with it and the saliva of chewing', () => {
    const [alone] = awakeOf(eating({ portions: [{ food: 'pasta', amount: 200 }] }));
    const [withWater] = awakeOf(
      eating({
        portions: [
          { food: 'pasta', amount: 200 },
          { food: 'tap-water', amount: 250 },
        ],
      }),
    );
    expect(alone?.hexoseMmolPerL).toBeGreaterThan(2 * (withWater?.hexoseMmolPerL ?? 0));
    const sugarsG = 1.12;
    expect(alone?.hexoseMmolPerL).toBeCloseTo((5840 * sugarsG) / (124.26 + 60 + sugarsG / 1.6), 6);
  });

  it('sips from the start to the end, no closer than three minutes', () => {
    const sips = awakeOf(eating({ sipped: true, startMinute: 840, minutes: 120, portions: [{ food: 'cola', amount: 500 }] }));
    expect(sips).toHaveLength(20);
    expect(sips[0]?.startMinute).toBe(840);
    expect((sips.at(-1)?.startMinute ?? 0) + (sips.at(-1)?.minutes ?? 0)).toBeCloseTo(960, 9);
    const hasty = awakeOf(eating({ sipped: true, minutes: 20, portions: [{ food: 'cola', amount: 500 }] }));
    expect(hasty).toHaveLength(7);
  });

  it('takes a sip that falls into a meal with the meal, and leaves it out while brushing', () => {
    // Ten sips, of which four fall into the twenty minutes from 720 on.
    const cola = eating({ id: 's', sipped: true, startMinute: 700, minutes: 60, portions: [{ food: 'cola', amount: 250 }] });
    const meal = eating({ portions: [{ food: 'rice', amount: 180 }] });
    const both = awakeOf(meal, cola);
    expect(both.filter(({ kind }) => kind === 'drinking')).toHaveLength(6);
    const plain = awakeOf(meal)[0]?.hexoseMmolPerL ?? 0;
    expect(both.find(({ kind }) => kind === 'eating')?.hexoseMmolPerL).toBeGreaterThan(20 * plain);
    const brushed = awakeOf({ id: 'b', kind: 'brushing', startMinute: 720, minutes: 20 }, cola);
    expect(brushed.filter(({ kind }) => kind === 'drinking')).toHaveLength(6);
  });

  it('sleeps at night and in naps, around what is drunk at night', () => {
    expect(exposuresOf().map(({ kind, startMinute, minutes }) => [kind, startMinute, minutes])).toEqual([
      ['sleep', 0, 420],
      ['sleep', 1380, 60],
    ]);
    const night = exposuresOf(eating({ startMinute: 120, minutes: 10, portions: [{ food: 'milk', amount: 120 }] }));
    expect(night.map(({ kind, startMinute }) => [kind, startMinute])).toEqual([
      ['sleep', 0],
      ['drinking', 120],
      ['sleep', 121.2],
      ['sleep', 1380],
    ]);
    const nap = exposuresOf({ id: 'n', kind: 'nap', startMinute: 800, minutes: 30 });
    expect(nap.map(({ kind, startMinute }) => [kind, startMinute])).toEqual([
      ['sleep', 0],
      ['sleep', 800],
      ['sleep', 1380],
    ]);
  });

  test.each([
    [
      { id: 'g', kind: 'gum', startMinute: 800, minutes: 15 },
      { kind: 'chewing', flowMlPerMin: 2, hexoseMmolPerL: 0 },
    ],
    [
      { id: 'c', kind: 'cheese', startMinute: 800, minutes: 5 },
      { kind: 'chewing', flowMlPerMin: 3, hexoseMmolPerL: 0 },
    ],
    [
      { id: 'w', kind: 'water', startMinute: 800, minutes: 2 },
      { kind: 'drinking', hexoseMmolPerL: 0 },
    ],
    [
      { id: 'r', kind: 'rinse', rinse: 'fluoride', startMinute: 800, minutes: 1 },
      { kind: 'rinse', hexoseMmolPerL: 0 },
    ],
    [
      { id: 'a', kind: 'rinse', rinse: 'alkaline', startMinute: 800, minutes: 1, bicarbonateMmolPerL: 84 },
      { kind: 'rinse', bicarbonateMmolPerL: 84 },
    ],
    [
      { id: 'u', kind: 'rinse', rinse: 'urea', startMinute: 800, minutes: 1, ureaPercent: 1 },
      { kind: 'rinse', ureaMmolPerL: 166.5 },
    ],
  ] as const)('%j', (event, exposure) => {
    expect(awakeOf(event)[0]).toMatchObject(exposure);
  });

  const ids = [...foods.keys()];
  const event = fc.record({
    startMinute: fc.oneof(fc.constantFrom(0, 419, 420, 1379, 1380, 1439), fc.integer({ min: 0, max: 1439 })),
    minutes: fc.oneof(fc.constantFrom(0.1, 1, 720), fc.double({ min: 0.1, max: 200, noNaN: true })),
    sipped: fc.constantFrom(true, undefined),
    food: fc.constantFrom(...ids),
    amount: fc.oneof(fc.constantFrom(0.1, 3000), fc.double({ min: 1, max: 600, noNaN: true })),
  });
  it('gives every day that has no problem to the model in a form that it takes', () => {
    let worked = 0;
    fc.assert(
      fc.property(fc.array(event, { maxLength: 5 }), fc.constantFrom([420, 1380], [420, 30], [900, 450]), (rows, [wake = 0, sleep = 0]) => {
        const events = rows.map(({ food, amount, ...at }, i) => eating({ id: `e${i}`, ...at, portions: [{ food, amount }] }));
        const day: AcidDay = { wakeMinute: wake, sleepMinute: sleep, events };
        if (findDayProblems(day, foods).length > 0) return;
        worked += 1;
        const { saliva, plaque } = model.mouth;
        checkDay({ saliva, plaque, constants: model.constants, exposures: toExposures(day, context) }, 1440);
      }),
      { numRuns: 400 },
    );
    expect(worked).toBeGreaterThan(50);
    for (const { day } of readyDays) expect(toExposures(day, context).length).toBeGreaterThan(5);
  });
});
