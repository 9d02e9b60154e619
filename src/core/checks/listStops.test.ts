import { describe, expect, test } from 'vitest';
import { MULTI_RULES } from '../stats/multiRules.ts';
import type { Control, ControlPlan, StopReadings, StopResolution } from './control.ts';
import { judgeControls } from './judgeControls.ts';
import { listControlSpans } from './listControlSpans.ts';
import { listStops } from './listStops.ts';

const day = (n: number) => new Date(Date.UTC(2026, 0, 1 + n, 8)).toISOString();
const control = (n: number, z: number, part: Partial<Control> = {}): Control => ({
  ...{ id: `c${n}`, meterId: 'a', lotId: 'birch', operator: 'Ines', takenAt: day(n), rlu: 3000 * Math.exp(0.1 * z), bound: 'exact' },
  ...{ state: 'valid', voidReason: null, note: {}, version: 1 },
  ...part,
});
const target = { lotId: 'birch', meanLn: Math.log(3000), sdLn: 0.1, count: 20, from: 'comparison' } as const;
const plan: ControlPlan = {
  ...{ meterId: 'a', every: { kind: 'daily' }, rules: MULTI_RULES, solution: { name: 'ATP solution' } },
  targets: [target, { ...target, lotId: 'cedar' }],
};
const judged = (...controls: readonly Control[]) => judgeControls(controls, [plan], []);
const done = (controlId: string, ...outIds: readonly string[]): StopResolution => ({
  ...{ outIds, meterId: 'a', lotId: 'birch', controlId, answer: 'new-solution', by: 'Ines', at: day(9) },
});
const ids = (lots: ReturnType<typeof judged>, resolutions: readonly StopResolution[] = []) =>
  listStops(lots, resolutions).map(({ out, lastInLine, endedBy, state }) => [
    lastInLine?.control.id,
    out.map(({ control: { id } }) => id).join('+'),
    endedBy?.control.id,
    state,
  ]);

describe('stops', () => {
  test('run from the first control out of limits to the next in line; a warning is in line', () => {
    const lots = judged(control(0, 0), control(1, -4), control(2, -4), control(3, 0), control(4, 2.1), control(5, 5));
    expect(ids(lots)).toEqual([
      ['c0', 'c1+c2', 'c3', 'not-recorded'],
      ['c4', 'c5', undefined, 'stopped'],
    ]);
  });

  test('with its very first control a lot has none in line before it; a void control begins and ends nothing', () => {
    expect(ids(judged(control(0, 4), control(1, 0, { state: 'void' })))).toEqual([[undefined, 'c0', undefined, 'stopped']]);
    expect(ids(judged(control(0, 4, { state: 'void' }), control(1, 0)))).toEqual([]);
  });

  test('are resolved by a record that any of their controls stands in', () => {
    const lots = judged(control(0, 4), control(1, 5), control(2, 0));
    expect(ids(lots, [done('c2', 'c1')])).toEqual([[undefined, 'c0+c1', 'c2', 'resolved']]);
    expect(ids(lots, [done('c2', 'another')])[0]?.at(-1)).toBe('not-recorded');
  });

  test('a record whose control was made void holds no more', () => {
    const lots = judged(control(0, 4), control(1, 0, { state: 'void' }), control(2, 0));
    expect(ids(lots, [done('c1', 'c0')])[0]?.at(-1)).toBe('not-recorded');
    expect(ids(lots, [done('c1', 'c0'), done('c2', 'c0')])[0]?.at(-1)).toBe('resolved');
  });

  test('with another lot opened in its place, a lot is put away and still stopped', () => {
    const lots = judged(control(0, 4), control(1, 0, { lotId: 'cedar' }));
    expect(ids(lots, [done('c1', 'c0')])).toEqual([[undefined, 'c0', undefined, 'put-away']]);
  });
});

describe('spans after and before a stop', () => {
  const lots = judged(control(0, 0), control(1, 4), control(2, 0), control(3, 0.5));
  const said = { overrides: [], resolutions: [], questions: [] };
  const since = (resolutions: readonly StopResolution[]) =>
    listControlSpans(lots, day(-1), { ...said, resolutions }).map(({ notResolvedSince }) => notResolvedSince);

  test('what was done stays asked for with every control in line, until it is recorded', () => {
    expect(since([])).toEqual([undefined, undefined, day(1), day(1)]);
    expect(since([done('c2', 'c1')])).toEqual([undefined, undefined, undefined, undefined]);
  });

  const question: StopReadings = {
    ...{ outId: 'c1', meterId: 'a', lotId: 'birch', from: day(0), until: day(1), says: 'rule 2' },
    decisions: [{ decision: 'under-question', by: 'Ines', at: day(1), reason: 'the bottle stood open', readings: [] }],
  };
  const asked = (one: StopReadings) =>
    listControlSpans(lots, day(-1), { ...said, questions: [one] }).flatMap((span) =>
      span.question ? [[span.controlId, span.from, span.question.reason]] : [],
    );

  test('readings under question are those between the last control in line and the one that was out', () => {
    expect(asked(question)).toEqual([['c0', day(0), 'the bottle stood open (rule 2)']]);
    expect(asked({ ...question, lotId: 'cedar' })).toEqual([]);
    const left = { ...question.decisions[0], decision: 'left' } as StopReadings['decisions'][number];
    expect(asked({ ...question, decisions: [...question.decisions, left] })).toEqual([]);
  });

  test('where no control was in line before, all readings of the lot are', () => {
    expect(asked({ ...question, from: null })).toEqual([
      ['c1', '1970-01-01T00:00:00.000Z', 'the bottle stood open (rule 2)'],
      ['c0', day(0), 'the bottle stood open (rule 2)'],
    ]);
  });
});
