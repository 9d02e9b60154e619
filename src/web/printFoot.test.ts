import { expect, test } from 'vitest';
import { quoteCss } from './printFoot.ts';

test('a name cannot leave its quotes', () => {
  expect(quoteCss('Odile Brandt')).toBe('"Odile Brandt"');
  expect(quoteCss('a"b\\c\nd')).toBe('"a\\22 b\\5c c\\a d"');
});
