import { describe, expect, test } from 'vitest';
import { plaqueValues } from '../../../content/plaque/constants.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import type { DayInput, Exposure } from '../types.ts';
import { minutesBelow } from './readCurve.ts';
import { simulateDay } from './simulateDay.ts';

const base: DayInput = { ...mouthPresets.average, constants: plaqueValues, minutes: 240, exposures: [] };
const eating = (startMinute: number, more: Partial<Exposure> = {}): Exposure => ({
  kind: 'eating',
  startMinute,
  minutes: 5,
  hexoseMmolPerL: 400,
  ...more,
});

describe('what it was computed before', () => {
  const day: DayInput = { ...base, exposures: [eating(10), eating(60), eating(150)] };
  const previous = simulateDay(day);

  test.each([
    ['a later event is moved', [eating(10), eating(60), eating(170)]],
    ['the middle one is taken out', [eating(10), eating(150)]],
    ['one is added at the end', [eating(10), eating(60), eating(150), eating(200)]],
    ['nothing changes', day.exposures],
    ['the first one is another', [eating(10, { hexoseMmolPerL: 100 }), eating(60), eating(150)]],
    ['food of the first stays', [eating(10, { retained: { share: 0.1, halfTimeMinutes: 10 } }), eating(60), eating(150)]],
  ])('gives the same to the last bit when %s', (_, exposures) => {
    const changed = { ...day, exposures };
    const resumed = simulateDay(changed, { previous });
    const anew = simulateDay(changed);
    expect(resumed.stepPh).toEqual(anew.stepPh);
    expect(resumed.stepMinutes).toEqual(anew.stepMinutes);
    expect(resumed.ph).toEqual(anew.ph);
    expect(resumed.states).toEqual(anew.states);
  });

  test.each([
    ['another flow', { saliva: { ...base.saliva, restingFlowMlPerMin: 0.2 } }],
    ['thicker plaque', { plaque: { ...base.plaque, thicknessMm: 0.3 } }],
    ['another constant', { constants: { ...plaqueValues, storedShare: 0.2 } }],
  ])('is not used for %s', (_, change) => {
    const changed = { ...day, ...change };
    expect(simulateDay(changed, { previous }).ph).toEqual(simulateDay(changed).ph);
  });

  test('is not used where it is looser, nor with other layers', () => {
    const loose = simulateDay(day, { tolerancePh: 0.05 });
    expect(simulateDay(day, { previous: loose }).ph).toEqual(previous.ph);
    expect(simulateDay(day, { cells: 8, previous }).ph).toEqual(simulateDay(day, { cells: 8 }).ph);
  });
});

describe('how a day begins', () => {
  const late = eating(1425, { retained: { share: 0.5, halfTimeMinutes: 10 } });
  const asleep = (startMinute: number, minutes: number): Exposure => ({ kind: 'sleep', startMinute, minutes, hexoseMmolPerL: 0 });
  const night: readonly Exposure[] = [asleep(0, 400), eating(480), eating(800, { minutes: 20 }), late, asleep(1430, 10)];
  const shifted = (exposures: readonly Exposure[]) => exposures.map((one) => ({ ...one, startMinute: one.startMinute + 1440 }));
  const mouths = ['average', 'approximal', 'dryMouth', 'upperFront'] as const;

  // Nothing is assumed of the second day here: both are run one after the other from rest. 0.02 pH, as everywhere at this tolerance.
  test.each(mouths)('a usual day is the second of two alike: %s', (name) => {
    const day: DayInput = { ...mouthPresets[name], constants: plaqueValues, exposures: night };
    const usual = simulateDay(day, { begin: 'usual-day' });
    const two = simulateDay({ ...day, minutes: 2880, exposures: [...night, ...shifted(night)] }).ph.subarray(1440);
    usual.ph.forEach((ph, minute) => {
      expect(Math.abs(ph - (two[minute] ?? Number.NaN))).toBeLessThan(0.02);
    });
    expect(usual.ph).toHaveLength(1441);
    expect(Math.abs((usual.ph[1440] ?? 0) - (usual.ph[0] ?? 1))).toBeLessThan(2e-3);
    expect(usual.protonBalanceError).toBeLessThan(1e-6);
  });

  test('from rest it knows nothing of the evening before, as a usual day it does', () => {
    const day: DayInput = { ...base, minutes: 1440, exposures: night };
    const [atRest, usual] = [simulateDay(day), simulateDay(day, { begin: 'usual-day' })];
    expect(atRest.begin).toBe('at-rest');
    expect(atRest.ph[0]).toBeGreaterThan((usual.ph[0] ?? 9) + 1);
    expect(Math.abs((atRest.ph[700] ?? 0) - (usual.ph[700] ?? 1))).toBeLessThan(0.01);
  });

  test('after the day before, it begins where that ended; food held between the teeth comes with it', () => {
    const day: DayInput = { ...base, minutes: 1440, exposures: night };
    const before = simulateDay(day);
    expect(before.end.held).toHaveLength(1);
    const after = simulateDay(day, { begin: before });
    expect(after.ph[0]).toBe(before.ph[1440]);
    const brushed = simulateDay({ ...day, exposures: [...night.slice(0, 3), late, { ...asleep(1430, 2), kind: 'brushing' }] });
    expect(brushed.end.held).toEqual([]);
    const heldNothing = simulateDay(day, { begin: { ...before, end: { ...before.end, held: [] } } });
    expect(minutesBelow(heldNothing, 5.7)).toBeLessThan(minutesBelow(after, 5.7) - 1);
  });

  test.each(['usual-day', 'after'] as const)('what was computed before gives the same to the last bit: %s', (how) => {
    const day: DayInput = { ...base, minutes: 1440, exposures: night };
    const begin = how === 'after' ? simulateDay({ ...day, exposures: [late] }) : how;
    const previous = simulateDay(day, { begin });
    const moved = { ...day, exposures: night.map((one) => (one === night[2] ? { ...one, startMinute: 900 } : one)) };
    const [resumed, anew] = [simulateDay(moved, { begin, previous }), simulateDay(moved, { begin })];
    expect(resumed.stepPh).toEqual(anew.stepPh);
    expect(resumed.states).toEqual(anew.states);
    expect(simulateDay(moved, { previous }).stepPh).toEqual(simulateDay(moved).stepPh);
    const other = simulateDay(day, { begin: simulateDay(day) });
    expect(simulateDay(moved, { begin, previous: other }).stepPh).toEqual(anew.stepPh);
  });

  test('a night in which nothing is left of the day costs little: only the night is run twice', () => {
    const day: DayInput = { ...base, minutes: 1440, exposures: [asleep(0, 400), eating(480), eating(800), asleep(1380, 60)] };
    const usual = simulateDay(day, { begin: 'usual-day' });
    const morning = usual.firstPass?.stepMinutes.findIndex((minute) => minute > 400) ?? 0;
    const joined = usual.stepMinutes.findIndex((minute) => minute > 400);
    expect(usual.stepPh.subarray(joined)).toEqual(usual.firstPass?.stepPh.subarray(morning));
  });
});

