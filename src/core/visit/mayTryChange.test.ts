import { expect, test } from 'vitest';
import { regimenTables } from '../../content/regimenTables.ts';
import { dayLimits } from '../plaque/day/dayLimits.ts';
import type { AcidDay, DayEvent } from '../plaque/day/types.ts';
import type { PersonFacts } from '../regimen/types.ts';
import { mayShowChange, mayTry } from './mayTryChange.ts';

const cola: DayEvent = {
  id: 'cola',
  kind: 'eating',
  occasion: 'between-meals',
  startMinute: 900,
  minutes: 10,
  portions: [{ food: 'cola', amount: 330 }],
};
const gum: DayEvent = { id: 'gum', kind: 'gum', startMinute: 920, minutes: 15 };
const told: AcidDay = { wakeMinute: 400, sleepMinute: 1380, events: [cola] };
const withGum: AcidDay = { ...told, events: [cola, gum] };
const later: AcidDay = { ...told, events: [{ ...cola, startMinute: 930 }] };
const withRinse: AcidDay = { ...told, events: [cola, { id: 'r', kind: 'rinse', rinse: 'fluoride', startMinute: 950, minutes: 1 }] };

test.each([
  ['nothing stands against it', { food: true, gum: true }, [true, true, true]],
  ['no gum', { food: true, gum: false }, [false, true, true]],
  ['food is protected', { food: false, gum: true }, [true, false, true]],
  ['only what to do afterwards', { food: false, gum: false }, [false, false, true]],
])('%s: gum, a later snack, a rinse', (_, may, expected) => {
  expect([withGum, later, withRinse].map((changed) => mayShowChange(told, changed, may))).toEqual(expected);
});

test('what was told is no suggestion, left out or moved it would be one', () => {
  const nothing = { food: false, gum: false };
  expect(mayShowChange(withGum, withGum, nothing)).toBe(true);
  expect(mayShowChange(withGum, { ...withGum, events: [cola, { ...gum, minutes: 20 }] }, nothing)).toBe(false);
  expect(mayShowChange(told, { ...told, events: [] }, nothing)).toBe(false);
});

test('with nobody named, or the safety check unanswered, neither food nor gum', () => {
  const facts = { ageYears: 40, ageMonths: 480 } as PersonFacts;
  expect(mayTry(dayLimits(undefined, regimenTables))).toEqual({ food: false, gum: false });
  expect(mayTry(dayLimits(facts, regimenTables))).toEqual({ food: false, gum: false });
});
