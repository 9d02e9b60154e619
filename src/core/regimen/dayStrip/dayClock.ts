import { onceSigned } from '../choice/rankCandidates.ts';
import { atPlace } from '../places.ts';
import type { PlannedUse } from '../planFluoride.ts';
import type { RegimenTables } from '../tables.ts';
import type { Jurisdiction, ShelfItem } from '../types.ts';
import { findUseRow, type UseRow } from './findUseRow.ts';
import { pairsApart } from './pairsApart.ts';
import { MOST_TIMES, placeUses } from './placeUses.ts';
import type { DayRhythm, DayStrip, StripTimes, TimedUse } from './types.ts';

export interface DayClock {
  /** What may be used today. */
  readonly now: DayStrip;
  /** The day once all that waits is signed; null where nothing waits. */
  readonly onceSigned: DayStrip | null;
  /** Used at home, but at no time of the day that could be named. */
  readonly notTimed: readonly { readonly shelfItemId: string; readonly because: string }[];
}

export interface DayClockInput {
  readonly planned: readonly PlannedUse[];
  readonly place: Jurisdiction;
  readonly rhythm: DayRhythm;
  readonly uses: readonly UseRow[];
  readonly times: StripTimes;
  readonly tables: Pick<RegimenTables, 'agents' | 'interactions'>;
}

const PORTABLE: readonly ShelfItem['form'][] = ['gum', 'lozenge', 'spray'];

/** A regimen over one day, as it is now and as it will be once all that waits is signed. What is used at the visit stands on neither. */
export function dayClock(input: DayClockInput): DayClock {
  const home = input.planned.filter(({ use }) => use.atVisit !== true);
  const untimed = home.flatMap(({ item, use }) => {
    const because = whyUntimed(item, use.timesPerDay, input);
    return because === undefined ? [] : [{ shelfItemId: item.id, because }];
  });
  const timed = home.filter(({ item }) => !untimed.some(({ shelfItemId }) => shelfItemId === item.id));
  const isWaiting = home.some(({ state }) => state === 'waiting-for-signature');
  return {
    now: placeAll(
      timed.filter(({ state }) => state !== 'waiting-for-signature'),
      input,
    ),
    onceSigned: isWaiting ? placeAll(onceSigned(timed), input) : null,
    notTimed: untimed,
  };
}

function whyUntimed(item: ShelfItem, timesPerDay: number, { place, uses }: DayClockInput): string | undefined {
  if (timesPerDay < 1) return 'used less often than once a day';
  if (timesPerDay > MOST_TIMES) return `used more than ${MOST_TIMES} times a day`;
  const row = findUseRow(item, place, uses);
  if (!row) return 'when to use it is not known here: the team shows how';
  return row.rhythm === 'when-dry' ? 'used whenever the mouth is dry, by day or by night' : undefined;
}

function placeAll(planned: readonly PlannedUse[], input: DayClockInput): DayStrip {
  const { rhythm, times, tables } = input;
  return placeUses({
    uses: planned.flatMap((one) => toTimedUse(one, input)),
    apart: pairsApart(
      planned.map(({ item }) => item),
      tables.interactions,
    ),
    rhythm,
    times,
  });
}

function toTimedUse({ item, use }: PlannedUse, { place, uses, tables }: DayClockInput): TimedUse[] {
  const row = findUseRow(item, place, uses);
  if (!row) return [];
  const wait = tables.agents.find(({ id }) => id === item.agentId)?.waitMinutes;
  return [
    {
      shelfItemId: item.id,
      timesPerDay: use.timesPerDay,
      rhythm: row.rhythm,
      isPortable: PORTABLE.includes(item.form),
      waitMinutes: wait ? atPlace(wait, place) : 0,
    },
  ];
}
