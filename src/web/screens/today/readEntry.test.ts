import { expect, test } from 'vitest';
import { readEntry } from './readEntry.ts';

test.each([
  ['9:40 odile', { atTime: '09:40', who: 'odile' }],
  ['0940 Odile Brandt', { atTime: '09:40', who: 'Odile Brandt' }],
  ['9.40 pm odile', { atTime: '21:40', who: 'odile' }],
  ['9pm odile', { atTime: '21:00', who: 'odile' }],
  ['940 pm', { atTime: '09:40', who: 'pm' }],
  ['1024', { who: '1024' }],
  ['1024 1099', { atTime: '10:24', who: '1099' }],
  ['2540 odile', { who: '2540 odile' }],
  ['odile', { who: 'odile' }],
  ['  ', { who: '' }],
  ['٩:٤٠ سارة', { atTime: '09:40', who: 'سارة' }],
])('%s', (typed, entry) => expect(readEntry(typed)).toEqual(entry));
