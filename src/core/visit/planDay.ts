import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import { type DayClock, type DayClockInput, dayClock } from '../regimen/dayStrip/dayClock.ts';
import type { VisitContent } from './visitContent.ts';

export type PlanDayInput = Pick<DayClockInput, 'planned' | 'place' | 'rhythm'>;
type DayContent = Pick<VisitContent, 'leaflet' | 'dayUses' | 'regimen'>;

/** What to use when, of the planned items in this rhythm. An assessment is made anew after every answer; the day only where it is another. */
export const planDay = (input: PlanDayInput, content: DayContent): DayClock => clocksOf(content)(JSON.stringify(input));

const clocksOf = keepByTable(({ leaflet, dayUses, regimen }: DayContent) =>
  keepByKey((key: string) => dayClock({ ...(JSON.parse(key) as PlanDayInput), uses: leaflet.uses, times: dayUses.times, tables: regimen })),
);
