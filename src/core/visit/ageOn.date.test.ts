import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ageOn } from './ageOn.ts';

// Worked by hand from the calendar. 29 February: common practice counts the birthday on 1 March in a common year.
test.each([
  { birthDate: '1980-11-25', onDate: '2026-11-25', years: 46, months: 552 },
  { birthDate: '1980-11-26', onDate: '2026-11-25', years: 45, months: 551 },
  { birthDate: '2026-11-25', onDate: '2026-11-25', years: 0, months: 0 },
  { birthDate: '2020-11-26', onDate: '2026-11-25', years: 5, months: 71 },
  { birthDate: '2020-11-25', onDate: '2026-11-25', years: 6, months: 72 },
  { birthDate: '2008-02-29', onDate: '2026-02-28', years: 17, months: 215 },
  { birthDate: '2008-02-29', onDate: '2026-03-01', years: 18, months: 216 },
  { birthDate: '1999-12-31', onDate: '2000-01-01', years: 0, months: 0 },
])('born $birthDate, on $onDate', ({ birthDate, onDate, years, months }) => {
  expect(ageOn(birthDate, onDate)).toEqual({ ageYears: years, ageMonths: months });
});

describe('bounds', () => {
  it.each([
    ['not-a-date', '2026-11-25', /birthDate/],
    ['2026-11-25', '2026-13-01', /onDate/],
    ['2026-11-26', '2026-11-25', /before birthDate/],
  ])('%s, %s is refused', (birthDate, onDate, message) => {
    expect(() => ageOn(birthDate, onDate)).toThrow(message);
  });

  it('years are whole months / 12, and never fall as days pass', () => {
    const day = fc.oneof(fc.constantFrom(0, 1, 58, 59, 60, 364, 365, 366, 1460, 1461), fc.nat(36_000));
    const iso = (n: number) => new Date(Date.UTC(1930, 0, 1) + n * 86_400_000).toISOString().slice(0, 10);
    fc.assert(
      fc.property(day, day, (birth, later) => {
        const a = ageOn(iso(birth), iso(birth + later));
        const b = ageOn(iso(birth), iso(birth + later + 1));
        expect(a.ageYears).toBe(Math.floor(a.ageMonths / 12));
        expect(b.ageMonths).toBeGreaterThanOrEqual(a.ageMonths);
        expect(b.ageMonths - a.ageMonths).toBeLessThanOrEqual(1);
      }),
    );
  });
});
