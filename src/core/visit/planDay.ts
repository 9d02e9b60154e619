import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import { type DayClock, type DayClockInput, dayClock } from '../regimen/dayStrip/dayClock.ts';
import { settleTables } from '../regimen/disagreement/settleTables.ts';
import type { ChosenPositions } from '../regimen/disagreement/types.ts';
import type { VisitContent } from './visitContent.ts';

export interface PlanDayInput extends Pick<DayClockInput, 'planned' | 'place' | 'rhythm'> {
  /** As the practice chose where sources disagree; never left out by forgetting it. */
  readonly disagreements: ChosenPositions | undefined;
}
type DayContent = Pick<VisitContent, 'leaflet' | 'dayUses' | 'regimen'>;

/** What to use when, of the planned items in this rhythm. An assessment is made anew after every answer; the day only where it is another. */
export const planDay = (input: PlanDayInput, content: DayContent): DayClock => clocksOf(content)(JSON.stringify(input));

const clocksOf = keepByTable(({ leaflet, dayUses, regimen }: DayContent) =>
  keepByKey((key: string) => {
    const { disagreements, ...input } = JSON.parse(key) as PlanDayInput;
    return dayClock({ ...input, uses: leaflet.uses, times: dayUses.times, tables: settleTables(regimen, disagreements) });
  }),
);
