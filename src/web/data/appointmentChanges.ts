import type { AppointmentChange, DayLine, DayView } from '../../api/day.ts';

type State = NonNullable<AppointmentChange['state']>;

/** What the server answers to a change. */
export interface AppointmentSaved {
  readonly id: string;
  readonly version: number;
  readonly state: State;
  readonly atTime: string | null;
}

/** `version` as the list had it when the key was pressed. */
export interface WantedChange extends AppointmentChange {
  readonly id: string;
}

interface Known extends AppointmentSaved {
  readonly reason: string | null;
}

/**
 * Sends changes of one appointment one after the other, each on top of the server's last answer: a key is quicker than the list is read
 * again, and no conflict with oneself. A version that somebody else made is still a conflict.
 * @returns undefined where that is how it stands already
 */
export function createAppointmentChanges(send: (id: string, change: AppointmentChange) => Promise<AppointmentSaved>) {
  const known = new Map<string, Known>();
  const running = new Map<string, Promise<unknown>>();

  const sendOnTop = async ({ id, version, ...change }: WantedChange): Promise<Known | undefined> => {
    const last = known.get(id);
    const newer = last && last.version > version ? last : undefined;
    if (newer && isSo(newer, change)) return undefined;
    const { state, atTime, ...saved } = await send(id, { version: newer?.version ?? version, ...change });
    // A change of the time alone is made to an appointment that stands, and so has no reason.
    const now = { id, version: saved.version, state, atTime, reason: change.reason ?? null };
    known.set(id, now);
    return now;
  };

  return (wanted: WantedChange): Promise<Known | undefined> => {
    const before = running.get(wanted.id) ?? Promise.resolve();
    const run = before.then(() => sendOnTop(wanted));
    running.set(
      wanted.id,
      run.catch(() => undefined),
    );
    return run;
  };
}

function isSo(known: Known, { state, reason, atTime }: Omit<AppointmentChange, 'version'>): boolean {
  const isState = state === undefined || (state === known.state && (reason ?? null) === known.reason);
  return isState && (atTime === undefined || atTime === known.atTime);
}

/** The day with this line as it was just saved, until it is read again. A visit is stronger than what was said of the appointment. */
export function withAppointment(day: DayView, { id, version, state, reason }: Omit<Known, 'atTime'>): DayView {
  const change = (line: DayLine): DayLine => {
    if (line.appointment?.id !== id) return line;
    const isSeen = line.state === 'open' || line.state === 'closed';
    const shown = state === 'planned' ? 'not-here' : state;
    return { ...line, appointment: { ...line.appointment, version, reason }, state: isSeen ? line.state : shown };
  };
  return { ...day, lines: day.lines.map(change) };
}
