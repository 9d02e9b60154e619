import { describe, expect, test } from 'vitest';
import { actionOfKey, nextWanted, replyOfKey } from './keys.ts';
import type { Entry, Line } from './line.ts';
import { lettersWithout } from './line.ts';

const line = (id: string, letter: string, entry: Entry, part: Partial<Line> = {}): Line => ({
  id,
  letter,
  label: id,
  entry,
  mayBeUnknown: true,
  text: 'not asked',
  tone: 'unknown',
  wanted: true,
  reconfirmable: false,
  private: false,
  sources: [],
  ...part,
});

const yesNo = line('rinse', 'a', { kind: 'yes-no' });
const snacks = line('snacks', 'b', { kind: 'digit', max: 9 });
const bedtime = line('bedtime', 'c', {
  kind: 'choice',
  choices: [
    { id: 'water', label: 'water' },
    { id: 'milk', label: 'milk' },
  ],
});
const medicines = line('medicines', 'e', { kind: 'list', choices: [] });
const flow = line('flow', 'f', { kind: 'number' });
const lines = [yesNo, snacks, bedtime, medicines, flow];
const at = (open: Line | null, commands = '') => ({ scope: 'food' as const, line: open, lines, commands });

describe('actionOfKey', () => {
  test('at section level digits are sections and letters open lines', () => {
    expect(actionOfKey('3', at(null))).toEqual({ do: 'section', number: 3 });
    expect(actionOfKey('8', at(null))).toBeNull();
    expect(actionOfKey('c', at(null))).toEqual({ do: 'open', line: 'bedtime' });
    expect(actionOfKey('y', at(null))).toBeNull();
    expect(actionOfKey('=', at(null))).toEqual({ do: 'reconfirm' });
  });

  test('in an open line the answer keys act', () => {
    expect(actionOfKey('n', at(yesNo))).toEqual({ do: 'reply', line: 'rinse', reply: { how: 'asked', value: false } });
    expect(actionOfKey('4', at(snacks))).toEqual({ do: 'reply', line: 'snacks', reply: { how: 'asked', value: 4 } });
    expect(actionOfKey('2', at(bedtime))).toEqual({ do: 'reply', line: 'bedtime', reply: { how: 'asked', value: 'milk' } });
    expect(actionOfKey('0', at(medicines))).toEqual({ do: 'reply', line: 'medicines', reply: { how: 'asked', value: [] } });
    expect(actionOfKey('d', at(flow))).toEqual({ do: 'reply', line: 'flow', reply: { how: 'does-not-know' } });
    expect(actionOfKey('x', at(bedtime))).toEqual({ do: 'reply', line: 'bedtime', reply: { how: 'declined' } });
  });

  test('a digit that is no answer of the open line is still a section', () => {
    expect(actionOfKey('5', at(yesNo))).toEqual({ do: 'section', number: 5 });
    expect(actionOfKey('5', at(bedtime))).toEqual({ do: 'section', number: 5 });
  });

  test('another letter opens that line, Escape leaves, arrows move, a command wins over nothing', () => {
    expect(actionOfKey('b', at(yesNo))).toEqual({ do: 'open', line: 'snacks' });
    expect(actionOfKey('Escape', at(yesNo))).toEqual({ do: 'leave' });
    expect(actionOfKey('ArrowUp', at(null))).toEqual({ do: 'move', by: -1 });
    expect(actionOfKey('g', at(null, 'cg'))).toEqual({ do: 'command', letter: 'g' });
    expect(actionOfKey('F5', at(null))).toBeNull();
  });

  test('where unknown makes no sense, d and x are not answers', () => {
    expect(replyOfKey('d', { ...yesNo, mayBeUnknown: false })).toBeUndefined();
  });

  test('the tenth choice is 0', () => {
    const ten = line('why', 'g', { kind: 'choice', choices: Array.from({ length: 10 }, (_, i) => ({ id: `r${i}`, label: '' })) });
    expect(replyOfKey('0', ten)).toEqual({ how: 'asked', value: 'r9' });
  });
});

test('of a date, t is today, n the choice in its place, d and x unknown', () => {
  const choices = [{ id: 'never', label: 'never' }];
  const bitewings = line('bitewings', 'i', { kind: 'past-date', onDate: '2026-11-25', choices });
  expect(replyOfKey('t', bitewings)).toEqual({ how: 'asked', value: '2026-11-25' });
  expect(replyOfKey('n', bitewings)).toEqual({ how: 'asked', value: 'never' });
  expect(replyOfKey('d', bitewings)).toEqual({ how: 'does-not-know' });
  expect(replyOfKey('6', bitewings)).toBeUndefined();
});

test('no letter of a line is an answer key or a command', () => {
  const letters = lettersWithout('uz');
  for (const taken of 'dnxyuz') expect(letters).not.toContain(taken);
  expect(letters).toHaveLength(20);
});

test('the next wanted line goes round and never back to the one just answered', () => {
  const known = { wanted: false };
  const list = [
    line('a', 'a', flow.entry),
    line('b', 'b', flow.entry, known),
    line('c', 'c', flow.entry),
    line('e', 'e', flow.entry, known),
  ];
  expect(nextWanted(list, 'a')).toBe('c');
  expect(nextWanted(list, 'c')).toBe('a');
  expect(nextWanted(list, null)).toBe('a');
  expect(nextWanted([list[0] as Line], 'a')).toBeNull();
});
