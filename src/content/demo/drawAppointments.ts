import type { Level } from '../../core/risk/types.ts';
import type { Chance } from './chance.ts';
import { addDays } from './days.ts';
import { ageAt } from './drawFindings.ts';
import type { DemoProfile } from './profile.ts';

/** Somebody expected on a day. One that was kept is followed by a visit of the same date. */
export interface DemoAppointment {
  readonly onDate: string;
  /** Local time, "09:40". */
  readonly atTime: string;
  readonly state: 'planned' | 'cancelled' | 'missed';
  readonly note?: string | undefined;
}

const LONGEST_PAST_DAYS = 720;
const MOST_VISITS = 8;
/** Days to the next appointment that is made, by level: the recall of the practice's list, shorter the higher. */
const RECALL_DAYS: Readonly<Record<Level, readonly [number, number]>> = {
  low: [180, 340],
  moderate: [130, 200],
  high: [92, 135],
  extreme: [84, 100],
};
/** Days until somebody who did not come is seen, or not seen, again. */
const AGAIN_DAYS = [9, 40] as const;
/** Of all appointments made, one published clinic saw 21.3 % missed and 13.7 % cancelled, with odds four times as high from 19 to 35 years. */
const SHARE_CANCELLED = 0.137;
const SHARE_MISSED = 0.155;
const SHARE_MISSED_YOUNG_ADULT = 0.43;

/**
 * Every appointment before today, oldest first, from the first that was kept: a person belongs to the practice from then on. The last
 * one before today may be one that was not kept.
 */
export function drawAppointments(
  profile: Pick<DemoProfile, 'birthDate' | 'risk'>,
  chance: Chance,
  today: string,
): readonly DemoAppointment[] {
  const earliest = [addDays(today, -LONGEST_PAST_DAYS), addDays(profile.birthDate, 330)].sort().at(-1) ?? today;
  const appointments: DemoAppointment[] = [
    { onDate: onWorkingDay(addDays(earliest, chance.whole(8, 420))), atTime: drawTime(chance), state: 'planned' },
  ];
  for (let kept = 1; kept < MOST_VISITS; ) {
    const last = appointments.at(-1);
    const [low, high] = last?.state === 'planned' ? RECALL_DAYS[profile.risk] : AGAIN_DAYS;
    const onDate = onWorkingDay(addDays(last?.onDate ?? today, chance.whole(low, high)));
    if (onDate >= today) break;
    const state = drawState(ageAt(profile, onDate), chance);
    appointments.push({ onDate, atTime: drawTime(chance), state, ...(state === 'cancelled' ? { note: chance.pick(CANCELLED_WHY) } : {}) });
    if (state === 'planned') kept += 1;
  }
  return appointments.filter(({ onDate }) => onDate < today);
}

const CANCELLED_WHY = ['ill', 'work', 'no one to bring them', 'travelling', 'will ring again'];

function drawState(ageYears: number, chance: Chance): DemoAppointment['state'] {
  if (chance.happens(SHARE_CANCELLED)) return 'cancelled';
  const missed = ageYears >= 19 && ageYears <= 35 ? SHARE_MISSED_YOUNG_ADULT : SHARE_MISSED;
  return chance.happens(missed / (1 - SHARE_CANCELLED)) ? 'missed' : 'planned';
}

function drawTime(chance: Chance): string {
  return `${String(chance.whole(8, 15)).padStart(2, '0')}:${chance.pick(['00', '20', '40'])}`;
}

const CLOSED_ON = ['12-25', '12-26', '01-01'];

/** The last day before, or the same, on which the practice is open. */
function onWorkingDay(date: string): string {
  const day = new Date(`${date}T00:00:00Z`).getUTCDay();
  return day === 0 || day === 6 || CLOSED_ON.includes(date.slice(5)) ? onWorkingDay(addDays(date, -1)) : date;
}
