import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readClockTime } from './clockTime.ts';

test.each([
  ['9:40', '09:40'],
  ['09.40', '09:40'],
  ['0940', '09:40'],
  ['940', '09:40'],
  ['9h40', '09:40'],
  [' 9:40 am ', '09:40'],
  ['9:40 p.m.', '21:40'],
  ['12:05 am', '00:05'],
  ['12:05 pm', '12:05'],
  ['9PM', '21:00'],
  ['09:40:00', '09:40'],
  ['٩:٤٠', '09:40'],
  ['00:00', '00:00'],
  ['23:59', '23:59'],
])('%s is %s', (typed, time) => expect(readClockTime(typed)).toBe(time));

test.each(['', '9', '24:00', '9:60', '13:00 pm', '0:30 am', '9:4', '25', '12345', 'noon', '9-40', '2026-11-25', '09:40:30', 'am'])(
  '%s is no time',
  (typed) => expect(readClockTime(typed)).toBeUndefined(),
);

const edge = fc.constantFrom(0, 59, 60, 11 * 60 + 59, 12 * 60, 12 * 60 + 59, 13 * 60, 23 * 60 + 59);
const minuteOfDay = fc.oneof(edge, fc.nat(24 * 60 - 1));
const two = (n: number) => String(n).padStart(2, '0');

test('every minute of the day is read back in every way of writing it', () => {
  fc.assert(
    fc.property(minuteOfDay, (minutes) => {
      const [hour, minute] = [Math.floor(minutes / 60), minutes % 60];
      const iso = `${two(hour)}:${two(minute)}`;
      const half = `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)} ${hour < 12 ? 'am' : 'pm'}`;
      for (const typed of [iso, `${hour}:${two(minute)}`, `${two(hour)}.${two(minute)}`, two(hour) + two(minute), half])
        expect(readClockTime(typed)).toBe(iso);
    }),
  );
});

test('whatever is typed, the answer is a time of the day or none', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), fc.stringMatching(/^[\d:.h apm]{0,8}$/)), (typed) => {
      expect(readClockTime(typed) ?? '00:00').toMatch(/^([01]\d|2[0-3]):[0-5]\d$/);
    }),
  );
});
