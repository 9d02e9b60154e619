import { expect, test } from 'vitest';
import type { Control } from '../../core/checks/control.ts';
import { judgeControls } from '../../core/checks/judgeControls.ts';
import { chanceFrom } from './chance.ts';
import { DEMO_CONTROL, DEMO_LOT_STEP_LN, demoPlan, drawControls } from './drawControls.ts';
import { DEMO_LOTS } from './practice.ts';

const TODAY = '2026-11-25';
/** As a comparison of the lots leaves it, a third of a standard deviation off what was drawn. */
const compared = {
  ...DEMO_CONTROL,
  lotId: DEMO_LOTS.inUse,
  meanLn: DEMO_CONTROL.meanLn + DEMO_LOT_STEP_LN - 0.04,
  count: 8,
  from: 'comparison',
} as const;
const plan = { ...demoPlan, targets: [...demoPlan.targets, compared] };

test.each([1, 2_611, 99])('two years of weekly controls, seed %i: one drift that stops, put right the same morning', (seed) => {
  const drawn = drawControls(TODAY, chanceFrom(seed));
  expect(drawn).toHaveLength(105);
  const controls = drawn.map(({ at, by, lotId, rlu, note }, i): Control => {
    const of = { id: `c${i}`, meterId: 'demo-meter-a', lotId, operator: by, takenAt: at, rlu, note };
    return { ...of, bound: 'exact', state: 'valid', voidReason: null, version: 1 };
  });
  const judged = judgeControls(controls, [plan], []).flatMap((lot) => lot.controls);
  const out = judged.flatMap(({ state, rule, control }) => (state === 'out' ? [{ rule, day: control.takenAt.slice(0, 10) }] : []));
  expect(out).toEqual([{ rule: '4-1s', day: '2026-03-04' }]);
  expect(judged.filter(({ control }) => control.takenAt.startsWith('2026-03-04')).map(({ state }) => state)).toEqual(['out', 'in-control']);
  expect(judged.filter(({ state }) => state === 'no-target')).toEqual([]);
});
