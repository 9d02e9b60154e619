import { expect, test } from 'vitest';
import { comparePairs } from '../meter/comparePairs.ts';
import { carryTarget } from './carryTarget.ts';

test('a lot that reads a tenth higher is held against a target a tenth higher', () => {
  const old = { lotId: 'birch', meanLn: Math.log(3000), sdLn: 0.12, count: 10, from: 'first-controls' } as const;
  const pairs = [2800, 2900, 3000, 3100, 3200].map((oldRlu) => ({ oldRlu, newRlu: 1.1 * oldRlu }));
  const comparison = comparePairs({ pairs, withinFraction: 0.2, knownSdLog: 0.1 });
  if (!comparison.ok) throw new Error(comparison.reason);
  const { meanLn, ...rest } = carryTarget(old, 'cedar', comparison.value);
  expect(Math.exp(meanLn)).toBeCloseTo(3300, 8);
  expect(rest).toEqual({ lotId: 'cedar', sdLn: 0.12, count: 5, from: 'comparison' });
});