describe('a day that follows another', () => {
  const asleep = (startMinute: number, minutes: number): Exposure => ({ kind: 'sleep', startMinute, minutes, hexoseMmolPerL: 0 });
  const dayWith = (snack: number): DayInput => ({
    ...base,
    minutes: 1440,
    exposures: [asleep(0, 400), eating(480), eating(snack), eating(900), eating(1150), asleep(1380, 60)],
  });
  const [other, moved] = [dayWith(700), dayWith(720)];
  const usual = { begin: 'usual-day' as const, tolerancePh: 0.02 };
  const follow = simulateDay(other, usual);
  const alone = simulateDay(moved, usual);

  test('is the same within its tolerance, and computed only as far as the difference reaches', () => {
    const followed = simulateDay(moved, { ...usual, follow });
    expect(largestGap(followed.ph, alone.ph)).toBeLessThan(0.02);
    expect(largestGap(followed.ph, follow.ph)).toBeGreaterThan(0.5);
    expect(followed.ph).toHaveLength(1441);
    expect(followed.states.map(({ minute }) => minute)).toEqual(alone.states.map(({ minute }) => minute));
    expect(followed.protonBalanceError).toBeLessThan(1e-6);
    const evening = (curve: typeof follow) => curve.stepPh.subarray(curve.stepMinutes.findIndex((minute) => minute > 1155));
    expect(evening(followed)).toEqual(evening(follow));
    expect(followed.states[0]).toBe(follow.states[0]);
  });

  test('with something late, the night and the morning are those of the late thing', () => {
    const late: DayInput = {
      ...base,
      minutes: 1440,
      exposures: [eating(480), eating(1430, { retained: { share: 0.5, halfTimeMinutes: 10 } })],
    };
    const [followed, anew] = [simulateDay(late, { ...usual, follow }), simulateDay(late, usual)];
    expect(largestGap(followed.ph, anew.ph)).toBeLessThan(0.02);
    expect(followed.ph[0]).toBeLessThan((follow.ph[0] ?? 0) - 0.5);
    expect(Math.abs((followed.ph[1440] ?? 0) - (followed.ph[0] ?? 1))).toBeLessThan(2e-3);
  });

  test.each<[string, DayInput, Parameters<typeof simulateDay>[1]]>([
    ['another flow', { ...moved, saliva: { ...base.saliva, restingFlowMlPerMin: 0.2 } }, usual],
    ['a closer tolerance', moved, { ...usual, tolerancePh: 0.01 }],
    ['other layers', moved, { ...usual, cells: 8 }],
    ['a day from rest', moved, { tolerancePh: 0.02 }],
    ['a longer day', { ...moved, minutes: 1500 }, usual],
  ])('is computed alone for %s', (_, input, options) => {
    expect(simulateDay(input, { ...options, follow }).stepPh).toEqual(simulateDay(input, options).stepPh);
  });
});

