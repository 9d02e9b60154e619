import { describe, expect, it } from 'vitest';
import { dayTables } from '../../../content/plaque/dayTables.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { seededUniform } from '../../stats/seededUniform.ts';
import { minutesBelow } from '../model/readCurve.ts';
import { changeGains } from './changeGains.ts';
import { buildDayModel } from './dayModel.ts';
import { applyMoves, moveKey } from './dayMoves.ts';
import { drawModels } from './drawModels.ts';
import { eventCosts } from './eventCosts.ts';
import { listMoves } from './listMoves.ts';
import { runDay } from './runDay.ts';
import { finish, searchChanges } from './searchChanges.ts';
import type { AcidDay, EatingEvent } from './types.ts';

const { foods } = dayTables;
const model = buildDayModel(mouthPresets.average, dayTables);
const source = { key: 'test', status: 'proposal' } as const;
const limits = {
  food: { allowed: 'any', because: '', ask: [], private: false, source },
  gum: { allowed: true, because: '', ask: [], private: false, warnings: [] },
} as const;
const LINE = 5.3;

const eating = (id: string, startMinute: number, food: string, changes: Partial<EatingEvent> = {}): EatingEvent => ({
  id,
  kind: 'eating',
  occasion: 'between-meals',
  startMinute,
  minutes: foods.get(food)?.usualMinutes ?? 5,
  portions: [{ food, amount: foods.get(food)?.usualAmount ?? 100 }],
  ...changes,
});
const day: AcidDay = {
  wakeMinute: 420,
  sleepMinute: 1380,
  events: [
    eating('lunch', 750, 'pasta', { occasion: 'meal' }),
    eating('cola', 900, 'cola'),
    eating('sweets', 1080, 'jelly-beans', { keep: true }),
  ],
};
const context = { foods, limits, model, linePh: LINE, most: 3 } as const;
const minutesOf = (changed: AcidDay) => minutesBelow(runDay(changed, model, foods, { tolerancePh: 0.02 }), LINE);

describe('moves', () => {
  it('lists what may be changed: nothing of an event that is kept, no meal dropped or moved', () => {
    expect(listMoves(day, context).map(moveKey)).toEqual(['lunch gum', 'cola drop', 'cola join', 'cola water', 'cola gum']);
    expect(listMoves(day, { ...context, unwanted: ['gum', 'drop'] }).map(moveKey)).toEqual(['cola join', 'cola water']);
  });

  it('changes a day as it says, gum after what is then left', () => {
    const joined = applyMoves(day, [
      { kind: 'gum', eventId: 'lunch' },
      { kind: 'join', eventId: 'cola', mealId: 'lunch' },
    ]);
    expect(joined.events.map(({ id, startMinute, minutes }) => [id, startMinute, minutes])).toEqual([
      ['lunch', 750, 22],
      ['sweets', 1080, 5],
      ['lunch-gum', 773, 15],
    ]);
    expect(applyMoves(day, [{ kind: 'drop', eventId: 'cola' }]).events).toHaveLength(2);
    const [, water] = applyMoves(day, [{ kind: 'water', eventId: 'cola' }]).events;
    expect(water).toMatchObject({ id: 'cola', minutes: 10, portions: [{ food: 'tap-water', amount: 330 }] });
    expect(water?.label).toBeUndefined();
    expect(() => applyMoves(day, [{ kind: 'drop', eventId: 'none' }])).toThrow('eventId');
  });
});

describe('searchChanges', () => {
  const found = finish(searchChanges(day, context));

  it('tries every move and every pair, and has the best first', () => {
    expect(found.minutesNow).toBe(minutesOf(day));
    expect(found.ones).toHaveLength(5);
    const brute = listMoves(day, context).map((move) => minutesOf(applyMoves(day, [move])));
    expect(found.ones[0]?.minutes).toBe(Math.min(...brute));
    expect(found.ones.map(({ minutes }) => minutes)).toEqual([...brute].sort((a, b) => a - b));
    // Lunch has one move and the cola four: four pairs.
    expect(found.twos).toHaveLength(4);
    expect(found.twos[0]?.minutes).toBeLessThanOrEqual(found.ones[0]?.minutes ?? 0);
    // Only two events may change at all.
    expect(found.three).toBeUndefined();
  });

  it('works several changes out from the first of them, with the same minutes as from the beginning', () => {
    for (const { moves, minutes } of found.twos) expect(minutes).toBe(minutesOf(applyMoves(day, moves)));
    const more: AcidDay = { ...day, events: [...day.events, eating('ale', 600, 'ginger-ale')] };
    const { twos, three } = finish(searchChanges(more, context));
    for (const { moves, minutes } of twos) expect(minutes).toBe(minutesOf(applyMoves(more, moves)));
    expect(three?.minutes).toBe(minutesOf(applyMoves(more, three?.moves ?? [])));
  });

  it('makes pairs of the best single changes alone where a day has very many, and says so', () => {
    expect(found.twosOf).toBe('every-pair');
    const search = finish(searchChanges(day, { ...context, most: 2, mostPaired: 4 }));
    expect(search.twosOf).toBe('best-moves');
    expect(search.ones).toEqual(found.ones);
    const best = new Set(search.ones.slice(0, 4).flatMap(({ moves }) => moves.map(moveKey)));
    expect(search.twos.length).toBeGreaterThan(0);
    for (const { moves } of search.twos) for (const move of moves) expect(best).toContain(moveKey(move));
  });

  it('gives the same again, and gives control back between days', () => {
    expect(finish(searchChanges(day, context))).toEqual(found);
    const search = searchChanges(day, { ...context, most: 1 });
    expect(search.next().value).toEqual({ tried: 1, of: 5 });
  });

  it('finds nothing where nothing may be said', () => {
    const held = { food: { ...limits.food, allowed: 'after-only' }, gum: { ...limits.gum, allowed: false } } as const;
    expect(finish(searchChanges(day, { ...context, limits: held }))).toMatchObject({ ones: [], twos: [], three: undefined });
  });
});

describe('costs and gains', () => {
  it('leaves one event out at a time, dearest first', () => {
    const curve = runDay(day, model, foods, { tolerancePh: 0.02 });
    const costs = eventCosts(day, { curve, model, foods, linePh: LINE });
    expect(costs.map(({ eventId }) => eventId).sort()).toEqual(['cola', 'lunch', 'sweets']);
    for (const { eventId, minutes } of costs) {
      const without = { ...day, events: day.events.filter(({ id }) => id !== eventId) };
      expect(minutes).toBe(minutesOf(day) - minutesOf(without));
    }
    expect(costs.map(({ minutes }) => minutes)).toEqual([...costs.map(({ minutes }) => minutes)].sort((a, b) => b - a));
  });

  it('gives minutes only where the draws agree that there are fewer', () => {
    const models = drawModels(mouthPresets.average, dayTables, 8, seededUniform(4));
    const nothing = { moves: [], minutes: 0 };
    const drop = { moves: [{ kind: 'drop', eventId: 'cola' }], minutes: 0 } as const;
    const [clear, none] = changeGains(day, [drop, nothing], { models, foods, linePh: LINE });
    expect(clear?.fewerMinutes?.low).toBeGreaterThan(0);
    expect(none).toEqual({ moves: [], rank: 2, isAsked: true });
    expect(changeGains(day, [drop, nothing], { models, foods, linePh: LINE })).toEqual([clear, none]);
  });
});
