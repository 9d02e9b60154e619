import { describe, expect, it } from 'vitest';
import { acidArea, listAcidStretches, traceEvents } from './dayFigures.ts';
import type { AcidDay, EatingEvent } from './types.ts';

/** A curve through these points, straight between them, at every minute. */
function curveThrough(points: readonly (readonly [minute: number, ph: number])[]): Float64Array {
  return Float64Array.from({ length: 1441 }, (_, minute) => {
    const after = Math.max(
      1,
      points.findIndex(([at]) => at >= minute),
    );
    const [[from, low] = [0, 7], [to, high] = [1440, 7]] = [points[after - 1], points[after]];
    return low + ((high - low) * (minute - from)) / (to - from);
  });
}
const eating = (id: string, startMinute: number): EatingEvent => ({
  id,
  kind: 'eating',
  occasion: 'meal',
  startMinute,
  minutes: 10,
  portions: [],
});
const dayOf = (...events: readonly EatingEvent[]): AcidDay => ({ wakeMinute: 420, sleepMinute: 1380, events });
const ph = curveThrough([
  [0, 7],
  [600, 7],
  [620, 5],
  [660, 7],
  [700, 7],
  [710, 4],
  [770, 7],
  [1440, 7],
]);

describe('the figures of a curve', () => {
  it('finds the stretches under a line with their ends between the minutes', () => {
    expect(listAcidStretches({ ph }, 5.5)).toEqual([
      { from: expect.closeTo(615, 9), to: expect.closeTo(630, 9) },
      { from: expect.closeTo(705, 9), to: expect.closeTo(740, 9) },
    ]);
    expect(listAcidStretches({ ph }, 3)).toEqual([]);
    expect(listAcidStretches({ ph }, 8)).toEqual([{ from: 0, to: 1440 }]);
  });

  it('traces each event up to the next, and says when the plaque is back near rest', () => {
    expect(traceEvents(dayOf(eating('b', 700), eating('a', 600)), { ph })).toEqual([
      { eventId: 'a', lowestPh: 5, lowestAtMinute: 620, backAtMinute: 656 },
      { eventId: 'b', lowestPh: 4, lowestAtMinute: 710, backAtMinute: 766 },
    ]);
    // Something else is eaten before the plaque is back.
    expect(traceEvents(dayOf(eating('a', 600), eating('b', 640)), { ph })[0]).toMatchObject({ lowestAtMinute: 620, backAtMinute: null });
    expect(traceEvents(dayOf(), { ph })).toEqual([]);
  });

  it('adds up the acid: pH 6 all day is 1 µmol/L for 1,440 minutes', () => {
    const steps = { stepMinutes: Float64Array.of(0, 300, 1440), stepPh: Float64Array.of(6, 6, 6) };
    expect(acidArea(steps)).toBeCloseTo(1440, 9);
    expect(acidArea({ ...steps, stepPh: Float64Array.of(5, 5, 5) })).toBeCloseTo(14_400, 6);
  });
});
