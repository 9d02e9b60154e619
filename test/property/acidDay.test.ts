import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plaqueValues } from '../../src/content/plaque/constants.ts';
import { mouthPresets } from '../../src/content/plaque/presets.ts';
import { readyDays } from '../../src/content/readyDays.ts';
import { minutesBelow } from '../../src/core/plaque/model/readCurve.ts';
import { simulateDay } from '../../src/core/plaque/model/simulateDay.ts';
import type { DayCurve, Exposure, Mouth, MouthPreset } from '../../src/core/plaque/types.ts';
import { drawDay } from '../../src/web/screens/acidDay/drawDay.ts';
import { moveEvent } from '../../src/web/screens/acidDay/editDay.ts';

// What is monotone in the acid day, and nothing more. More events in general may give fewer minutes (chewing clears), so that is not here.
// The margin is what two runs of the usual tolerance may differ by in a long flat stretch near a line.

/** EBBLINE_LONG=1: 400 cases, others each time. */
const isLong = process.env['EBBLINE_LONG'] === '1';
const RUNS = isLong ? { numRuns: 400 } : { numRuns: 16, seed: 2026 };
/** Of whole days in a chain. */
const DRAGS = isLong ? { numRuns: 100 } : { numRuns: 5, seed: 2026 };
const LINES = [5.7, 5.5, 5.0];
const MARGIN_MIN = 0.5;
/** Between 24:00 and 0:00 of a usual day: two states count as the same within 0.001 in every layer. */
const MOST_JUMP_PH = 2e-3;
/** 20 % (w/v) sucrose. */
const MOST_HEXOSE = 1168;

const presets = fc.constantFrom(...(Object.keys(mouthPresets) as MouthPreset[]));
const hexose = fc.oneof(fc.constantFrom(0, 1, MOST_HEXOSE), fc.double({ min: 0, max: MOST_HEXOSE, noNaN: true }));
/** From 1 % on it is a sugar event: a mouthful with less only rinses where the film is slow. */
const LEAST_SUGARY = 58;
const sugary = fc.oneof(fc.constantFrom(LEAST_SUGARY, MOST_HEXOSE), fc.double({ min: LEAST_SUGARY, max: MOST_HEXOSE, noNaN: true }));
const lengths = fc.oneof(fc.constantFrom(0.5, 60), fc.integer({ min: 1, max: 30 }));

const eating = (startMinute: number, minutes: number, hexoseMmolPerL: number): Exposure => ({
  kind: 'eating',
  startMinute,
  minutes,
  hexoseMmolPerL,
});

function below(mouth: Mouth, exposures: readonly Exposure[], minutes = 400): readonly number[] {
  const curve = simulateDay({ saliva: mouth.saliva, plaque: mouth.plaque, constants: plaqueValues, exposures, minutes });
  return LINES.map((line) => minutesBelow(curve, line));
}

function expectNoFewer(more: readonly number[], less: readonly number[]): void {
  more.forEach((minutes, i) => {
    expect(minutes).toBeGreaterThanOrEqual((less[i] ?? Number.NaN) - MARGIN_MIN);
  });
}

