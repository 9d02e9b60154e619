import { describe, expect, test } from 'vitest';
import { MULTI_RULES } from '../stats/multiRules.ts';
import type { Control, ControlPlan, StopAnswer, StopResolution } from './control.ts';
import { findSpan } from './controlSpan.ts';
import { judgeControls } from './judgeControls.ts';
import { listControlSpans } from './listControlSpans.ts';

const day = (n: number) => new Date(Date.UTC(2026, 0, 1 + n, 8)).toISOString();
/** A control some sd from a target of 3,000 RLU with a spread of 10 %. */
function control(n: number, z: number, part: Partial<Control> = {}): Control {
  const rlu = 3000 * Math.exp(0.1 * z);
  const base = { id: `c${n}`, meterId: 'a', lotId: 'birch', operator: 'Ines', takenAt: day(n), rlu, bound: 'exact' } as const;
  return { ...base, state: 'valid', voidReason: null, note: {}, version: 1, ...part };
}
const plan: ControlPlan = {
  meterId: 'a',
  every: { kind: 'daily' },
  rules: MULTI_RULES,
  solution: { name: 'ATP solution' },
  targets: [{ lotId: 'birch', meanLn: Math.log(3000), sdLn: 0.1, count: 20, from: 'comparison' }],
};
const said = (zs: readonly number[], plans = [plan]) =>
  judgeControls(
    zs.map((z, n) => control(n, z)),
    plans,
    [],
  )[0]?.controls.map(({ state, says }) => (says === '' ? state : `${state}: ${says}`));

describe('against the target of the plan', () => {
  test.each([
    ['in line', [0.3], 'in-control'],
    ['a warning does not stop', [0, 2.1], 'warning: control rule 1 of 6: one high, beyond the usual band'],
    ['far too low', [-3.1], 'out: control rule 2 of 6: one far too low'],
    ['two in a row', [2.1, 2.1], 'out: control rule 3 of 6: two in a row high'],
    ['one each side', [2.1, -2.1], 'out: control rule 4 of 6: one high and one low in a row'],
    ['four in a row', [-1.1, -1.1, -1.1, -1.1], 'out: control rule 5 of 6: four in a row on the low side'],
    ['ten in a row', Array.from({ length: 10 }, () => 0.2), 'out: control rule 6 of 6: ten in a row on the high side'],
    ['and in line again', [3.1, 0], 'in-control'],
  ])('%s', (_, zs, words) => expect(said(zs)?.at(-1)).toBe(words));

  test('only by the rules of the plan', () => {
    expect(said([2.1, 2.1], [{ ...plan, rules: ['1-3s'] }])).toEqual(['in-control', 'in-control']);
  });

  test('a void control is passed over, as if it had not been', () => {
    const controls = [control(0, 2.1), control(1, 9, { state: 'void', voidReason: 'a patient' }), control(2, 2.1)];
    expect(judgeControls(controls, [plan], [])[0]?.controls.map(({ state }) => state)).toEqual(['warning', 'void', 'out']);
  });

  test('meters and lots are kept apart, and any order will do', () => {
    const controls = [control(3, 2.1), control(0, 2.1, { lotId: 'cedar' }), control(2, 0)];
    const lots = judgeControls(controls, [plan], []);
    expect(lots.map(({ lotId, controls: of }) => [lotId, of.map(({ state }) => state)])).toEqual([
      ['cedar', ['no-target']],
      ['birch', ['in-control', 'warning']],
    ]);
  });
});

describe('over a repair', () => {
  const did = (n: number, z: number, answer: StopAnswer) => control(n, z, { note: { did: { answer } } });
  const lowFour = [-1.1, -1.1, -1.1, -1.1].map((z, n) => control(n, z));
  const states = (controls: readonly Control[], resolutions: readonly StopResolution[] = []) =>
    judgeControls(controls, [plan], resolutions)[0]?.controls.map(({ state }) => state);
  const fine = ['in-control', 'in-control', 'in-control', 'out'];

  test('no run reaches: the first control after it begins anew, and four more stop again', () => {
    const after = [did(4, -1.1, 'new-solution'), ...[5, 6, 7].map((n) => control(n, -1.1))];
    expect(states([...lowFour, ...after])).toEqual([...fine, ...fine]);
    expect(states([...lowFour, control(4, -1.1)])).toEqual([...fine, 'out']);
  });

  test('to have taken the control again is none', () => {
    expect(states([...lowFour, did(4, -1.1, 'repeated-control')])).toEqual([...fine, 'out']);
  });

  test('words without a stop begin nothing', () => {
    expect(states([...lowFour.slice(0, 3), did(3, -1.1, 'meter-cleaned')])).toEqual(fine);
  });

  test('noted afterwards it holds from the control that showed it, of that lot alone', () => {
    const ended = [2.1, 2.1, 0.5].map((z, n) => control(n, z));
    const high = Array.from({ length: 9 }, (_, n) => control(3 + n, 0.5));
    const all = [...ended, ...high];
    const inLine = (count: number) => Array.from({ length: count }, () => 'in-control');
    expect(states(all)).toEqual(['warning', 'out', ...inLine(7), 'out', 'out', 'out']);
    const words: StopResolution = {
      ...{ outIds: ['c1'], meterId: 'a', lotId: 'birch', controlId: 'c2', answer: 'meter-cleaned', by: 'Ines', at: day(9) },
    };
    expect(states(all, [words])).toEqual(['warning', 'out', ...inLine(9), 'out']);
    expect(states(all, [{ ...words, answer: 'repeated-control' }])).toEqual(states(all));
    expect(states(all, [{ ...words, lotId: 'cedar' }])).toEqual(states(all));
  });
});

