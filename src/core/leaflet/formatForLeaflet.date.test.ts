import { expect, test } from 'vitest';
import { capitaliseFirst, fillIn, formatLeafletDate, leafletCurrency, leafletLocale, lowerFirst } from './formatForLeaflet.ts';

test('a local date stays its own day, in any zone', () => {
  expect(formatLeafletDate('2026-01-01', 'en-GB', 'weekday')).toMatch(/^Thursday,? 1 January 2026$/);
  expect(formatLeafletDate('2026-12-31', 'es-US', 'day')).toBe('31 de diciembre de 2026');
  expect(formatLeafletDate('2026-12-31', 'es-US', 'month')).toBe('diciembre de 2026');
});

test("the language is the reader's, the region the site's", () => {
  const practice = { name: 'x', invented: true };
  expect(leafletLocale('es', { ...practice, jurisdiction: 'US' })).toBe('es-US');
  expect(leafletLocale('es', { ...practice, jurisdiction: 'US', locale: 'en-IE' })).toBe('es-IE');
  expect(leafletLocale('en', practice)).toBe('en');
  expect(leafletCurrency({ ...practice, jurisdiction: 'UK' })).toBe('GBP');
  expect(leafletCurrency({ ...practice, jurisdiction: 'UK', currency: 'EUR' })).toBe('EUR');
  expect(leafletCurrency(practice)).toBeUndefined();
});

test('a place without a value is never printed', () => {
  expect(fillIn('{a} and {b}', { a: 1, b: 'two' })).toBe('1 and two');
  expect(() => fillIn('{a} and {b}', { a: 1 })).toThrow('{b}');
});

test('the first letter, whatever it is', () => {
  expect(capitaliseFirst('óxido', 'es')).toBe('Óxido');
  expect(capitaliseFirst('', 'es')).toBe('');
  expect(lowerFirst('Óxido de cinc', 'es')).toBe('óxido de cinc');
  expect(lowerFirst('UV lamp', 'en')).toBe('UV lamp');
  expect(lowerFirst('', 'en')).toBe('');
});
