import { expect, test } from 'vitest';
import { parseJson } from './parseJson.ts';

test('reads JSON, with or without a byte order mark', () => {
  expect(parseJson('{"a":1}')).toEqual({ a: 1 });
  expect(parseJson('\uFEFF[1]')).toEqual([1]);
});

test.each([
  ['', /is empty/],
  [' \n', /is empty/],
  ['{"a":1', /is not valid JSON/],
  ['{"a":1 "b":2}', /is not valid JSON \(at character 8\)/],
  ['{\n "a":1,\n "b" 2\n}', /is not valid JSON \(at line 3, column 6\)/],
  ['{"a":NaN}', /is not valid JSON/],
  ["{'a':1}", /is not valid JSON/],
])('%j is refused in one sentence', (text, message) => {
  expect(() => parseJson(text)).toThrow(message);
  try {
    parseJson(text);
  } catch (error) {
    expect(String(error)).not.toMatch(/\n|undefined|at Object/);
  }
});
