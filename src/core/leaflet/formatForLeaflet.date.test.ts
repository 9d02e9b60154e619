import { expect, test } from 'vitest';
import {
  capitaliseFirst,
  formatLeafletDate,
  formatMoney,
  formatNumber,
  leafletCurrency,
  leafletLocale,
  lowerFirst,
} from './formatForLeaflet.ts';

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

test('French and Arabic: the words of the language, the digits of the pack, and the calendar of the visit, whatever the region', () => {
  expect(formatLeafletDate('2026-12-31', 'fr-US', 'day')).toBe('31 décembre 2026');
  const place = { name: 'x', invented: true };
  expect(leafletLocale('ar', { ...place, jurisdiction: 'UK' })).toBe('ar-GB-u-nu-latn');
  for (const locale of [undefined, 'en-SA', 'en-EG', 'en-IR']) {
    const arabic = leafletLocale('ar', { ...place, ...(locale && { locale }) });
    expect(formatLeafletDate('2026-12-31', arabic, 'day')).toMatch(/^31 ديسمبر،? 2026$/);
    expect(formatNumber(2.5, arabic)).toBe('2.5');
    expect(formatMoney(1250, 'USD', arabic)).toMatch(/^12\.50\sدولار أمريكي$/);
  }
  // Where the calendar of the region is another one, the date of the visit stays what it is.
  expect(formatLeafletDate('2026-12-31', 'en-SA', 'month')).toBe('December 2026');
});

test('the first letter, whatever it is', () => {
  expect(capitaliseFirst('óxido', 'es')).toBe('Óxido');
  expect(capitaliseFirst('', 'es')).toBe('');
  expect(lowerFirst('Óxido de cinc', 'es')).toBe('óxido de cinc');
  expect(lowerFirst('UV lamp', 'en')).toBe('UV lamp');
  expect(lowerFirst('', 'en')).toBe('');
});
