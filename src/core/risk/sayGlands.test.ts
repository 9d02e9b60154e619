import { expect, test } from 'vitest';
import { sayGlands } from './sayGlands.ts';

const levels = { low: 'extreme', normal: 'high' } as const;

test('not measured: measure first, with what is settled and what is not', () => {
  const say = (levelByFlow: Parameters<typeof sayGlands>[0]['levelByFlow']) => sayGlands({ known: {}, items: {}, levelByFlow });
  expect(say(levels)).toMatch(/measure saliva first.*Not settled: the level, .*extreme if saliva is measured low, high if normal\./);
  expect(say({ low: 'high', normal: 'high' })).toMatch(/level high, whatever is measured/);
  expect(say(undefined)).toMatch(/Not settled: the level\.$/);
});

test('looking "enough" is no measurement; clearly too little settles the item', () => {
  expect(sayGlands({ known: { saliva_look: 'enough' }, items: {}, levelByFlow: levels })).toMatch(/measure saliva first/);
  const items = { saliva_flow_reduced_measured: true };
  expect(sayGlands({ known: { saliva_look: 'inadequate' }, items, levelByFlow: levels })).toMatch(/does not wait/);
});

test('measured is said as measured', () => {
  expect(sayGlands({ known: { resting_flow: 0.05 }, items: { saliva_flow_reduced_measured: true }, levelByFlow: levels })).toMatch(
    /was measured, and is low\./,
  );
  expect(sayGlands({ known: { stimulated_flow: 1.4 }, items: { saliva_flow_reduced_measured: false }, levelByFlow: levels })).toMatch(
    /not low today/,
  );
});
