import { expect, test } from 'vitest';
import { regimenTables } from '../../../content/regimenTables.ts';
import { listSettable } from '../../../core/regimen/disagreement/settleTables.ts';
import { sayBothSides } from './disagreements.ts';

const said = (id: string, disagreements = {}) => {
  const row = listSettable(regimenTables).find((one) => one.id === id);
  if (!row) throw new Error(`no such disagreement: ${id}`);
  return sayBothSides(row, { disagreements });
};

test('beside a rule stands the side that holds, whose choice it is, and every other side', () => {
  expect(said('rinse-age')).toBe(
    'Not chosen, so the stricter holds: from 8 years, as the national toolkit of 2021 offers it. The other side: from 6 years, as the labels print it.',
  );
  expect(said('rinse-age', { 'rinse-age': 'from-6' })).toBe(
    'From 6 years, as the labels print it: chosen by this practice. The other side: from 8 years, as the national toolkit of 2021 offers it.',
  );
  expect(said('chlorhexidine-and-paste', { 'chlorhexidine-and-paste': 'two-hours' })).toBe(
    '2 hours: chosen by this practice. The other side: 30 minutes or more; or no time: a later review saw no loss.',
  );
});