function largestGap(a: Float64Array, b: Float64Array): number {
  return a.reduce((most, ph, minute) => Math.max(most, Math.abs(ph - (b[minute] ?? Number.NaN))), 0);
}

test('brushing takes away food between the teeth, a rinse with water does not', () => {
  const sticky = eating(10, { retained: { share: 0.3, halfTimeMinutes: 30 } });
  const after = (kind: 'brushing' | 'rinse') => {
    const water = kind === 'rinse' ? { pH: 7 } : {};
    const curve = simulateDay({ ...base, exposures: [sticky, { kind, startMinute: 20, minutes: 2, hexoseMmolPerL: 0, ...water }] });
    return minutesBelow(curve, 5.7);
  };
  expect(after('brushing')).toBeLessThan(after('rinse') - 10);
});

test('the balance of protons closes over a day', () => {
  const exposures = [eating(400), eating(700, { pH: 3, titratableMmolPerL: 60 }), eating(1000, { ureaMmolPerL: 100, minutes: 20 })];
  const { protonBalanceError, ph } = simulateDay({ ...base, minutes: 1440, exposures });
  expect(ph).toHaveLength(1441);
  expect(protonBalanceError).toBeLessThan(1e-6);
});

describe('bad input is refused by name', () => {
  test.each<[string, Partial<DayInput>, string]>([
    ['no saliva', { saliva: { ...base.saliva, restingFlowMlPerMin: 0 } }, 'saliva.restingFlowMlPerMin must be 0.01 to 5'],
    ['volumes in the wrong order', { saliva: { ...base.saliva, swallowVolumeMl: 0.8 } }, 'saliva.swallowVolumeMl'],
    ['negative plaque', { plaque: { ...base.plaque, thicknessMm: -0.2 } }, 'plaque.thicknessMm must be 0.02 to 2'],
    ['a share above one', { plaque: { ...base.plaque, aciduricShare: 1.5 } }, 'plaque.aciduricShare'],
    ['a negative constant', { constants: { ...plaqueValues, filmThicknessMm: -1 } }, 'constants.filmThicknessMm'],
    ['a constant of zero', { constants: { ...plaqueValues, uptakeHalfMmolPerL: 0 } }, 'constants.uptakeHalfMmolPerL'],
    ['a day of no minutes', { minutes: 0 }, 'minutes must be 1 to 2880'],
    ['two at once', { exposures: [eating(10), eating(12)] }, 'exposures[1].startMinute must not be before 15'],
    ['the wrong order', { exposures: [eating(100), eating(12)] }, 'exposures[1].startMinute'],
    ['one that outlasts the day', { exposures: [eating(10, { minutes: 1500 })] }, 'exposures[0].minutes'],
    ['one of no length', { exposures: [eating(10, { minutes: 0 })] }, 'exposures[0].minutes'],
    ['one after the day', { exposures: [eating(240)] }, 'exposures[0].startMinute'],
    ['negative sugar', { exposures: [eating(10, { hexoseMmolPerL: -1 })] }, 'exposures[0].hexoseMmolPerL must be 0 to 6000'],
    ['sugar that is no number', { exposures: [eating(10, { hexoseMmolPerL: Number.NaN })] }, 'exposures[0].hexoseMmolPerL'],
    ['absurd acid', { exposures: [eating(10, { pH: 0 })] }, 'exposures[0].pH'],
    [
      'less acid than is free',
      { exposures: [eating(10, { pH: 2, titratableMmolPerL: 5 })] },
      'exposures[0].titratableMmolPerL must be at least',
    ],
    ['acid above pH 7', { exposures: [eating(10, { pH: 8, titratableMmolPerL: 5 })] }, 'exposures[0].pH'],
    ['acid and bicarbonate', { exposures: [eating(10, { bicarbonateMmolPerL: 5, titratableMmolPerL: 5 })] }, 'exclude each other'],
    ['sugar in sleep', { exposures: [eating(10, { kind: 'sleep' })] }, 'exposures[0]'],
    ['a share held above one', { exposures: [eating(10, { retained: { share: 2, halfTimeMinutes: 5 } })] }, 'exposures[0].retained.share'],
    [
      'food held by gum',
      { exposures: [eating(10, { kind: 'chewing', hexoseMmolPerL: 0, retained: { share: 1, halfTimeMinutes: 5 } })] },
      'retained',
    ],
    ['an unknown kind', { exposures: [eating(10, { kind: 'walking' as 'eating' })] }, 'exposures[0].kind'],
  ])('%s', (_, wrong, message) => {
    expect(() => simulateDay({ ...base, ...wrong })).toThrow(message);
  });

  test('options', () => {
    expect(() => simulateDay(base, { tolerancePh: 0 })).toThrow('tolerancePh');
    expect(() => simulateDay(base, { cells: 3 })).toThrow('cells');
    expect(() => simulateDay(base, { cells: 6.5 })).toThrow('cells');
    expect(() => simulateDay(base, { cells: 8, begin: simulateDay(base) })).toThrow('begin must be a day with 8 layers');
    expect(() => minutesBelow(simulateDay(base), 1)).toThrow('linePh');
  });
});
