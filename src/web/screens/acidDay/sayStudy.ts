import { foodsById } from '../../../content/foods.ts';
import { DAY_CAUTION, sayDay, sayMinutesRange } from '../../../core/plaque/day/sayDay.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { DrawnDay } from './drawDay.ts';
import type { DayStudy } from './studyDay.ts';

export const CAUTION = DAY_CAUTION;

interface Told {
  readonly day: AcidDay;
  readonly drawn: DrawnDay;
  readonly study: Partial<DayStudy>;
}

/** The one sentence that leads, and what would shorten it most; null until the band is there. Never a figure without its range. */
export function sayTold({ day, drawn, study }: Told): { readonly headline: string; readonly change?: string | undefined } | null {
  const { bandTold, costs = [], gains = [] } = study;
  if (!bandTold) return null;
  return sayDay({
    day,
    foods: foodsById,
    minutes: drawn.minutes.saliva,
    band: bandTold.minutesBelow.saliva,
    atRest: bandTold.atRest,
    costs,
    gains,
  });
}

/** The changed day beside the one that was told: minutes only where the band of the difference is all on one side. */
export function sayChanged({ bandTold, bandChanged, fewer, more }: Partial<DayStudy>): string | null {
  if (!bandTold || !bandChanged) return null;
  const now = sayMinutesRange(bandTold.minutesBelow.saliva);
  const then = sayMinutesRange(bandChanged.minutesBelow.saliva);
  const both = `In the model, roughly ${now} a day on the acid side as told, ${then} with the change`;
  if (fewer) return `${both}: ${sayMinutesRange(fewer)} less.`;
  if (more) return `${both}: ${sayMinutesRange(more)} more.`;
  return `${both}. The model cannot tell a difference.`;
}
