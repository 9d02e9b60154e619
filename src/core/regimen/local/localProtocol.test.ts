import { expect, it, test } from 'vitest';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import { type CheckItemInput, checkItem } from '../checkItem.ts';
import type { PersonFacts, ShelfItem } from '../types.ts';
import { type LocalProtocol, protocolsOn } from './localProtocol.ts';

const facts: PersonFacts = {
  ageYears: 40,
  ageMonths: 480,
  pregnant: false,
  breastfeeding: false,
  canSpit: true,
  allergies: [],
  medicines: [],
  conditions: [],
  youngChildAtHome: false,
  dryMouth: false,
};
const own: LocalProtocol = {
  id: 'own',
  name: 'Own rule',
  author: 'Dr. Ahlgren',
  date: '2026-01-05',
  agentId: 'CHX_RINSE',
  percentAtMost: 0.2,
  timesPerWeekAtMost: 7,
  courseDaysAtMost: 7,
  levels: ['high', 'extreme'],
  needs: ['antimicrobial'],
  fromAgeYears: 21,
  belowAgeYears: 70,
  exclusions: { conditions: ['reflux'], medicines: [], allergies: [], pregnant: true },
};
const rinse = demoShelf.find((i) => i.id === 'rinse-chlorhexidine-plain') as ShelfItem;
const check = (rest: Partial<CheckItemInput> = {}, localProtocols: readonly LocalProtocol[] = [own]) =>
  checkItem({ item: rinse, facts, level: 'high', jurisdiction: 'US', tables, localProtocols, ...rest });
const hits = (c: ReturnType<typeof check>) => [...c.stops, ...c.asks].filter((b) => b.ruleId === 'P21').map((b) => [b.level, b.because]);
const outside = 'outside the practice\'s own protocol "Own rule":';

it('covers whom it names, and then the rule of the dentist’s own choice still stands', () => {
  const covered = check();
  expect(hits(covered)).toEqual([]);
  expect(covered.localProtocol?.id).toBe('own');
  expect(covered.cautions.map((b) => b.ruleId)).toContain('P02');
});

test.each([
  ['age below', { facts: { ...facts, ageYears: 20 } }, ['stop', `${outside} under 21 years`]],
  ['age at the end', { facts: { ...facts, ageYears: 70 } }, ['stop', `${outside} 70 years or more`]],
  ['another level', { level: 'low' }, ['stop', `${outside} level low`]],
  ['a condition', { facts: { ...facts, conditions: ['reflux'] } }, ['stop', `${outside} reflux or heartburn`]],
  ['too strong', { item: { ...rinse, percent: 0.25 } }, ['stop', `${outside} stronger than 0.2 %`]],
  ['too often', { item: { ...rinse, use: { ...rinse.use, timesPerDay: 2 } } }, ['stop', `${outside} more than 7 times a week`]],
  ['without an end', { item: { ...rinse, use: { ...rinse.use, courseDays: undefined } } }, ['stop', `${outside} longer than 7 days`]],
  ['no level yet', { level: undefined }, ['ask-first', `${outside} not known yet: confirmed level`]],
  ['conditions not asked', { facts: { ...facts, conditions: undefined } }, ['ask-first', `${outside} not known yet: conditions`]],
  ['pregnancy not asked', { facts: { ...facts, pregnant: undefined } }, ['ask-first', `${outside} not known yet: pregnancy`]],
] as const)('%s: not under it', (_what, rest, [level, because]) => {
  const hit = hits(check(rest));
  expect(hit).toHaveLength(1);
  expect(hit[0]?.[0]).toBe(level);
  expect(hit[0]?.[1]?.toLowerCase().startsWith(because.toLowerCase().split(' or ')[0] ?? '')).toBe(true);
  expect(check(rest).localProtocol).toBeUndefined();
});

it('is for one of several, the kindest', () => {
  const younger = { ...own, id: 'younger', fromAgeYears: 18 };
  expect(check({ facts: { ...facts, ageYears: 20 } }, [own, younger]).localProtocol?.id).toBe('younger');
});

it('says nothing of what may be proposed anyway', () => {
  const item = demoShelf.find((i) => i.agentId === 'F_PASTE_STD') as ShelfItem;
  expect(hits(check({ item, level: 'low' }, [{ ...own, agentId: 'F_PASTE_STD' }]))).toEqual([]);
});

it('holds from its date to the day before it is retired', () => {
  const retired = { ...own, retired: { on: '2026-03-04', by: 'Dr. Ahlgren', reason: 'stains' } };
  const holds = (day: string) => protocolsOn([retired], day).length;
  expect([holds('2026-01-04'), holds('2026-01-05'), holds('2026-03-03'), holds('2026-03-04')]).toEqual([0, 1, 1, 0]);
});
