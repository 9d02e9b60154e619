import { describe, expect, it, test } from 'vitest';
import { searchFoods } from '../core/plaque/day/searchFoods.ts';
import { foods, foodsById } from './foods.ts';

describe('the table of foods', () => {
  it('is of a size that a person can look through, and names each food once', () => {
    expect(foods.length).toBeGreaterThanOrEqual(120);
    expect(foodsById.size).toBe(foods.length);
    for (const language of ['en', 'es'] as const) expect(new Set(foods.map((f) => f.name[language])).size).toBe(foods.length);
    expect(new Set(foods.map((f) => f.source.note)).size).toBe(foods.length);
  });

  test.each(foods.map((food) => [food.id, food] as const))('%s: parts that add up, a portion and a row of the source', (_id, food) => {
    expect(food.sugarsGPer100).toBeGreaterThanOrEqual(0);
    // Sugars, starch and water are measured apart: a little over 100 is rounding.
    expect(food.sugarsGPer100 + food.starchGPer100 + food.waterGPer100).toBeLessThanOrEqual(102);
    expect(food.usualAmount).toBeGreaterThan(0);
    expect(food.usualMinutes).toBeGreaterThan(0);
    expect(food.source.note).toMatch(/^NDB \d{4,5}$/);
    expect(food.unit === 'g' || food.retention === 'clears').toBe(true);
  });

  // USDA SR, read in the table: NDB 14148, 19120, 1077, 9040. Exact.
  test.each([
    ['cola', 9.94],
    ['milk-chocolate', 51.5],
    ['milk', 5.05],
    ['banana', 12.23],
  ])('%s holds %f g of sugars in 100 g', (id, sugars) => {
    expect(foodsById.get(id)?.sugarsGPer100).toBe(sugars);
  });
});

describe('searchFoods', () => {
  const found = (typed: string, language?: 'en' | 'es') => searchFoods(typed, foods, language).map(({ id }) => id);

  it('finds the beginning of any word, the name that begins so first', () => {
    expect(found('app').slice(0, 2)).toEqual(['apple', 'apple-juice']);
    expect(found('app')).toContain('baby-apple-juice');
    expect(found('juice ap')[0]).toBe('apple-juice');
    expect(found('fizzy')).toContain('cola');
    expect(found('pple')).toEqual([]);
  });

  it('takes no notice of accents and capitals, in both languages', () => {
    expect(found('platano', 'es')).toEqual(expect.arrayContaining(['banana']));
    expect(found('PLÁTANO')).toEqual(found('platano'));
    expect(found('jugo de')).toEqual(found('JUGO DE'));
    expect(found('jamon', 'es')).toEqual(['ham']);
  });

  it('gives nothing for nothing', () => {
    expect(found('')).toEqual([]);
    expect(found(' , ')).toEqual([]);
    expect(found('cola xyz')).toEqual([]);
  });
});
