import { addMonths, formatISO, parseISO } from 'date-fns';
import { isTurnedDown, type TurnedDown } from '../core/visit/turnedDown.ts';
import type { VisitAssessment, VisitInput } from '../core/visit/types.ts';
import type { Course } from '../store/read/courses.ts';
import type { VisitSaid } from '../store/storedJson.ts';
import type { ClosingCourse, UsedCourse } from './closingCourses.ts';
import type { ClosingTask } from './closingTasks.ts';

type VisitPart = VisitInput['visit'];

/**
 * An item runs from the visit on unless it was turned down; one that waits runs from its signature, which is dated itself. What was
 * turned down and replaced stands on the record too, though the plan no longer holds it.
 */
export function listClosingCourses({ plan }: VisitAssessment, { agreed, onDate }: VisitPart): ClosingCourse[] {
  const planned = plan.lines.map(({ shelfItemId, state }): ClosingCourse => {
    const said = agreed?.items?.[shelfItemId];
    if (isTurnedDown(said)) return turnedDown(shelfItemId, said, agreed);
    const isWaiting = state === 'waiting-for-signature';
    return {
      shelfItemId,
      state: said ?? 'offered',
      release: isWaiting ? 'waiting' : 'not-needed',
      ...(isWaiting ? {} : { fromDate: onDate }),
    };
  });
  const replaced = Object.entries(agreed?.items ?? {}).flatMap(([id, said]) => {
    const isPlanned = plan.lines.some((line) => line.shelfItemId === id);
    return !isPlanned && isTurnedDown(said) ? [turnedDown(id, said, agreed)] : [];
  });
  return [...planned, ...replaced];
}

function turnedDown(shelfItemId: string, state: TurnedDown, agreed: VisitPart['agreed']): ClosingCourse {
  return { shelfItemId, state, release: 'not-needed', reason: agreed?.declinedWhy?.[shelfItemId] };
}

export function saidOf({ language, agreed, stopUsing, nextOn, speaker, released, goals, goalsSince, used, acidDay }: VisitPart): VisitSaid {
  return { language, agreed, stopUsing, nextOn, speaker, released, goals, goalsSince, used, acidDay };
}

/** What became of earlier courses: as the person told it, turned down today, told to stop, or gone on as an item of today's plan. */
export function listUsed(past: readonly Course[], { plan }: VisitAssessment, visit: VisitPart): UsedCourse[] {
  const { used, agreed, stopUsing, onDate } = visit;
  return past
    .filter(({ toDate, state }) => toDate === null && state === 'agreed')
    .flatMap(({ id, shelfItemId }): UsedCourse[] => {
      const said = used?.[shelfItemId];
      const word = agreed?.items?.[shelfItemId];
      const name = visit.pastCare?.find((care) => care.shelfItemId === shelfItemId)?.name;
      const isToStop = stopUsing?.some((text) => text === shelfItemId || text.toLowerCase() === name?.toLowerCase()) === true;
      // What waits for a signature today does not end what was released before.
      const goesOn = plan.lines.some((line) => line.shelfItemId === shelfItemId && line.state !== 'waiting-for-signature');
      const isOver = said?.adherence === 'stopped' || said?.adherence === 'not-begun';
      const ends = isOver || isToStop || isTurnedDown(word) || goesOn;
      if (!said && !ends) return [];
      const stopReason = said?.why || (isTurnedDown(word) ? agreed?.declinedWhy?.[shelfItemId] : undefined);
      return [{ courseId: id, adherence: said?.adherence, stopReason, ...(ends ? { toDate: onDate } : {}) }];
    });
}

/** The next visit: the date agreed, else the shorter end of the recall interval. New goals stay open until then. */
export function listTasks({ plan }: VisitAssessment, visit: VisitPart): ClosingTask[] {
  const due = nextDate(plan, visit);
  const isOpenAlready = (text: string) =>
    visit.pastGoals?.some((goal) => goal.text === text && !['reached', 'dropped'].includes(visit.goalsSince?.[goal.id] ?? '')) === true;
  const goals = [...new Set(visit.goals ?? [])].filter((text) => !isOpenAlready(text));
  return [
    ...(due === null ? [] : [{ kind: 'recall' as const, due }]),
    ...goals.map((note) => ({ kind: 'goal' as const, due: due ?? visit.onDate, note })),
  ];
}

export function nextDate({ recall }: VisitAssessment['plan'], visit: Pick<VisitPart, 'nextOn' | 'onDate'>): string | null {
  const suggested = recall && formatISO(addMonths(parseISO(visit.onDate), recall.fromMonths), { representation: 'date' });
  return visit.nextOn ?? suggested;
}
