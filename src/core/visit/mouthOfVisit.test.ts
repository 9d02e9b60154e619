import { expect, test } from 'vitest';
import { mouthPresets } from '../../content/plaque/presets.ts';
import { questions } from '../../content/questions.ts';
import type { Answer } from './answer.ts';
import { mouthOfVisit } from './mouthOfVisit.ts';

const of = (resting_flow?: Answer, acidDay = {}) =>
  mouthOfVisit(
    { onDate: '2026-11-25', answers: resting_flow ? { resting_flow } : {}, acidDay: { days: [], ...acidDay } },
    mouthPresets,
    questions,
  );

test('what was not measured is that of the named mouth, and is not said to be measured', () => {
  expect(of()).toEqual({ mouth: { saliva: mouthPresets.average.saliva, plaque: mouthPresets.average.plaque }, measured: {} });
  expect(of(undefined, { mouth: 'dryMouth' }).mouth.saliva).toEqual(mouthPresets.dryMouth.saliva);
});

test('a measured flow takes the place of the usual one, in every named mouth', () => {
  const told = of({ how: 'asked', value: 0.2 }, { mouth: 'approximal' });
  expect(told.restingFlowMlPerMin).toBe(0.2);
  expect(told.mouth).toEqual({
    saliva: { ...mouthPresets.approximal.saliva, restingFlowMlPerMin: 0.2 },
    plaque: mouthPresets.approximal.plaque,
  });
});

test('a flow of long ago, or one that was declined, is not known', () => {
  expect(of({ how: 'carried', value: 0.2, askedOn: '2010-01-01' }).restingFlowMlPerMin).toBeUndefined();
  expect(of({ how: 'declined' }).restingFlowMlPerMin).toBeUndefined();
});

test('calcium and phosphate as measured', () => {
  const saliva = { calciumMmolPerL: 1.1, phosphateMmolPerL: 4 };
  expect(of(undefined, { saliva }).measured).toEqual({ saliva });
});
