import { minutesBelow } from '../model/readCurve.ts';
import type { DayCurve } from '../types.ts';
import type { DayModel } from './dayModel.ts';
import { runDay } from './runDay.ts';
import type { AcidDay, Food } from './types.ts';

/** How many minutes on the acid side would go if one event had not been, all else as it was. Costs do not add up to the whole. */
export interface EventCost {
  readonly eventId: string;
  readonly minutes: number;
}

/**
 * Leave one out: what each event of eating or drinking costs, dearest first. It tells where the minutes come from; it suggests nothing.
 * @param curve  of the whole day by the same model
 * @param linePh  under which time counts
 */
export function eventCosts(
  day: AcidDay,
  {
    curve,
    model,
    foods,
    linePh,
  }: { readonly curve: DayCurve; readonly model: DayModel; readonly foods: ReadonlyMap<string, Food>; readonly linePh: number },
): readonly EventCost[] {
  const whole = minutesBelow(curve, linePh);
  const costs = day.events
    .filter(({ kind }) => kind === 'eating')
    .map(({ id }) => {
      const without = { ...day, events: day.events.filter((event) => event.id !== id) };
      const { tolerancePh, cells } = curve;
      return { eventId: id, minutes: whole - minutesBelow(runDay(without, model, foods, { tolerancePh, cells, previous: curve }), linePh) };
    });
  return costs.sort((a, b) => b.minutes - a.minutes);
}
