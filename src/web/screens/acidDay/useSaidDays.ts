import { useEffect, useMemo, useState } from 'react';
import { foodsById } from '../../../content/foods.ts';
import { type SaidDay, sayDays } from '../../../core/plaque/day/sayDays.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { MouthOfVisit } from '../../../core/visit/mouthOfVisit.ts';
import type { StudyQuestion } from './studyDay.ts';
import { type StudyState, useDayStudy } from './useDayStudy.ts';

interface SaidDaysInput {
  /** Empty where nothing is to be worked out. */
  readonly days: readonly AcidDay[];
  readonly mouth: MouthOfVisit;
  /** The study of the day that is on the page: it comes first, and is not done twice. */
  readonly study: StudyState;
  readonly seen: (day: AcidDay) => AcidDay;
  readonly isPaused: boolean;
}

/** The sentence over all days that were told, once each is worked out, one after the other; null before that, and of a single day. */
export function useSaidDays({ days, mouth, study, seen, isPaused }: SaidDaysInput): string | null {
  const [known, setKnown] = useState<ReadonlyMap<AcidDay, Known>>(new Map());
  const find = (day: AcidDay) => {
    const one = known.get(day);
    return one?.mouth === mouth ? one.said : undefined;
  };
  const next = days.length < 2 ? undefined : days.find((day) => !find(day));
  const question = useMemo<StudyQuestion | null>(
    () => (next ? { told: next, changed: null, mouth: mouth.mouth, measured: mouth.measured, limits: null } : null),
    [next, mouth],
  );
  const other = useDayStudy(question, isPaused || !study.isDone);
  useEffect(() => {
    for (const state of [study, other]) {
      const said = readSaid(state);
      const isNew = said && state.of?.mouth === mouth.mouth && known.get(said.day)?.mouth !== mouth;
      if (isNew) setKnown((before) => new Map(before).set(said.day, { said, mouth }));
    }
  }, [study, other, mouth, known]);
  const all = days.map(find).filter((said) => said !== undefined);
  if (days.length < 2 || all.length < days.length) return null;
  return sayDays(
    all.map((said) => ({ ...said, day: seen(said.day) })),
    foodsById,
    'en',
    {},
  );
}

interface Known {
  readonly said: SaidDay;
  readonly mouth: MouthOfVisit;
}

function readSaid({ of, study: { bandTold, costs, minutesTold } }: StudyState): SaidDay | undefined {
  if (!of || !bandTold || !costs || minutesTold === undefined) return undefined;
  return { day: of.told, minutes: minutesTold, band: bandTold.minutesBelow.saliva, atRest: bandTold.atRest, costs };
}
