import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foods, foodsById } from '../../src/content/foods.ts';
import { readyDays } from '../../src/content/readyDays.ts';
import { regimenTables } from '../../src/content/regimenTables.ts';
import { dayLimits } from '../../src/core/plaque/day/dayLimits.ts';
import { applyMoves, type DayMove } from '../../src/core/plaque/day/dayMoves.ts';
import { findDayProblems } from '../../src/core/plaque/day/findDayProblems.ts';
import { isPossible, listMoves } from '../../src/core/plaque/day/listMoves.ts';
import type { AcidDay, EatingEvent } from '../../src/core/plaque/day/types.ts';
import type { PersonFacts } from '../../src/core/regimen/types.ts';
import { anyone, nothingWrong } from './people.ts';

const SEED = Number(process.env.EBBLINE_SEED ?? 20_261_126);
const PAIRS = process.env.EBBLINE_LONG === '1' ? 100_000 : 1_500;
const settings = { seed: SEED, numRuns: PAIRS };

// The lines of safety on food and gum, read again by hand from their wording, sharing no table with the code.
const has = (list: readonly string[] | undefined, ...ids: string[]) => ids.some((id) => list?.includes(id) ?? false);
const ASKED_FROM_YEARS = 11;
const UNANSWERED = (f: PersonFacts) =>
  f.medicines === undefined ||
  f.medicines.includes('other') ||
  f.conditions === undefined ||
  f.allergies === undefined ||
  (f.ageYears >= ASKED_FROM_YEARS && f.pregnant === undefined) ||
  (f.ageYears < 18 && f.weightKg === undefined) ||
  f.canSpit === undefined;
const FOOD_HELD = (f: PersonFacts) =>
  has(f.medicines, 'insulin', 'other-glucose-lowering', 'glp-1-agonist') ||
  has(f.conditions, 'diabetes-glucose-lowering', 'eating-disorder', 'underweight', 'pregnancy-sickness', 'tube-or-supplement-feeding') ||
  UNANSWERED(f);
const GUM_HELD = (f: PersonFacts) =>
  f.ageYears < 5 ||
  f.dentures !== false ||
  f.jawPain !== false ||
  f.braces !== false ||
  f.conditions === undefined ||
  has(f.conditions, 'jaw-joint-pain', 'swallowing-difficulty', 'phenylketonuria', 'hereditary-fructose-intolerance');
const MILKS = foods
  .filter(({ name }) => /\b(milk|milkshake|buttermilk|soy drink|rice drink|almond drink)\b/i.test(name.en))
  .map(({ id }) => id);

/** Every way in which a suggestion breaks a line for this person. */
function breachesOf(f: PersonFacts, day: AcidDay, { kind, eventId }: DayMove): string[] {
  const event = day.events.find(({ id }) => id === eventId);
  if (event?.kind !== 'eating') return ['not about an event of eating'];
  const breaches: string[] = [];
  if (event.keep) breaches.push('she keeps it');
  if (kind === 'gum') return GUM_HELD(f) ? [...breaches, 'gum'] : breaches;
  if (event.occasion === 'meal') breaches.push('a meal');
  if (FOOD_HELD(f)) breaches.push('food is held back');
  if (f.ageYears < 3) {
    if (kind !== 'water' || !event.inBottleOrCup) breaches.push('under 3: only what is in a sweet bottle or cup');
    const isFeed = event.portions.some((portion) => 'typed' in portion || MILKS.includes(portion.food));
    if (isFeed) breaches.push('under 3: a feed');
  }
  return breaches;
}

const drinks = foods.filter(({ unit }) => unit === 'mL').map(({ id }) => id);
const portion = fc.oneof(
  fc.record({
    food: fc.oneof(fc.constantFrom(...drinks), fc.constantFrom(...foods.map(({ id }) => id))),
    amount: fc.constantFrom(20, 200),
  }),
  fc.record({
    typed: fc.record({
      name: fc.constant('typed'),
      unit: fc.constantFrom('g' as const, 'mL' as const),
      sugarsGPer100: fc.constantFrom(0, 1, 7, 60),
      retention: fc.constant('clears' as const),
    }),
    amount: fc.constantFrom(20, 200),
  }),
);
const eating = fc.record({
  occasion: fc.constantFrom('meal' as const, 'between-meals' as const, 'between-meals' as const),
  startMinute: fc.integer({ min: 0, max: 95 }).map((quarter) => quarter * 15),
  minutes: fc.constantFrom(2, 10, 15),
  portions: fc.array(portion, { minLength: 1, maxLength: 2 }),
  sipped: fc.constantFrom(undefined, undefined, true as const),
  keep: fc.constantFrom(undefined, undefined, true as const),
  inBottleOrCup: fc.constantFrom(undefined, true as const),
});
const described: fc.Arbitrary<AcidDay> = fc
  .record({ events: fc.array(eating, { minLength: 1, maxLength: 7 }), night: fc.constantFrom([420, 1380], [420, 30], [900, 450]) })
  .map(({ events, night: [wakeMinute = 0, sleepMinute = 0] }) => ({
    wakeMinute,
    sleepMinute,
    events: events.map((event, i): EatingEvent => ({ id: `e${i}`, kind: 'eating', ...event })),
  }))
  .filter((day) => findDayProblems(day, foodsById).length === 0);
const day = fc.oneof(described, fc.constantFrom(...readyDays.map((ready) => ready.day)));
const person = fc.oneof(anyone, nothingWrong);
const place = fc.constantFrom('US' as const, 'UK' as const, 'unknown' as const);

describe('no suggestion about a day', () => {
  const seen = new Set<string>();

  test('breaks a line on food or gum, for anybody and any day', () => {
    fc.assert(
      fc.property(person, day, place, (facts, one, jurisdiction) => {
        const moves = listMoves(one, { foods: foodsById, limits: dayLimits(facts, regimenTables, jurisdiction) });
        for (const move of moves) {
          seen.add(`${move.kind}${facts.ageYears < 3 ? ' under 3' : ''}`);
          expect(breachesOf(facts, one, move)).toEqual([]);
        }
      }),
      settings,
    );
    // Else the property would hold of nothing.
    expect([...seen].sort()).toEqual(['drop', 'gum', 'join', 'water', 'water under 3']);
  }, 600_000);

  test('leaves a day that cannot be lived, alone or with another', () => {
    fc.assert(
      fc.property(nothingWrong, day, (facts, one) => {
        const moves = listMoves(one, { foods: foodsById, limits: dayLimits(facts, regimenTables) });
        for (const move of moves) {
          expect(findDayProblems(applyMoves(one, [move]), foodsById)).toEqual([]);
          for (const other of moves.filter(({ eventId }) => eventId !== move.eventId)) {
            if (!isPossible(one, [move, other], foodsById)) continue;
            const kept = one.events.filter(({ keep }) => keep);
            expect(applyMoves(one, [move, other]).events).toEqual(expect.arrayContaining(kept));
          }
        }
      }),
      { ...settings, numRuns: PAIRS / 10 },
    );
  }, 600_000);

  test('is made where nobody is named', () => {
    fc.assert(
      fc.property(day, (one) => {
        expect(listMoves(one, { foods: foodsById, limits: dayLimits(undefined, regimenTables) })).toEqual([]);
      }),
      { ...settings, numRuns: 200 },
    );
  });
});
