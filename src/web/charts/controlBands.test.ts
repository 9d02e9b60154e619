import { expect, test } from 'vitest';
import type { Control, ControlPlan, ControlTarget, PastTarget } from '../../core/checks/control.ts';
import { judgeControls } from '../../core/checks/judgeControls.ts';
import { listControlBands } from './controlBands.ts';

const at = (day: number) => `2026-01-0${day}T08:00:00.000Z`;
const control = (day: number, rlu: number, state: Control['state'] = 'valid'): Control => ({
  ...{ id: `c${day}`, meterId: 'a', lotId: 'birch', operator: null, takenAt: at(day), rlu, bound: 'exact' },
  ...{ state, voidReason: null, note: {}, version: 1 },
});
const target = (mean: number, more: Partial<ControlTarget> = {}): ControlTarget => ({
  ...{ lotId: 'birch', meanLn: Math.log(mean), sdLn: 0.1, count: 20, from: 'comparison' },
  ...more,
});
const bandsOf = (controls: readonly Control[], now: ControlTarget, past: readonly PastTarget[] = []) => {
  const plan: ControlPlan = {
    ...{ meterId: 'a', every: { kind: 'daily' }, rules: [], solution: { name: 'ATP solution' } },
    ...{ targets: [now], pastTargets: past },
  };
  return judgeControls(controls, [plan], []).flatMap((lot) => listControlBands(lot));
};

test('after a target set by hand the controls before it stay on the band by which they were judged', () => {
  const since = at(3);
  const past = [{ ...target(3000), until: since }];
  const controls = [control(1, 3000), control(2, 3100), control(4, 4000), control(5, 9000, 'void')];
  const [before, after, ...none] = bandsOf(controls, target(4000, { since, from: 'hand' }), past);
  expect(none).toEqual([]);
  expect(before).toEqual({
    ...{ first: at(1), last: at(2), since: undefined, until: since },
    ...{ mean: expect.closeTo(3000, 6), low: expect.closeTo(3000 * Math.exp(-0.2), 6), high: expect.closeTo(3000 * Math.exp(0.2), 6) },
  });
  expect(after).toMatchObject({ first: at(4), last: at(4), since, until: undefined, mean: expect.closeTo(4000, 6) });
});

test('one target is one band, and a target without a control of its time is none', () => {
  const controls = [control(1, 3000), control(2, 3100)];
  expect(bandsOf(controls, target(3000))).toMatchObject([{ first: at(1), last: at(2) }]);
  const since = at(3);
  const bands = bandsOf(controls, target(4000, { since }), [{ ...target(3000), until: since }]);
  expect(bands).toMatchObject([{ first: at(1), last: at(2), until: undefined, mean: expect.closeTo(3000, 6) }]);
});

test('controls before the first target stand on none', () => {
  expect(bandsOf([control(1, 3000)], target(3000, { since: at(2) }))).toEqual([]);
});