describe('a target of its time', () => {
  test('stands on each control that it judges', () => {
    const [first] = plan.targets;
    const then = first && { ...first, meanLn: Math.log(2000), until: day(2) };
    const now = first && { ...first, since: day(2) };
    const [lot] = judgeControls(
      [0, 1, 2].map((n) => control(n, 0)),
      [{ ...plan, targets: now ? [now] : [], pastTargets: then ? [then] : [] }],
      [],
    );
    expect(lot?.controls.map(({ target }) => target)).toEqual([then, then, now]);
  });
});

describe('without a target in the plan', () => {
  const ten = [-1.5, -1, -0.5, -0.2, 0, 0, 0.2, 0.5, 1, 1.5];

  test('the first ten make it and are not judged, the eleventh is', () => {
    const controls = [...ten, 9].map((z, n) => control(n, z));
    const [lot] = judgeControls(controls, [], []);
    expect(lot?.target).toMatchObject({ from: 'first-controls', count: 10, meanLn: expect.closeTo(Math.log(3000), 12) });
    // Sum of squares of the ten numbers above is 7.08; (7.08 / 9)^0.5 = 0.917726...
    expect(lot?.target?.sdLn).toBeCloseTo(0.1 * Math.sqrt(7.08 / 9), 12);
    expect(lot?.controls.map(({ state }) => state)).toEqual([...ten.map(() => 'no-target'), 'out']);
  });

  test('nine say what is missing', () => {
    const [lot] = judgeControls(
      ten.slice(1).map((z, n) => control(n, z)),
      [],
      [],
    );
    expect([lot?.target, lot?.waitsFor]).toEqual([undefined, '9 of 10 first controls']);
  });

  test('the same number ten times gives no spread, and no number that is none', () => {
    const [lot] = judgeControls(
      ten.map((_, n) => control(n, 1)),
      [],
      [],
    );
    expect(lot?.target).toBeUndefined();
    expect(lot?.waitsFor).toMatch(/all are the same/);
  });
});

describe('spans of a day', () => {
  const lots = judgeControls([control(0, 0), control(1, 0.1), control(2, 3.5), control(3, 0)], [plan], []);
  const of = { meterId: 'a', lotId: 'birch' };
  const NOTHING_SAID = { overrides: [], resolutions: [], questions: [] };

  test('begin with the last control before it', () => {
    expect(listControlSpans(lots, day(2), NOTHING_SAID).map(({ controlId, state }) => [controlId, state])).toEqual([
      ['c1', 'in-control'],
      ['c2', 'out'],
      ['c3', 'in-control'],
    ]);
  });

  test('an override stands on its own control alone', () => {
    const override = { controlId: 'c2', meterId: 'a', lotId: 'birch', onDate: '2026-01-03', by: 'Ines', at: day(2), reason: 'r' };
    const spans = listControlSpans(lots, day(2), { ...NOTHING_SAID, overrides: [override, { ...override, controlId: 'c3' }] });
    expect(spans.map((span) => span.override)).toEqual([undefined, { by: 'Ines', at: day(2), reason: 'r' }, undefined]);
  });

  test.each([
    ['before the first', day(0.5), undefined],
    ['from the moment of a control on', day(2), 'c2'],
    ['between two', day(2.5), 'c2'],
    ['after the last', day(9), 'c3'],
  ])('%s', (_, at, id) => expect(findSpan(listControlSpans(lots, day(2), NOTHING_SAID), of, Date.parse(at))?.controlId).toBe(id));

  test('without a moment the newest holds; another lot has none', () => {
    const spans = listControlSpans(lots, day(2), NOTHING_SAID);
    expect(findSpan(spans, of, undefined)?.controlId).toBe('c3');
    expect(findSpan(spans, { ...of, lotId: 'cedar' }, undefined)).toBeUndefined();
  });
});
