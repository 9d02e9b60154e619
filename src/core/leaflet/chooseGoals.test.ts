import { describe, expect, test } from 'vitest';
import { caseTable } from '../../../test/leaflet/caseTable.ts';
import type { FoodLimit } from '../regimen/types.ts';
import { type GoalContext, listAllowedGoals, sayGoal, suggestAboutFood } from './chooseGoals.ts';
import { dietSuggestionAllowed } from './dietSuggestionAllowed.ts';
import { catalogOf } from './leafletTable.ts';
import { sayIn } from './sayMessage.ts';

const context = (ageYears: number, allowed: FoodLimit['allowed']): GoalContext => ({
  ageYears,
  diet: { allowed },
  goals: caseTable.goals,
  say: sayIn(catalogOf(caseTable, 'en'), 'en'),
  catalogs: Object.values(caseTable.catalogs),
});

test.each([
  ['any', true, true],
  ['sweet-bottle-only', false, true],
  ['after-only', false, false],
] as const)('%s: food %s, bottle or cup %s, the rest always', (allowed, food, bottle) => {
  expect(dietSuggestionAllowed({ allowed }, 'food')).toBe(food);
  expect(dietSuggestionAllowed({ allowed }, 'bottle-or-cup')).toBe(bottle);
  expect(dietSuggestionAllowed({ allowed }, 'afterwards')).toBe(true);
  expect(dietSuggestionAllowed({ allowed }, 'care')).toBe(true);
});

describe('goals on offer', () => {
  const familiesAt = (ageYears: number, allowed: FoodLimit['allowed']) => [
    ...new Set(listAllowedGoals(context(ageYears, allowed)).map(({ family }) => family)),
  ];

  test.each([
    [40, 'any', ['care', 'food', 'afterwards']],
    [40, 'after-only', ['care', 'afterwards']],
    [2, 'sweet-bottle-only', ['care', 'bottle-or-cup', 'afterwards']],
    [2, 'after-only', ['care', 'afterwards']],
    [3, 'any', ['care', 'food', 'afterwards']],
  ] as const)('at %i years, %s', (ageYears, allowed, families) => {
    expect(familiesAt(ageYears, allowed)).toEqual(families);
  });

  test('whom to ask stands after each suggestion where nothing may be said about food, and only there', () => {
    const asks = (allowed: FoodLimit['allowed']) =>
      listAllowedGoals(context(40, allowed))
        .filter(({ text }) => text.includes('Ask the doctor first'))
        .map(({ family }) => family);
    expect(asks('after-only')).toEqual(['afterwards']);
    expect(asks('any')).toEqual([]);
  });
});

test('blank is nothing recorded', () => {
  for (const blank of [undefined, '', '  ']) expect(sayGoal(blank, context(40, 'any'))).toBeUndefined();
});

test('a goal without words is a gap in the table', () => {
  const goals = [{ id: 'unworded', family: 'food' as const }];
  expect(() => suggestAboutFood({ ...context(40, 'any'), goals })).toThrow('unworded');
  expect(suggestAboutFood({ ...context(40, 'any'), goals: [] })).toBeUndefined();
});
