import { simulateDay } from '../model/simulateDay.ts';
import type { DayCurve, SimulationOptions } from '../types.ts';
import type { DayModel } from './dayModel.ts';
import { requireDay } from './findDayProblems.ts';
import { toExposures } from './toExposures.ts';
import type { AcidDay, Food } from './types.ts';

/**
 * The curve of a described day by one set of values. It begins as her usual day, after the same day, unless `begin` says otherwise.
 * @throws RangeError naming the field of the day
 */
export function runDay(day: AcidDay, model: DayModel, foods: ReadonlyMap<string, Food>, options: SimulationOptions = {}): DayCurve {
  const { mouth, constants, eating } = model;
  const exposures = toExposures(requireDay(day, foods), { foods, eating });
  return simulateDay({ saliva: mouth.saliva, plaque: mouth.plaque, constants, exposures }, { begin: 'usual-day', ...options });
}
