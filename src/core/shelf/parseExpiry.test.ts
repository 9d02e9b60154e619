import { expect, test } from 'vitest';
import { parseExpiry } from './parseExpiry.ts';

test.each([
  ['2027-03-31', '2027-03-31'],
  [' 20270331 ', '2027-03-31'],
  ['2027 03 31', '2027-03-31'],
  ['2027-02', '2027-02-28'],
  ['2028-02', '2028-02-29'],
  ['02/2028', '2028-02-29'],
  ['4.2027', '2027-04-30'],
  ['12 2027', '2027-12-31'],
])('%s is %s', (typed, iso) => {
  expect(parseExpiry(typed)).toBe(iso);
});

test.each(['', 'soon', '2027-02-30', '03/04/2027', '31.03.2027', '13/2027', '00/2027', '03/27', '202703', '2027'])(
  '%s is no last day',
  (typed) => {
    expect(parseExpiry(typed)).toBeUndefined();
  },
);
