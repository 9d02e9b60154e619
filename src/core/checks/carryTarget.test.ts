import { expect, test } from 'vitest';
import { comparePairs } from '../meter/comparePairs.ts';
import { carryTarget } from './carryTarget.ts';

test('a lot that reads a tenth higher is held against a target a tenth higher', () => {
  const old = { lotId: 'birch', meanLn: Math.log(3000), sdLn: 0.12, count: 10, from: 'first-controls' } as const;
  const pairs = [2800, 2900, 3000, 3100, 3200].map((oldRlu) => ({ oldRlu, newRlu: 1.1 * oldRlu }));
  const comparison = comparePairs({ pairs, withinFraction: 0.3, knownSdLog: 0.1 });
  if (!comparison.ok) throw new Error(comparison.reason);
  const { meanLn = Number.NaN, ...rest } = carryTarget(old, 'cedar', comparison.value) ?? {};
  expect(Math.exp(meanLn)).toBeCloseTo(3300, 8);
  expect(rest).toEqual({ lotId: 'cedar', sdLn: 0.12, count: 5, from: 'comparison' });
});

test('a comparison that cannot say carries nothing', () => {
  const old = { lotId: 'birch', meanLn: Math.log(3000), sdLn: 0.12, count: 10, from: 'first-controls' } as const;
  const pairs = [0.6, 1.5, 0.9, 1.3, 0.8].map((ratio) => ({ oldRlu: 3000, newRlu: 3000 * ratio }));
  const comparison = comparePairs({ pairs, withinFraction: 0.2 });
  if (!comparison.ok) throw new Error(comparison.reason);
  expect(comparison.value.verdict).toBe('too-few');
  expect(carryTarget(old, 'cedar', comparison.value)).toBeUndefined();
});
