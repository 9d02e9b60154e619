import { expect, test } from 'vitest';
import { regimenTables } from '../../../content/regimenTables.ts';
import { settableByRule } from './settableByRule.ts';
import { settleTables } from './settleTables.ts';

const idOf = (ruleId: string) => settableByRule(regimenTables).get(ruleId)?.id;

test('every rule that a choice changes, adds or takes away knows on which question it hangs; no other does', () => {
  expect(['C07', 'P07', 'I01', 'I07', 'C40', 'C42', 'C43', 'C44', 'C01'].map(idOf)).toEqual([
    'rinse-age',
    'rinse-age',
    'chlorhexidine-and-paste',
    'beside-high-paste',
    'supplement-age',
    'chlorhexidine-age',
    'paste-under-2',
    'brushing-after-acid',
    undefined,
  ]);
});

test.each([
  ['from-8', 8],
  ['from-6', 6],
] as const)('what a rinse is kept back for names the age that is in force: %s', (position, years) => {
  const rule = settleTables(regimenTables, { 'rinse-age': position }).rules.find(({ id }) => id === 'C07');
  expect(rule?.because).toContain(`${years} years and over`);
  expect(rule?.trigger.ageBelowYears).toEqual({ US: years, UK: years, unknown: years });
});
