import { describe, expect, test } from 'vitest';
import { plaqueValues } from '../../../content/plaque/constants.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import type { DayCurve, DayInput, Exposure, Mouth, Plaque, PlaqueConstants } from '../types.ts';
import { LACTATE } from './layout.ts';
import { minutesBelow } from './readCurve.ts';
import { simulateDay } from './simulateDay.ts';

// What was published of plaque pH after sugar, and how far the model may be from it. The model's own numbers were tuned to some of these
// curves (content/plaque), so this says that they still come out, not that the model was proven on them. Rinses begin at minute 10.

const START = 10;
const rinse = (more: Partial<Exposure> = {}): Exposure => ({ kind: 'rinse', startMinute: START, minutes: 1, hexoseMmolPerL: 584, ...more });
const gum: Exposure = { kind: 'chewing', startMinute: START + 10, minutes: 20, hexoseMmolPerL: 0, flowMlPerMin: 2 };

interface Case {
  readonly mouth?: Mouth;
  readonly plaque?: Partial<Plaque>;
  readonly constants?: Partial<PlaqueConstants>;
  readonly exposures?: readonly Exposure[];
  readonly minutes?: number;
}

function run({ mouth = mouthPresets.average, plaque, constants, exposures = [rinse()], minutes = 250 }: Case = {}): DayCurve {
  const input: DayInput = {
    saliva: mouth.saliva,
    plaque: { ...mouth.plaque, ...plaque },
    constants: { ...plaqueValues, ...constants },
    exposures,
    minutes,
  };
  return simulateDay(input);
}

const lowest = ({ stepPh }: DayCurve) => Math.min(...stepPh);
const phAt = ({ ph }: DayCurve, minutesAfter: number) => ph[START + minutesAfter] ?? Number.NaN;
const rest = ({ ph }: DayCurve) => ph[0] ?? Number.NaN;
/** Minutes after the start of the rinse until the pH is back within 0.2 of its rest, for good. */
const backMinutes = (curve: DayCurve) => curve.ph.findLastIndex((value) => value < rest(curve) - 0.2) + 1 - START;

const average = run();
const approximal = run({ mouth: mouthPresets.approximal });

