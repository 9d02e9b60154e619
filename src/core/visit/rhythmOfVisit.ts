import { acidMinutesOf } from '../plaque/day/acidMinutesOf.ts';
import type { Span } from '../plaque/day/nightSpans.ts';
import type { AcidDay } from '../plaque/day/types.ts';
import type { DayUseTables } from '../regimen/dayStrip/dayUseTables.ts';
import { namedRhythm, rhythmOfDay, usualRhythm } from '../regimen/dayStrip/rhythmOfDay.ts';
import type { DayRhythm } from '../regimen/dayStrip/types.ts';
import { rhythmSaid, type SaidRhythmVisit } from './rhythmSaid.ts';
import type { VisitInput } from './types.ts';

/** The described day that uses are placed in: the one that stands on the leaflet, else the first. */
export const dayForUses = ({ acidDay }: Pick<VisitInput['visit'], 'acidDay'>): AcidDay | undefined =>
  acidDay?.days[acidDay.onLeaflet ?? 0] ?? acidDay?.days[0];

/** What is known of a described day besides its times. */
export interface ToldDay {
  /** The same day with the names that may be read here. */
  readonly named: AcidDay;
  /** Where the plaque is on the acid side; absent = not worked out, and every time of eating counts alike. */
  readonly acid?: readonly Span[] | undefined;
}

/**
 * How the day of a person runs: as it was described, else the usual times of the rhythm that was named, at this visit or not too long
 * before, else a usual day of the age.
 */
export function rhythmOfVisit(
  visit: Pick<VisitInput['visit'], 'acidDay'> & SaidRhythmVisit,
  ageYears: number,
  { usual, named, rhythmKept }: Pick<DayUseTables, 'usual' | 'named' | 'rhythmKept'>,
  told?: ToldDay,
): DayRhythm {
  const day = told?.named ?? dayForUses(visit);
  if (day) return rhythmOfDay(day, told?.acid && acidMinutesOf(day, told.acid));
  const said = rhythmSaid(visit, rhythmKept);
  const isKnown = said !== undefined && said.how !== 'out-of-date';
  const rhythm = isKnown ? namedRhythm(said.rhythm, ageYears, named, usual) : usualRhythm(ageYears, usual);
  return said === undefined || said.how === 'asked' ? rhythm : { ...rhythm, askedOn: said.askedOn };
}
