import { expect, it, test } from 'vitest';
import { CONDITION_IDS } from '../core/reading/readingConditions.ts';
import { readingSources } from './sources-reading.ts';
import { swabConditions } from './swabConditions.ts';

it('has one row for each check of the core', () => {
  expect(swabConditions.map((c) => c.id).sort()).toEqual([...CONDITION_IDS].sort());
});

test.each(swabConditions)('$id names a source on record, and a waiting time without a source is a proposal', (condition) => {
  expect(Object.keys(readingSources)).toContain(condition.source.key);
  if (condition.limitUnit === 'min') expect(condition.source.status).toBe('proposal');
  if (condition.limit !== undefined) expect(condition.limitUnit).toBeDefined();
});

it('voids for the conditions that make it another measurement, and only flags the rest', () => {
  expect(swabConditions.filter((c) => c.failing === 'not-counted').map((c) => c.id)).toEqual([
    'once-in-24-h',
    'before-cleaning',
    'lot-in-date',
    'meter-range',
    'control-in-line',
    'site',
  ]);
});
