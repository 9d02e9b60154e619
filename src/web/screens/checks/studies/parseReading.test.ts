import { expect, test } from 'vitest';
import { testMeter as meter } from '../../../../../test/testMeter.ts';
import { parseReading } from './parseReading.ts';

test.each([
  ['5150', 5150, 'exact'],
  [' 5,150 ', 5150, 'exact'],
  ['12 300', 12_300, 'exact'],
  ['<40', 40, 'at-most'],
  ['> 60000', 60_000, 'at-least'],
] as const)('takes %j', (typed, rlu, bound) => {
  expect(parseReading(typed, meter)).toEqual({ ok: true, rlu, bound });
});

test.each(['', 'many', '5,15', '12.5', '0', '-40', '60001', '1e3', '39'])('says why %j is no reading', (typed) => {
  expect(parseReading(typed, meter)).toMatchObject({ ok: false, says: expect.stringMatching(/[a-z].*\.$/) });
});
