import { parseTakenAt, sayDate } from '../reading/parseTakenAt.ts';
import { addDays } from '../visit/calendar.ts';
import type { Control, ControlEvery } from './control.ts';

export interface DueControl {
  /** Local date; today or earlier = it is due. */
  readonly dueOn: string;
  readonly isDue: boolean;
  readonly says: string;
}

const WEEK_DAYS = 7;

/** Days from one control to the next. */
export const daysBetweenControls = (every: ControlEvery): number =>
  every.kind === 'daily' ? 1 : every.kind === 'own' ? every.days : WEEK_DAYS;

/**
 * When the next control of one meter with the lot in use is due. A lot without one is due at once, by every plan.
 * @param controls  of the meter, any lot and order; void ones count for nothing
 * @param today     ISO local date
 */
export function findDueControl(
  every: ControlEvery,
  controls: readonly Control[],
  { lotId, today, timeZone }: { readonly lotId: string; readonly today: string; readonly timeZone?: string | undefined },
): DueControl {
  const days = controls.flatMap((control) => {
    const taken = control.state === 'valid' && control.lotId === lotId ? parseTakenAt(control.takenAt, timeZone) : undefined;
    return taken ? [taken.localDate] : [];
  });
  const last = days.sort().at(-1);
  if (last === undefined) return { dueOn: today, isDue: true, says: 'Due today: there is no control with this lot yet.' };
  const dueOn = addDays(last, daysBetweenControls(every));
  if (dueOn > today)
    return { dueOn, isDue: false, says: `The last control was on ${sayDate(last)}; the next is due on ${sayDate(dueOn)}.` };
  return {
    dueOn,
    isDue: true,
    says: `Due ${dueOn === today ? 'today' : `since ${sayDate(dueOn)}`}: the last control was on ${sayDate(last)}.`,
  };
}
