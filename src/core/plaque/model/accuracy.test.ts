import { describe, expect, test } from 'vitest';
import reference from '../../../../test/reference/acid-day/days.json' with { type: 'json' };
import given from '../../../../test/reference/acid-day/days-input.json' with { type: 'json' };
import { plaqueValues } from '../../../content/plaque/constants.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import type { DayInput, Exposure, Mouth } from '../types.ts';
import { buildModel } from './buildModel.ts';
import { stateLength } from './layout.ts';
import { listPhases } from './phases.ts';
import { minutesBelow } from './readCurve.ts';
import { toothPh } from './readState.ts';
import { simulateDay } from './simulateDay.ts';
import { acceptStep, buildStepper, tryStep } from './stepper.ts';

const largest = (a: Float64Array, b: ArrayLike<number>) =>
  a.reduce((most, value, i) => Math.max(most, Math.abs(value - (b[i] ?? Number.NaN))), 0);

// SciPy 1.17.1, LSODA at 1e-8, the same equations written apart (test/reference/acid-day); sleep, meals, held food, acid drinks, gum,
// bicarbonate, urea, water and brushing in one day. Tolerance at the usual setting 0.02 pH at every minute and 0.5 min below each line; at
// a tight one 0.002 pH, so that an equation that differs cannot hide behind the step.
describe.each(Object.entries(given.mouths) as [keyof typeof reference.ph, Mouth][])('a whole day against SciPy: %s', (name, mouth) => {
  const input: DayInput = { ...mouth, constants: given.constants, exposures: given.exposures as Exposure[] };

  test('every minute and every line', () => {
    const curve = simulateDay(input);
    expect(reference.ph[name]).toHaveLength(1441);
    expect(largest(curve.ph, reference.ph[name])).toBeLessThan(0.02);
    for (const [line, minutes] of Object.entries(reference.minutesBelow[name])) {
      expect(Math.abs(minutesBelow(curve, Number(line)) - minutes)).toBeLessThan(0.5);
    }
    expect(curve.protonBalanceError).toBeLessThan(1e-6);
  });

  test('closely, when asked', () => {
    expect(largest(simulateDay(input, { tolerancePh: 0.001 }).ph, reference.ph[name])).toBeLessThan(0.002);
  });
});

const rinse: Exposure = { kind: 'rinse', startMinute: 5, minutes: 1, hexoseMmolPerL: 584 };

describe('order of convergence', () => {
  test('in time: a quarter of the error for half the step', () => {
    const model = buildModel(mouthPresets.average, plaqueValues, 6);
    const start = simulateDay({ ...mouthPresets.average, constants: plaqueValues, exposures: [rinse], minutes: 6 }).states[1];
    const phase = listPhases(model, [], 10)[0];
    if (start === undefined || phase === undefined) throw new Error('no state after the rinse');
    /** pH at the tooth five minutes after the rinse, with equal steps. */
    const phBy = (steps: number) => {
      const stepper = buildStepper(model);
      const state = start.values.slice();
      for (let i = 0; i < steps; i += 1) {
        tryStep(stepper, phase, state, (i * 300) / steps, 300 / steps);
        acceptStep(stepper, state, 300 / steps);
      }
      return toothPh(state, 6);
    };
    const exact = phBy(4800);
    const errors = [150, 300, 600].map((steps) => Math.abs(phBy(steps) - exact));
    for (const [i, error] of errors.slice(1).entries()) expect(Math.log2((errors[i] ?? 0) / error)).toBeGreaterThan(1.8);
  });

  test('in space: a quarter of the error for twice the layers', () => {
    const at = (cells: number) =>
      simulateDay({ ...mouthPresets.average, constants: plaqueValues, exposures: [rinse], minutes: 20 }, { cells, tolerancePh: 5e-4 }).ph;
    const exact = at(48);
    const errors = [6, 12, 24].map((cells) => largest(at(cells), exact));
    for (const [i, error] of errors.slice(1).entries()) expect(Math.log2((errors[i] ?? 0) / error)).toBeGreaterThan(1.6);
  });
});

// Three events; 0.02 pH at every minute.
test.each(['average', 'approximal', 'dryMouth'] as const)('6 layers are as good as 48: %s', (name) => {
  const event = (startMinute: number, minutes: number, hexoseMmolPerL: number): Exposure => ({
    kind: 'eating',
    startMinute,
    minutes,
    hexoseMmolPerL,
  });
  const exposures = [event(10, 20, 117), event(120, 5, 467), event(240, 10, 467)];
  const at = (cells: number) =>
    simulateDay({ ...mouthPresets[name], constants: plaqueValues, exposures, minutes: 400 }, { cells, tolerancePh: 0.002 }).ph;
  expect(largest(at(6), at(48))).toBeLessThan(0.02);
});

// Crank's series for a sheet that takes up from a bath of 100: at the wall, D = 3e-10 m2/s, 0.2 mm; 39.45 after 40 s, 71.09 after 80 s.
// The film is held at the bath by an exchange without limit. Tolerance 0.5 of 100.
test('diffusion without reaction follows the series', () => {
  const constants = { ...plaqueValues, rinseExchangePerS: 1e6, mixingTimeS: 1e-6, filmThicknessMm: 1e-6, flowPerHexose: 0 };
  const mouth: Mouth = { ...mouthPresets.average, plaque: { ...mouthPresets.average.plaque, uptakeMmolPerLPerS: 0 } };
  for (const [seconds, expected] of [
    [40, 39.45],
    [80, 71.09],
  ] as const) {
    const minutes = seconds / 60;
    const bath: Exposure = { kind: 'rinse', startMinute: 0, minutes, hexoseMmolPerL: 100 };
    const values = simulateDay({ ...mouth, constants, exposures: [bath], minutes: 2 }, { cells: 24, tolerancePh: 1e-4 }).states[1]?.values;
    expect(values).toHaveLength(stateLength(24));
    expect(Math.abs((values?.[0] ?? 0) - expected)).toBeLessThan(0.5);
  }
});
