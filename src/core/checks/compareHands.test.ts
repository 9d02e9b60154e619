import { describe, expect, it, test } from 'vitest';
import { normalQuantile } from '../stats/normal.ts';
import { seededUniform } from '../stats/seededUniform.ts';
import { compareHands, funnelAt } from './compareHands.ts';
import type { Control } from './control.ts';
import { judgeControls } from './judgeControls.ts';

interface Taking {
  readonly hands: readonly string[];
  readonly count: number;
  readonly seed: number;
  /** Added to ln of a number: who, which one of all, in order. */
  shift(operator: string, index: number): number;
}

function controlsOf({ hands, count, seed, shift }: Taking): Control[] {
  const uniform = seededUniform(seed);
  return Array.from({ length: count }, (_, i) => {
    const operator = hands[Math.floor(uniform() * hands.length)] ?? '';
    const ln = Math.log(2000) + 0.15 * normalQuantile(uniform() + 2 ** -33) + shift(operator, i);
    return {
      id: `c${i}`,
      meterId: 'm',
      lotId: i < count / 2 ? 'first' : 'second',
      operator,
      takenAt: new Date(Date.UTC(2026, 0, 1 + i)).toISOString(),
      rlu: Math.exp(ln),
      bound: 'exact',
      state: 'valid',
      voidReason: null,
      note: {},
      version: 1,
    };
  });
}
const hands = ['Ines', 'Tomas', 'Una', 'Wim'];
const none = () => 0;
const compare = (taking: Partial<Taking> = {}) => {
  const compared = compareHands(judgeControls(controlsOf({ hands, count: 120, seed: 1, shift: none, ...taking }), [], []));
  if (!compared.ok) throw new Error(compared.says);
  return compared;
};

describe('compareHands', () => {
  it('knows the spread within hands, and finds those that read a third higher', () => {
    const { sdLn, lines } = compare({ shift: (operator) => (operator === 'Una' ? 0.3 : 0) });
    expect(Math.abs(sdLn - 0.15)).toBeLessThan(0.03);
    expect(lines.map(({ operator }) => operator)).toEqual(hands);
    const una = lines[2];
    expect(una).toMatchObject({ state: 'other-wise' });
    expect(una?.says).toMatch(/^Una, \d+ controls: \d+ % higher than all together; chance alone brings up to \d+ %\. Swab side by side/);
  });

  // By chance alone: four members, each with a funnel of 3 sd (0.27 %) and a moving average looked at once at the end.
  it('rarely says so of hands that are all alike', () => {
    const studies = Array.from({ length: 150 }, (_, seed) => compare({ seed, count: 80 }).lines);
    const apart = studies.flat().filter(({ state }) => state === 'other-wise').length;
    expect(apart / studies.flat().length).toBeLessThan(0.015);
  });

  it('holds a drift of the meter against nobody', () => {
    const { lines } = compare({ shift: (_, i) => (i >= 60 ? 0.5 : 0) });
    expect(lines.filter(({ state }) => state === 'other-wise')).toEqual([]);
  });

  it('sees what began lately', () => {
    const { lines } = compare({ count: 240, shift: (operator, i) => (operator === 'Wim' && i > 200 ? 0.4 : 0) });
    expect(lines.find(({ operator }) => operator === 'Wim')?.state).toBe('other-wise');
  });

  it('has a wide funnel for few controls and says nothing of fewer than eight', () => {
    const all = controlsOf({ hands: ['Ines', 'Tomas'], count: 60, seed: 3, shift: none });
    const few = controlsOf({ hands: ['Una'], count: 5, seed: 4, shift: () => 1 }).map((c) => ({ ...c, lotId: 'first', id: `u${c.id}` }));
    const compared = compareHands(judgeControls([...all, ...few], [], []));
    if (!compared.ok) throw new Error(compared.says);
    const [ines, , una] = compared.lines;
    expect(una).toMatchObject({ state: 'too-few', controls: 5, says: 'Una, 5 controls: too few to compare; 8 are needed.' });
    expect((una?.funnel.high ?? 0) / (ines?.funnel.high ?? 1)).toBeGreaterThan(1.05);
  });

  it('draws what it judges: the newest point of the moving average lies beyond its limits where the latest differ', () => {
    const { lines } = compare({ count: 240, shift: (operator, i) => (operator === 'Wim' && i > 200 ? 0.4 : 0) });
    for (const { isApartLately, points, controls } of lines) {
      expect(points).toHaveLength(controls);
      const newest = points.at(-1)?.moving;
      if (!newest) throw new Error('no moving average');
      expect(newest.ratio > newest.high || newest.ratio < newest.low).toBe(isApartLately);
      const widths = points.map(({ moving }) => moving?.high ?? 0);
      expect(widths.every((width, i) => width >= (widths[i - 1] ?? 1))).toBe(true);
    }
    expect(lines.filter(({ isApartLately }) => isApartLately).map(({ operator }) => operator)).toEqual(['Wim']);
  });

  it('keeps a void control as a point, in no average and no mean', () => {
    const controls = controlsOf({ hands, count: 120, seed: 1, shift: none });
    const [first] = controls;
    if (!first) throw new Error('no control');
    const withVoid = [...controls, { ...first, id: 'void', rlu: 60_000, state: 'void' as const, voidReason: 'another solution' }];
    const compared = compareHands(judgeControls(withVoid, [], []));
    if (!compared.ok) throw new Error(compared.says);
    const { lines, all } = compared;
    const before = compare();
    expect(all).toBe(before.all);
    expect(lines.map(({ ratio, controls: count }) => [ratio, count])).toEqual(before.lines.map((line) => [line.ratio, line.controls]));
    const point = lines.flatMap(({ points }) => points).find(({ id }) => id === 'void');
    expect(point?.ratio).toBeGreaterThan(20);
    expect(point?.moving).toBeUndefined();
  });

  it('has the funnel of each member on the lines that a picture draws: 3 sd, wider for fewer, closed at all controls', () => {
    const { lines, ...spread } = compare();
    for (const { controls, funnel } of lines) expect(funnelAt(controls, spread)).toEqual(funnel);
    expect(Math.log(funnelAt(1, { sdLn: 0.1, all: 100 }).high)).toBeCloseTo(0.3 * Math.sqrt(0.99), 12);
    expect(funnelAt(120, spread)).toEqual({ low: 1, high: 1 });
  });

  test.each([
    { what: 'none', controls: [] },
    { what: 'one member', controls: controlsOf({ hands: ['Ines'], count: 40, seed: 1, shift: none }) },
    { what: 'few', controls: controlsOf({ hands, count: 9, seed: 1, shift: none }) },
    { what: 'all the same', controls: controlsOf({ hands, count: 40, seed: 1, shift: none }).map((c) => ({ ...c, rlu: 2000 })) },
    { what: 'void ones', controls: controlsOf({ hands, count: 40, seed: 1, shift: none }).map((c) => ({ ...c, state: 'void' as const })) },
  ])('says why hands cannot be compared: $what', ({ controls }) => {
    const compared = compareHands(judgeControls(controls, [], []));
    expect(compared.ok).toBe(false);
    if (!compared.ok) expect(compared.says).toMatch(/\.$/);
  });
});
