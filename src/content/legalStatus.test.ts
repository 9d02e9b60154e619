import { describe, expect, it, test } from 'vitest';
import { checkItem } from '../core/regimen/checkItem.ts';
import { legalStatusOf, type OwnLegalStatuses, releaseUnder } from '../core/regimen/legalStatus.ts';
import type { Jurisdiction, PersonFacts, ShelfItem } from '../core/regimen/types.ts';
import { agents } from './agents.ts';
import { demoShelf } from './demo/shelf.ts';
import { legalStatuses, placeDependentAgentIds } from './legalStatus.ts';
import { regimenTables } from './regimenTables.ts';

const facts: PersonFacts = {
  ageYears: 30,
  ageMonths: 360,
  allergies: [],
  medicines: [],
  conditions: [],
  canSpit: true,
  youngChildAtHome: false,
};
const itemOf = (agentId: string): ShelfItem => {
  const item = demoShelf.find((i) => i.agentId === agentId);
  if (!item) throw new Error(`no ${agentId} on the shelf`);
  return item;
};
const barsOf = (agentId: string, jurisdiction: Jurisdiction, legal?: OwnLegalStatuses) => {
  const check = checkItem({ item: itemOf(agentId), facts, level: 'high', jurisdiction, legal, tables: regimenTables });
  return [...check.stops, ...check.asks].filter((b) => ['P16', 'P17'].includes(b.ruleId)).map((b) => `${b.ruleId} ${b.level}`);
};

test('every agent has one row, and every row an agent', () => {
  expect(legalStatuses.map((r) => r.agentId).sort()).toEqual(agents.map((a) => a.id).sort());
});

describe('where the law is not known', () => {
  it.each(['unknown', 'by-hand'] as const)('%s: what depends on the place asks first, the rest does not', (place) => {
    for (const id of ['F_PASTE_5000', 'F_PASTE_2800', 'F_RINSE_02', 'CHX_RINSE', 'SDF38'])
      expect(barsOf(id, place)).toEqual(['P16 ask-first']);
    for (const id of ['F_PASTE_STD', 'F_VARNISH', 'XYLITOL', 'F_RINSE_005']) expect(barsOf(id, place)).toEqual([]);
  });

  it('a known place still asks for what no source tells of it', () => {
    expect(barsOf('F_PASTE_5000', 'EU')).toEqual(['P16 ask-first']);
    expect(barsOf('CHX_RINSE', 'EU')).toEqual([]);
    expect(barsOf('F_RINSE_02', 'UK')).toEqual(['P16 ask-first']);
    expect(barsOf('F_RINSE_02', 'US')).toEqual([]);
  });
});

describe('what the practice sets by hand', () => {
  it('answers the question, and can shut a product out', () => {
    expect(barsOf('F_PASTE_5000', 'by-hand', { F_PASTE_5000: 'prescription' })).toEqual([]);
    expect(barsOf('F_PASTE_5000', 'UK', { F_PASTE_5000: 'not-sold' })).toEqual(['P17 stop']);
  });

  it('never loosens what the agent itself asks', () => {
    const loose = Object.fromEntries(placeDependentAgentIds.map((id) => [id, 'over-the-counter' as const]));
    for (const { id, release } of agents.filter((a) => a.release !== 'anyone' && demoShelf.some((i) => i.agentId === a.id))) {
      const item = { ...itemOf(id), release: 'anyone' as const };
      const check = checkItem({ item, facts, level: 'high', jurisdiction: 'by-hand', legal: loose, tables: regimenTables });
      expect([id, check.release]).toEqual([id, release]);
    }
  });

  it('is not read from an object’s own machinery', () => {
    expect(legalStatusOf('constructor', { jurisdiction: 'UK', legal: {} }, legalStatuses)).toBeUndefined();
    expect(releaseUnder(undefined)).toBe('dentist');
  });
});
