import { useMemo } from 'react';
import { foodsById } from '../../../content/foods.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import type { StripSpan } from '../../../core/leaflet/types.ts';
import type { AcidDay, DayEvent } from '../../../core/plaque/day/types.ts';
import type { DayClock } from '../../../core/regimen/dayStrip/dayClock.ts';
import { hideAlcohol } from '../../../core/visit/hideAlcohol.ts';
import { mouthOfVisit } from '../../../core/visit/mouthOfVisit.ts';
import { planDay } from '../../../core/visit/planDay.ts';
import { plannedAtHome } from '../../../core/visit/plannedAtHome.ts';
import { dayForUses, rhythmOfVisit } from '../../../core/visit/rhythmOfVisit.ts';
import { content, questions } from '../../content.ts';
import type { DayQuestion } from '../acidDay/drawDay.ts';
import { nameEvent } from '../acidDay/sayEvent.ts';
import { useDrawnDay } from '../acidDay/useDrawnDay.ts';
import { useVisit } from './visitContext.ts';

/** The day of a plan as the page shows it. */
export interface ShownPlanDay {
  readonly clock: DayClock;
  readonly acid: readonly StripSpan[];
  /** The described day is not worked out yet: until then nobody knows what a use should follow. */
  readonly isWorking: boolean;
}

/** The page opened: from here on its pictures count from. */
const OPENED = 0;
const NO_ACID: readonly StripSpan[] = [];

/** What to use when; null where nothing is used at home. */
export function usePlanDay(): ShownPlanDay | null {
  const { input, assessment, isPrivateHidden } = useVisit();
  const { visit, practice } = input;
  const { acidDay, answers, onDate, agreed, pastRhythm } = visit;
  const day = dayForUses(visit);
  const flow = answers.resting_flow;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the answers only that of the flow counts
  const mouth = useMemo(() => mouthOfVisit({ acidDay, answers, onDate }, mouthPresets, questions), [acidDay, flow, onDate]);
  const items = agreed?.items;
  const planned = useMemo(
    () => plannedAtHome(assessment.plan.lines, practice.shelf, { items }),
    [assessment.plan.lines, practice.shelf, items],
  );
  const isAsked = day !== undefined && planned.length > 0;
  const question = useMemo<DayQuestion | null>(() => (isAsked ? { day, ...mouth, isLive: false } : null), [isAsked, day, mouth]);
  const { picture, problem } = useDrawnDay('plan', { question, since: OPENED });
  const acid = picture?.question.day === day ? picture?.drawn.stretches : undefined;
  const clock = useMemo(() => {
    const told = day && { named: withNames(isPrivateHidden ? hideAlcohol(day, { foods: foodsById }) : day), acid };
    const rhythm = rhythmOfVisit({ acidDay, agreed, pastRhythm, onDate }, assessment.ageYears, content.dayUses, told);
    const { jurisdiction, disagreements } = practice.settings;
    return planDay({ planned, place: jurisdiction, rhythm, disagreements }, content);
  }, [day, acidDay, acid, agreed, pastRhythm, onDate, isPrivateHidden, planned, assessment.ageYears, practice.settings]);
  if (planned.length === 0) return null;
  return { clock, acid: acid ?? NO_ACID, isWorking: day !== undefined && !acid && !problem };
}

/** Each event with the name that stands on the page of the day. */
const withNames = (day: AcidDay): AcidDay => ({
  ...day,
  events: day.events.map((event): DayEvent => ({ ...event, label: nameEvent(event) })),
});
