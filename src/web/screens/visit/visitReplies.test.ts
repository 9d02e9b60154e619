import { describe, expect, test } from 'vitest';
import { questions } from '../../../content/questions.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import type { VisitLines } from './buildLines.ts';
import type { Line } from './line.ts';
import { RHYTHM } from './rhythmLine.ts';
import { SCOPES, type Scope } from './scopes.ts';
import { effectOfReconfirm, effectOfReply, enter, firstPlace, placeAfter, type ReplyPlace } from './visitReplies.ts';

const line = (id: string, part: Partial<Line> = {}): Line => ({
  id,
  letter: 'a',
  label: id,
  entry: { kind: 'yes-no' },
  mayBeUnknown: true,
  text: '',
  tone: 'carried',
  wanted: false,
  reconfirmable: false,
  private: false,
  sources: [],
  ...part,
});
const wanted = { wanted: true };
const carried = { reconfirmable: true, value: 2 };
const linesOf = (some: Partial<Record<Scope, readonly Line[]>>) =>
  ({ ...Object.fromEntries(SCOPES.map((s) => [s, []])), ...some }) as unknown as VisitLines;

const meter = { id: 'a', name: 'Demo meter A', lowestRlu: 40, highestRlu: 60_000, cutoffRlu: 4200 };
const input = {
  practice: { meters: [meter], lots: [{ id: 'birch', name: 'Birch', expiresOn: '2027-06-03' }] },
  visit: { onDate: '2026-11-25', findings: [], answers: {} },
} as unknown as VisitInput;
const place: ReplyPlace = {
  input,
  members: [{ id: 'm1', name: 'Tomas', trainedSwab: true, maySign: false }],
  memberId: 'm1',
  now: '2026-11-25T10:36:00Z',
  newFinding: null,
  levelChange: null,
  questions,
  speaker: { profile: {}, ageYears: 40, speaker: undefined },
};

describe('where the keys go', () => {
  test('to the next line that wants a key, then to the scope itself while something carried is left, then on', () => {
    const lines = linesOf({ food: [line('a'), line('b', wanted), line('c', carried)], home: [line('d', wanted)] });
    expect(placeAfter({ scope: 'food', line: 'a' }, lines)).toEqual({ scope: 'food', line: 'b' });
    expect(placeAfter({ scope: 'food', line: 'b' }, lines)).toEqual({ scope: 'food', line: null });
    expect(placeAfter({ scope: 'food', line: null }, linesOf({ food: [line('a')], home: [line('d', wanted)] }))).toEqual({
      scope: 'home',
      line: 'd',
    });
    expect(placeAfter({ scope: 'agree', line: null }, lines)).toEqual({ scope: 'agree', line: null });
  });

  test('a scope with something carried is entered at its heading, where = is', () => {
    expect(enter('food', linesOf({ food: [line('a', wanted), line('c', carried)] }))).toEqual({ scope: 'food', line: null });
    expect(enter('swab', linesOf({ swab: [line('rlu', wanted)] }))).toEqual({ scope: 'swab', line: null });
  });

  test('a visit opens at the first questions left; for a dentist at what waits', () => {
    const lines = linesOf({ safety: [line('a')], home: [line('d', wanted)] });
    expect(firstPlace(lines, [])).toEqual({ scope: 'home', line: 'd' });
    expect(firstPlace(linesOf({}), [])).toEqual({ scope: 'level', line: null });
    expect(firstPlace(lines, [{ shelfItemId: 'paste', state: 'waiting-for-signature' }])).toEqual({ scope: 'plan', line: 'paste' });
  });
});