describe('minutes below 5.7, 5.5 and 5.0', () => {
  test('more sugar in the same event never gives fewer', () => {
    fc.assert(
      fc.property(presets, hexose, hexose, lengths, (preset, a, b, minutes) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((dose) => below(mouthPresets[preset], [eating(10, minutes, dose)]));
        expectNoFewer(more ?? [], less ?? []);
      }),
      RUNS,
    );
  });

  test('a lower flow never gives fewer', () => {
    const flows = fc.oneof(fc.constantFrom(0.05, 0.1, 0.32, 2), fc.double({ min: 0.05, max: 2, noNaN: true }));
    fc.assert(
      fc.property(presets, hexose, flows, flows, (preset, dose, a, b) => {
        const { plaque, saliva } = mouthPresets[preset];
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((restingFlowMlPerMin) =>
          below({ plaque, saliva: { ...saliva, restingFlowMlPerMin } }, [eating(10, 5, dose)]),
        );
        expectNoFewer(low ?? [], high ?? []);
      }),
      RUNS,
    );
  });

  test('one more sugar event, at least two hours from any other, never gives fewer', () => {
    const gaps = fc.oneof(fc.constant(120), fc.integer({ min: 120, max: 240 }));
    fc.assert(
      fc.property(presets, sugary, sugary, lengths, gaps, (preset, first, second, minutes, gap) => {
        const one = eating(10, minutes, first);
        const two = eating(10 + minutes + gap, 5, second);
        expectNoFewer(below(mouthPresets[preset], [one, two], 700), below(mouthPresets[preset], [one], 700));
      }),
      RUNS,
    );
  });

  test('gum or an alkaline rinse after sugar never gives more', () => {
    const delays = fc.oneof(fc.constantFrom(0, 1), fc.integer({ min: 0, max: 60 }));
    const gum = fc.record({
      minutes: fc.constantFrom(1, 10, 20),
      flowMlPerMin: fc.oneof(fc.constant(2), fc.double({ min: 0.5, max: 4, noNaN: true })),
    });
    const alkaline = fc.record({
      minutes: fc.constantFrom(0.5, 1, 2),
      bicarbonateMmolPerL: fc.oneof(fc.constantFrom(25, 1000), fc.integer({ min: 25, max: 500 })),
    });
    const after = fc.oneof(
      gum.map((more) => ({ kind: 'chewing' as const, ...more })),
      alkaline.map((more) => ({ kind: 'rinse' as const, ...more })),
    );
    fc.assert(
      fc.property(presets, hexose, lengths, delays, after, (preset, dose, minutes, delay, more) => {
        const sugar = eating(10, minutes, dose);
        const alone = below(mouthPresets[preset], [sugar]);
        const helped = below(mouthPresets[preset], [sugar, { ...more, startMinute: 10 + minutes + delay, hexoseMmolPerL: 0 }]);
        expectNoFewer(alone, helped);
      }),
      RUNS,
    );
  });
});

describe('a usual day', () => {
  const minutes = fc.oneof(fc.constantFrom(1, 15), fc.integer({ min: 1, max: 30 }));
  /** Half of them end at midnight. */
  const gaps = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 120 }));

  test('ends as it begins, however late the last thing is eaten', () => {
    fc.assert(
      fc.property(presets, sugary, sugary, minutes, gaps, (preset, first, last, length, gap) => {
        const { saliva, plaque } = mouthPresets[preset];
        const exposures = [
          eating(700, 20, first),
          { ...eating(1440 - length - gap, length, last), retained: { share: 0.3, halfTimeMinutes: 10 } },
        ];
        const { ph } = simulateDay({ saliva, plaque, constants: plaqueValues, exposures }, { begin: 'usual-day' });
        expect(Math.abs((ph[1440] ?? 0) - (ph[0] ?? 9))).toBeLessThan(MOST_JUMP_PH);
      }),
      RUNS,
    );
  });
});

describe('while something is dragged', () => {
  /** Half of them at the ends of the day or at one place again. */
  const places = fc.array(
    fc.oneof(
      fc.constantFrom(0, 5, 720, 1425, 1439),
      fc.integer({ min: 0, max: 287 }).map((step) => 5 * step),
    ),
    {
      minLength: 2,
      maxLength: 5,
    },
  );

  test('each picture is the day worked out alone within 0.02 pH, however it was dragged there', () => {
    fc.assert(
      fc.property(presets, fc.constantFrom(...readyDays), fc.nat(), places, (preset, { day }, nth, minutes) => {
        const event = day.events[nth % day.events.length];
        if (!event) throw new Error('a ready-made day has events');
        const question = { day, mouth: mouthPresets[preset], measured: {} };
        let last: DayCurve = drawDay({ ...question, isLive: false }).curve;
        for (const minute of minutes) {
          const moved = { ...question, day: moveEvent(day, event.id, minute), isLive: true };
          last = drawDay(moved, { last }).curve;
          const alone = drawDay(moved).curve;
          expect(last.ph.reduce((most, ph, i) => Math.max(most, Math.abs(ph - (alone.ph[i] ?? Number.NaN))), 0)).toBeLessThan(0.02);
        }
      }),
      DRAGS,
    );
  });
});
