import type { AcidDay, EatingEvent } from '../../plaque/day/types.ts';
import type { DayRhythm, RhythmId } from './types.ts';

/** Times of a day that nobody asked about: for whom, and when. Half-open ages in completed years. */
export interface UsualRhythm {
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly rhythm: DayRhythm;
}

/**
 * The rhythm of a described day: when she gets up and goes to bed, and every time of eating with the acid that it makes in the model.
 * @param acidMinutes  minutes by id of the event, where they were worked out
 */
export function rhythmOfDay(day: AcidDay, acidMinutes: Readonly<Record<string, number>> = {}): DayRhythm {
  const eating = day.events.filter((event): event is EatingEvent => event.kind === 'eating' && event.sipped !== true);
  return {
    upMinute: Math.floor(day.wakeMinute),
    bedMinute: Math.floor(day.sleepMinute),
    basis: 'told',
    eating: eating.map(({ id, label, startMinute, minutes }) => ({
      startMinute: Math.floor(startMinute),
      minutes,
      name: label ?? id,
      ...(acidMinutes[id] === undefined ? {} : { acidMinutes: acidMinutes[id] }),
    })),
  };
}

/**
 * The usual day of the age, said to be no more than that.
 * @throws RangeError when no row covers the age
 */
export function usualRhythm(ageYears: number, rows: readonly UsualRhythm[]): DayRhythm {
  const row = rows.find(({ fromAgeYears, belowAgeYears }) => ageYears >= fromAgeYears && ageYears < belowAgeYears);
  if (!row) throw new RangeError(`ageYears has no usual day: ${ageYears}`);
  return row.rhythm;
}

/** The usual times of each rhythm that can be named; a day at home has those of the age. */
export type NamedRhythms = Readonly<Record<Exclude<RhythmId, 'home'>, DayRhythm>>;

/** The usual times of a rhythm that the person named: the times are nobody's own, and the basis says so. */
export function namedRhythm(id: RhythmId, ageYears: number, named: NamedRhythms, usual: readonly UsualRhythm[]): DayRhythm {
  if (id !== 'home') return { ...named[id], basis: 'named', rhythm: id };
  const { away: _, ...atHome } = usualRhythm(ageYears, usual);
  return { ...atHome, basis: 'named', rhythm: 'home' };
}
