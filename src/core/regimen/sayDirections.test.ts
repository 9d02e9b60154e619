import { expect, test } from 'vitest';
import { sayDirections } from './sayDirections.ts';

test.each([
  [
    { use: { timesPerDay: 2, amount: 'a ribbon of 1 cm' }, amountNote: 'A ribbon of 2 cm. Spit out.', amountKind: 'ribbon' },
    'Twice a day: A ribbon of 2 cm. Spit out',
  ],
  [{ use: { timesPerDay: 2, amount: 'a ribbon of 1 cm.' } }, 'Twice a day: a ribbon of 1 cm'],
  // A note that is no amount never takes the place of one.
  [
    { use: { timesPerDay: 1 / 7, amount: '10 mL for 1 minute' }, amountNote: 'Nothing to eat afterwards.' },
    'Once a week: 10 mL for 1 minute. Nothing to eat afterwards',
  ],
  [{ use: { timesPerDay: 0.5, amount: '10 mL' } }, 'Once every 2 days: 10 mL'],
  [{ use: { timesPerDay: 3, amount: 'a piece', courseDays: 14 } }, '3 times a day: a piece, for 14 days'],
  [{ use: { timesPerDay: 1, amount: 'a thin coat', atVisit: true } }, 'At the visit: a thin coat'],
] as const)('%j', (line, said) => {
  expect(sayDirections(line)).toBe(said);
});