describe('what an answer saves', () => {
  test('asked, declined and does-not-know, each with its day', () => {
    expect(effectOfReply('food', 'snacks', { how: 'asked', value: 4 }, place)).toEqual({
      puts: [{ path: 'answers.snacks', value: { how: 'asked', value: 4, askedOn: '2026-11-25' } }],
      to: 'next',
    });
    expect(effectOfReply('look', 'plaque', { how: 'declined' }, place).puts).toEqual([
      { path: 'answers.plaque', value: { how: 'declined', askedOn: '2026-11-25' } },
    ]);
  });

  test('a tick in a list stays on the line', () => {
    expect(effectOfReply('safety', 'medicines', { how: 'asked', value: ['x'], stay: true }, place).to).toBe('stay');
  });

  test('the first number of a swab brings meter, lot, taker and time', () => {
    expect(effectOfReply('swab', 'rlu', { how: 'asked', value: 5150 }, place).puts).toEqual([
      { path: 'meterId', value: 'a' },
      {
        path: 'reading',
        value: { takenAt: '2026-11-25T10:36:00Z', lotId: 'birch', operator: { name: 'Tomas', trained: true }, rlu: 5150, bound: 'exact' },
      },
    ]);
  });

  test('a number that the meter cannot give is not saved', () => {
    expect(effectOfReply('swab', 'rlu', { how: 'asked', value: 60_001 }, place)).toEqual({
      puts: [],
      to: 'stay',
      problem: 'Reading: above the highest reading of this meter, 60,000.',
    });
  });

  test('a level is changed only with a reason', () => {
    const changing = { ...place, levelChange: { level: 'high' } };
    expect(effectOfReply('level', 'level-reason', { how: 'asked', value: '' }, changing).problem).toMatch(/reason is needed/);
    expect(effectOfReply('level', 'level-reason', { how: 'asked', value: 'x' }, changing).confirm).toEqual({ level: 'high', reason: 'x' });
    expect(effectOfReply('level', 'level-reason', { how: 'asked', value: 'x' }, place).confirm).toBeUndefined();
  });

  test('a finished finding is added to those there', () => {
    const draft = { tooth: '31', surface: 'not-noted' } as const;
    expect(effectOfReply('look', 'new-finding', { how: 'asked', value: 'root-exposed' }, { ...place, newFinding: draft })).toEqual({
      puts: [{ path: 'findings', value: [{ tooth: '31', kind: 'root-exposed', isNew: true }] }],
      newFinding: null,
      to: { scope: 'look', line: null },
    });
  });
});

describe('a finding that is there already', () => {
  const findings = [
    { tooth: '36', surface: 'distal', kind: 'restoration', isNew: false },
    { tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: false },
  ] as const;
  const withFindings = { ...place, input: { ...input, visit: { ...input.visit, findings } } };

  test('is found by its tooth, and its line opened', () => {
    expect(
      effectOfReply('look', 'new-finding', { how: 'asked', value: '13' }, { ...withFindings, newFinding: { isChange: true } }),
    ).toEqual({
      puts: [],
      newFinding: null,
      to: { scope: 'look', line: 'finding 1' },
    });
  });

  test('one key says what became of it, and all others stay as they are', () => {
    expect(effectOfReply('look', 'finding 1', { how: 'asked', value: 'inactive' }, withFindings)).toEqual({
      puts: [{ path: 'findings', value: [findings[0], { ...findings[1], activity: 'inactive' }] }],
      to: { scope: 'look', line: null },
    });
  });
});

const noPlan = (): never => {
  throw new Error('no plan is asked for');
};

test('"=" saves exactly what was carried, as asked today', () => {
  const lines = [line('a', carried), line('b', wanted), line('c', { value: 3 })];
  const withAnswer = { ...input, visit: { ...input.visit, answers: { a: { how: 'carried', value: 2 } } } } as unknown as VisitInput;
  expect(effectOfReconfirm('food', lines, withAnswer, noPlan).puts).toEqual([
    { path: 'answers.a', value: { how: 'asked', value: 2, askedOn: '2026-11-25' } },
  ]);
  expect(effectOfReconfirm('swab', lines, input, noPlan).puts).toEqual([]);
  const before = { ...input.visit, pastRhythm: { rhythm: 'night', askedOn: '2026-09-01' }, agreed: { tasksAccepted: 3 } } as const;
  const again = (reconfirmable: boolean) =>
    effectOfReconfirm('plan', [line(RHYTHM, { reconfirmable })], { ...input, visit: before }, noPlan).puts;
  expect(again(true)).toEqual([{ path: 'agreed', value: { tasksAccepted: 3, rhythm: 'night' } }]);
  expect(again(false)).toEqual([]);
});

describe('the plan', () => {
  const asked = (line: string, value: string) => {
    const agreed = { items: { paste: 'agreed' } } as const;
    const before: ReplyPlace = { ...place, input: { ...input, visit: { ...input.visit, agreed } } };
    return effectOfReply('plan', line, { how: 'asked', value }, before);
  };

  test('another regimen, or how many tasks are accepted, stands beside what was agreed', () => {
    expect(asked('other regimen', 'gum+paste').puts).toEqual([
      { path: 'agreed', value: { items: { paste: 'agreed' }, regimen: 'gum+paste' } },
    ]);
    expect(asked('more regimens', 'gel').puts).toEqual([{ path: 'agreed', value: { items: { paste: 'agreed' }, regimen: 'gel' } }]);
    expect(asked('tasks accepted', '3')).toEqual({
      puts: [{ path: 'agreed', value: { items: { paste: 'agreed' }, tasksAccepted: 3 } }],
      to: { scope: 'plan', line: null },
    });
    expect(asked('tasks accepted', 'any').puts[0]?.value).toMatchObject({ tasksAccepted: 'any' });
  });

  test('any other line is a pack, and what is taken stands in its place', () => {
    expect(asked('paste', 'gel').puts[0]?.value).toMatchObject({ instead: { paste: 'gel' } });
  });
});
