import { expect, test } from 'vitest';
import { nextByLetter } from './WhoForm.tsx';

const members = [
  { id: 'ahlgren', name: 'Dr. Ahlgren' },
  { id: 'ines', name: 'Ines Marrow' },
  { id: 'maia', name: 'Maia Ödal' },
];

test.each([
  ['ines', 'd', 'ahlgren'],
  ['ines', 'A', 'ahlgren'],
  ['ahlgren', 'm', 'ines'],
  ['ines', 'm', 'maia'],
  ['maia', 'm', 'ines'],
  ['ines', 'o', 'maia'],
  ['ines', 'ö', 'maia'],
  ['ines', 'x', undefined],
])('from %s, %s leads to %s', (chosen, letter, found) => {
  expect(nextByLetter(members, chosen, letter)).toBe(found);
});
