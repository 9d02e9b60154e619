import { expect, test } from 'vitest';
import { sayChange } from './sayChange.ts';

test('a change of level in one sentence, without a promise', () => {
  expect(
    sayChange({
      to: 'low',
      changes: [
        { item: 'toothpaste_f_twice_daily', from: false, to: true },
        { item: 'plaque_heavy_visible', from: true, to: false },
        { item: 'snacks_between_meals_per_day', from: 5, to: 3 },
      ],
    }),
  ).toMatch(/^Low with fluoride paste twice a day or more, no heavy plaque.* and .*: 3 instead of 5\.$/);
});
