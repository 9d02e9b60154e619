import { expect, test } from 'vitest';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import { proposePlan } from '../proposePlan.ts';
import type { Need, NeedKind, PersonFacts } from '../types.ts';
import { withoutTurnedDown } from './withoutTurnedDown.ts';

const facts: PersonFacts = {
  ...{ ageYears: 45, ageMonths: 540, weightKg: 70, pregnant: false, breastfeeding: false, canSpit: true },
  ...{ allergies: [], medicines: [], conditions: [], dogAtHome: false, youngChildAtHome: false },
  ...{ dryMouth: false, dentures: false, braces: false, jawPain: false },
};
/** Named, so that no paste waits for a signature. */
const NAMED: Readonly<Partial<Record<NeedKind, Need['agentIds']>>> = { 'fluoride-base': [['F_PASTE_STD']] };
const need = (kind: NeedKind): Need => ({ kind, state: 'needed', because: 'asked', agentIds: NAMED[kind], sources: [] });
const proposed = (kinds: readonly NeedKind[]) =>
  proposePlan({
    facts,
    needs: kinds.map(need),
    shelf: demoShelf,
    signed: [],
    settings: { jurisdiction: 'US' },
    tables,
  }).regimens?.[0];
const both = proposed(['fluoride-base', 'sweetener']);
const pasteAlone = proposed(['fluoride-base']);
if (!both || !pasteAlone) throw new Error('the demonstration shelf has paste and sweetener');
const sweetener = both.lines.find((l) => l.meets.includes('sweetener'))?.shelfItemId;

test('nothing turned down: the same regimen', () => {
  expect(withoutTurnedDown(both, () => false, demoShelf)).toBe(both);
});

test('tasks, cost, supply and refill are those of a regimen that never had it, and its need is open', () => {
  const left = withoutTurnedDown(both, (id) => id === sweetener, demoShelf);
  const { tasksPerDay, monthlyCostCents, supply, refillOn } = pasteAlone;
  expect(tasksPerDay).toBe(2);
  expect(left).toMatchObject({ tasksPerDay, monthlyCostCents, supply, refillOn, why: [] });
  expect(left.lines.map((l) => l.shelfItemId)).toEqual(pasteAlone.lines.map((l) => l.shelfItemId));
  expect(left.unmet).toEqual([...both.unmet, { need: 'sweetener', because: 'Turned down today.' }]);
  expect(both.monthlyCostCents).toBeGreaterThan(monthlyCostCents ?? Number.POSITIVE_INFINITY);
});

test('a pack that is no longer on the shelf has no known price', () => {
  expect(withoutTurnedDown(both, (id) => id === sweetener, []).monthlyCostCents).toBeNull();
});