describe('after one minute of 10 % sucrose', () => {
  // Rest 6.60 (0.18) by sampling, 6.56 (0.19) by telemetry, nine people [sucroseRinsePh]; range of the test 6.4 to 7.1.
  test('1: plaque at rest', () => {
    for (const curve of [average, approximal]) {
      expect(rest(curve)).toBeGreaterThan(6.4);
      expect(rest(curve)).toBeLessThan(7.1);
    }
  });

  // About 5.5 in one-day plaque [sucroseRinsePh]; 0.3.
  test('2: one-day plaque', () => {
    expect(Math.abs(lowest(run({ mouth: mouthPresets.thin })) - 5.5)).toBeLessThan(0.3);
  });

  // Five-day plaque 4.69 (0.28) by sampling, 3.94 (0.49) by telemetry between teeth [sucroseRinsePh].
  test('3: five-day plaque', () => {
    expect(lowest(average)).toBeGreaterThan(4.3);
    expect(lowest(average)).toBeLessThan(5.1);
    expect(lowest(approximal)).toBeGreaterThan(3.9);
    expect(lowest(approximal)).toBeLessThan(4.6);
  });

  // Falls within 5 to 10 min and recovers in 30 to 60 [plaquePhCourse]. The minimum is flat: within 0.1 of it by 10 min.
  test('4: fall and recovery', () => {
    expect(phAt(average, 10) - lowest(average)).toBeLessThan(0.1);
    expect(phAt(average, 2) - lowest(average)).toBeGreaterThan(0.1);
    expect(backMinutes(average)).toBeGreaterThan(30);
    expect(backMinutes(average)).toBeLessThan(70);
  });

  // Between teeth by telemetry: 4.39 at 10 min, below 5.7 for 80 min [wang2015]; 4.2 to 4.8 and 50 to 110 min.
  test('5: between the teeth', () => {
    expect(phAt(approximal, 10)).toBeGreaterThan(4.2);
    expect(phAt(approximal, 10)).toBeLessThan(4.8);
    expect(minutesBelow(approximal, 5.7)).toBeGreaterThan(50);
    expect(minutesBelow(approximal, 5.7)).toBeLessThan(110);
  });

  // Plaque fluid 7 min after: pH 1.59 lower, lactate 35 mmol/L more [vogel2002]. pH 1.2 to 2.3; lactate by its order only.
  test('7: plaque fluid after seven minutes', () => {
    const fall = rest(average) - phAt(average, 7);
    expect(fall).toBeGreaterThan(1.2);
    expect(fall).toBeLessThan(2.3);
    const at7 = run({ exposures: [rinse(), { ...gum, startMinute: START + 1, minutes: 6, flowMlPerMin: 0.32 }] }).states.at(-1);
    expect(at7?.values[LACTATE * 7]).toBeGreaterThan(12);
    expect(at7?.values[LACTATE * 7]).toBeLessThan(45);
  });

  // Lactate levels off between 1 and 5 % sucrose [margolis1993]; the pH then differs by less than 0.3.
  test('8: more sugar does little more', () => {
    const [one, five] = [58.4, 292].map((hexoseMmolPerL) => lowest(run({ exposures: [rinse({ hexoseMmolPerL })] })));
    expect((one ?? 0) - (five ?? 0)).toBeGreaterThan(0);
    expect((one ?? 0) - (five ?? 0)).toBeLessThan(0.3);
  });

  // A slower film makes it lower and longer, 0.8 to 8 mm/min; 0.5 mm of plaque falls lower than 1.5 mm [macphersonDawes1991].
  test('9: film and thickness', () => {
    const speeds = [0.8, 2, 4, 8].map((filmVelocityMmPerMin) => run({ plaque: { filmVelocityMmPerMin } }));
    for (const [i, curve] of speeds.entries()) {
      const faster = speeds[i + 1];
      if (faster === undefined) continue;
      expect(lowest(curve)).toBeLessThan(lowest(faster));
      expect(minutesBelow(curve, 5.5)).toBeGreaterThan(minutesBelow(faster, 5.5));
    }
    expect(lowest(run({ plaque: { thicknessMm: 0.5 } }))).toBeLessThan(lowest(run({ plaque: { thicknessMm: 1.5 } })));
  });

  // Rest 6.09 (0.37) outside the upper front teeth, 7.18 (0.36) inside the lower front teeth [sitePh]; order, and 0.5 each.
  test('10: sites at rest', () => {
    const upper = rest(run({ mouth: mouthPresets.upperFront }));
    expect(upper).toBeLessThan(rest(average));
    expect(Math.abs(upper - 6.09)).toBeLessThan(0.5);
    expect(Math.abs(rest(average) - 7.18)).toBeLessThan(0.5);
  });

  // Fixed buffer makes the time at low pH much longer [dibdin1990]; order.
  test('11: fixed buffer', () => {
    const little = { fixedBuffer1MmolPerL: 9, fixedBuffer2MmolPerL: 3.5, fixedBuffer3MmolPerL: 2, fixedBuffer4MmolPerL: 6 };
    expect(backMinutes(run({ constants: little }))).toBeLessThan(backMinutes(average));
  });

  // Sugar-free gum: back quickly, less so outside the upper front teeth [gumPh]; at least twice as fast.
  test('12: gum', () => {
    // The gum comes 10 min after the rinse: what stands before it is the same with and without.
    const left = (mouth: Mouth, more: readonly Exposure[] = []) => minutesBelow(run({ mouth, exposures: [rinse(), ...more] }), 5.5) - 10;
    for (const mouth of [mouthPresets.average, mouthPresets.approximal]) expect(left(mouth, [gum])).toBeLessThan(left(mouth) / 2);
    expect(left(mouthPresets.upperFront, [gum])).toBeGreaterThan(left(mouthPresets.average, [gum]));
  });

  // Bicarbonate raises the pH from about 4.5 at once, little of it less [bicarbonatePh]; order.
  test('13: bicarbonate', () => {
    const at15 = (bicarbonateMmolPerL: number) =>
      phAt(run({ exposures: [rinse(), rinse({ startMinute: START + 10, hexoseMmolPerL: 0, bicarbonateMmolPerL })] }), 15);
    expect(at15(84)).toBeGreaterThan(at15(20));
    expect(at15(20)).toBeGreaterThan(phAt(average, 15));
    expect(at15(84) - phAt(average, 15)).toBeGreaterThan(1);
  });

  // Plaque that makes little or much acid: presets by what they are, never "caries-free" or "caries-active": one study found no difference
  // of the minimum, only a faster return [dong1999].
  test('14: low and high acid plaque', () => {
    const [low, high] = [run({ mouth: mouthPresets.lowAcid }), run({ mouth: mouthPresets.highAcid })];
    expect(lowest(low)).toBeGreaterThan(lowest(average));
    expect(lowest(high)).toBeLessThan(lowest(average));
    expect(backMinutes(low)).toBeLessThan(backMinutes(high));
  });

  // Thick plaque at rest does not drift into acid: what saliva brings reaches only its outer layers.
  test('thick plaque rests above 6', () => {
    for (const thicknessMm of [0.5, 1, 1.5]) expect(rest(run({ plaque: { thicknessMm }, exposures: [], minutes: 10 }))).toBeGreaterThan(6);
  });
});

// docs/acid-day.md gives the figures of what the model misses.
describe('known shortfalls', () => {
  // 6: urea of 0.25 to 1 % at once stays above 5.7 to the end [sucroseRinsePh]. Here more urea is better, and only the strongest comes near.
  test('6: urea after sucrose, between the teeth', () => {
    const urea = (ureaMmolPerL: number) => rinse({ startMinute: START + 1.5, hexoseMmolPerL: 0, ureaMmolPerL });
    const below = [0, 42, 83, 167].map((dose) =>
      minutesBelow(run({ mouth: mouthPresets.approximal, exposures: [rinse(), urea(dose)] }), 5.7),
    );
    for (const [i, minutes] of below.slice(1).entries()) expect(minutes).toBeLessThan(below[i] ?? Number.NaN);
    expect(below[3]).toBeLessThan(5);
  });
});
