import { expect, test } from 'vitest';
import { demoPractice } from '../../../content/demo/practice.ts';
import { MULTI_RULES } from '../../../core/stats/multiRules.ts';
import { sayPlanFigures } from './sayPlanFigures.ts';

const [meter] = demoPractice.meters;
if (!meter) throw new Error('the invented practice has a meter');
const target = { lotId: 'a', meanLn: 8, sdLn: 0.13, count: 10, from: 'comparison' } as const;
const plan = { rules: MULTI_RULES, meter, targets: [target] };

test('a plan says what it costs, how soon it notices and how often it stops for nothing', () => {
  expect(sayPlanFigures({ ...plan, every: { kind: 'daily' } })).toMatch(
    /^about 22 swabs a month, price of a swab not known; a rise of 30 % is noticed after \d+ days on average, a fall after (a day|\d+ days); a stop without a cause about every \d+ days\.$/,
  );
  expect(sayPlanFigures({ ...plan, every: { kind: 'weekly-and-new-lot' } })).toMatch(
    /^about 4 swabs a month, price of a swab not known; a rise of 30 % is noticed after/,
  );
});

test.each([
  ['daily', 245, 'GBP', 'about 22 swabs a month, 53.90 GBP;'],
  ['weekly-and-new-lot', 245, 'GBP', 'about 4 swabs a month, 10.78 GBP;'],
  ['daily', 245, undefined, 'about 22 swabs a month, 53.90 in your currency;'],
  // Given away is not the same as not known.
  ['daily', 0, 'USD', 'about 22 swabs a month, 0.00 USD;'],
] as const)('%s at %i cents %s', (kind, swabPriceCents, currency, words) => {
  expect(sayPlanFigures({ ...plan, every: { kind }, swabPriceCents, currency })).toContain(words);
});

test('without a target the noise of the meter stands in, and is wider', () => {
  const daysOf = (text: string) => Number(/noticed after (\d+) days/.exec(text)?.[1]);
  const every = { kind: 'weekly-and-new-lot' } as const;
  expect(daysOf(sayPlanFigures({ ...plan, targets: [], every }))).toBeGreaterThan(daysOf(sayPlanFigures({ ...plan, every })));
});

test('the warning alone stops nothing, and that is said', () => {
  expect(sayPlanFigures({ ...plan, rules: ['1-2s'], every: { kind: 'daily' } })).toBe('No rule is ticked that could stop anything.');
});
