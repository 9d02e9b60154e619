import { describe, expect, test } from 'vitest';
import { sayIn } from './sayMessage.ts';

const catalog = {
  title: 'Home care',
  startWith: 'Start with: {item}.',
  'extra.courseDays': 'For {n, plural, one {# day} other {# days}}.',
};
const say = sayIn(catalog, 'en-GB');

test('plain words as they stand, places filled in, plurals by the language', () => {
  expect(say('title')).toBe('Home care');
  expect(say('startWith', { item: '{gum}' })).toBe('Start with: {gum}.');
  expect([1, 2].map((n) => say('extra.courseDays', { n }))).toEqual(['For 1 day.', 'For 2 days.']);
});

// CLDR plural categories of Arabic for whole numbers: 0 zero, 1 one, 2 two, 3-10 few, 11-99 many, 100-102 other.
describe('Arabic', () => {
  const plural = '{n, plural, zero {z} one {o} two {t} few {f #} many {m #} other {x #}}';
  const arabic = sayIn({ 'amount.pieces': plural }, 'ar-EG-u-nu-latn');

  test.each([
    [0, 'z'],
    [1, 'o'],
    [2, 't'],
    [3, 'f 3'],
    [10, 'f 10'],
    [11, 'm 11'],
    [99, 'm 99'],
    [100, 'x 100'],
  ])('%i', (n, said) => {
    expect(arabic('amount.pieces', { n })).toBe(said);
  });
});

test('a missing message and a place without a value are mistakes, never a gap on the page', () => {
  expect(() => say('goal.none')).toThrow('goal none');
  expect(() => say('startWith')).toThrow('{item}');
  expect(() => say('extra.courseDays', {})).toThrow('{n}');
  expect(() => sayIn({}, 'en')('caution.constructor')).toThrow('caution constructor');
});
