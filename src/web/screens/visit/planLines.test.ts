import { expect, test } from 'vitest';
import type { Plan } from '../../../core/regimen/types.ts';
import { replyOfKey } from './keys.ts';
import { listSwaps, MORE_REGIMENS, ONCE_SIGNED, planLines, saySwap, TASKS_ACCEPTED, tasksOfReply } from './planLines.ts';
import { RHYTHM, rhythmLine } from './rhythmLine.ts';

const item = (id: string, timesPerDay = 2) => ({ shelfItemId: id, name: `Pack ${id}`, use: { timesPerDay, amount: '' } });
const plan = {
  lines: [item('paste'), item('gum')],
  alternatives: [{ insteadOf: 'paste', line: item('gel') }],
  swaps: [
    { insteadOf: 'paste', shelfItemId: 'plain', because: 'taste', says: 'without flavour' },
    { insteadOf: 'paste', shelfItemId: 'cheap', because: 'price', says: 'costs less a month' },
    { insteadOf: 'paste', shelfItemId: 'plain', because: 'price', says: 'costs less a month' },
    { insteadOf: 'paste', shelfItemId: 'gum', because: 'time', says: 'fewer uses a day' },
  ],
  regimens: ['a', 'b', 'c', 'd'].map((id) => ({ id, lines: [] })),
  chosenRegimen: 'a',
} as unknown as Plan;
const nameOf = (id: string) => `Pack ${id}`;
const rhythm = rhythmLine({ said: undefined, past: undefined, source: { key: 'project', status: 'proposal' } });
const lines = (agreed = {}, asked: typeof rhythm | null = rhythm) =>
  planLines({ plan, agreed, commands: 'sruo', rhythm: asked, isWaiting: false, nameOf });

test('a pack that could stand in the place of another stands once, with all that makes it better; what is in the plan already does not', () => {
  expect(listSwaps(plan, 'paste').map((swap) => saySwap(swap, nameOf))).toEqual([
    'Pack plain: without flavour, costs less a month',
    'Pack cheap: costs less a month',
    'Pack gel',
  ]);
  expect(listSwaps(plan, 'paste', 'price').map((swap) => swap.shelfItemId)).toEqual(['plain', 'cheap', 'gel']);
  expect(listSwaps({ ...plan, swaps: plan.swaps?.slice(1, 2) }, 'paste', 'price').map((swap) => swap.shelfItemId)).toEqual([
    'cheap',
    'gel',
  ]);
  expect(listSwaps(plan, 'gum')).toEqual([]);
});

test('items, the other regimens, and the tasks accepted, each with a letter that is no command', () => {
  expect(lines().map(({ id, letter }) => [id, letter])).toEqual([
    ['paste', 'a'],
    ['gum', 'b'],
    [RHYTHM, 'h'],
    [MORE_REGIMENS, 'm'],
    [TASKS_ACCEPTED, 't'],
  ]);
  const waiting = planLines({ plan, agreed: {}, commands: 'sruo', rhythm, isWaiting: true, nameOf });
  expect(waiting.map(({ id, letter }) => [id, letter])[2]).toEqual([ONCE_SIGNED, 'w']);
  expect(new Set(waiting.map(({ letter }) => letter)).size).toBe(waiting.length);
  expect(lines({}, null).some(({ id }) => id === RHYTHM)).toBe(false);
  expect(lines().some((line) => line.wanted)).toBe(false);
});

test('one digit says how many tasks are accepted; not asked is not the same as any number', () => {
  const line = lines().find(({ id }) => id === TASKS_ACCEPTED);
  if (!line) throw new Error('no line');
  const keyed = (key: string) => {
    const reply = replyOfKey(key, line);
    return reply?.how === 'asked' ? tasksOfReply(String(reply.value)) : undefined;
  };
  expect(['1', '3', '8', '9', '0'].map(keyed)).toEqual([1, 3, 8, 'any', 0]);
  const said = (tasksAccepted?: number | 'any') => lines({ tasksAccepted }).at(-1);
  expect(said()).toMatchObject({ text: 'not asked', tone: 'unknown' });
  expect(said('any')).toMatchObject({ text: 'any number', tone: 'new', value: 'any' });
  expect(said(0)).toMatchObject({ text: 'none', tone: 'new' });
  expect(said(3)).toMatchObject({ text: 'at most 3', tone: 'new', value: '3' });
});
