import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { DayLine, DayView, FoundPerson } from '../../../api/day.ts';
import { withAppointment } from '../../data/appointmentChanges.ts';
import { addAppointment, changeAppointment, useDay } from '../../data/dayQueries.ts';
import { addPerson, openVisit } from '../../data/queries.ts';
import { formatDate, formatDay } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { goTo } from '../../routing.ts';
import { BeforeFirstVisit } from '../practice/BeforeFirstVisit.tsx';
import { AddToDay } from './AddToDay.tsx';
import { DayList, focusRow, type Moved } from './DayList.tsx';
import type { RowActions } from './DayRow.tsx';
import type { DayEntry } from './readEntry.ts';
import { SigningQueue } from './SigningQueue.tsx';
import { dayAfter, dayPath, nameOfDay, sayWholeDay } from './sayDay.ts';
import { useDayKeys } from './useDayKeys.ts';

/** The people of one day. `onDate` null = today. */
export function TodayScreen({ onDate }: { readonly onDate: string | null }) {
  const day = useDay(onDate ?? 'today');
  if (!day.data) return <LoadState query={day} what="the day" />;
  return <Day day={day.data} />;
}

function Day({ day }: { readonly day: DayView }) {
  const { onDate, today, lines } = day;
  const isToday = onDate === today;
  const list = useRef<HTMLOListElement>(null);
  const { said, problem, moved, actions, put, putNew, sayProblem } = useDayActions(day);
  useDayKeys(day, list);
  const name = nameOfDay(onDate, today);
  return (
    <>
      <h1>
        {name && `${name}, `}
        {formatDay(onDate)}
      </h1>
      <p className="opening">{sayWholeDay(day)}</p>
      <DayLinks onDate={onDate} today={today} />
      {isToday && <BeforeFirstVisit isAnyoneSeen={day.isAnyoneSeen} />}
      {isToday && <SigningQueue />}
      <AddToDay
        key={onDate}
        isToday={isToday}
        expected={new Set(lines.map(({ patientId }) => patientId))}
        onPerson={put}
        onNewPerson={putNew}
        onProblem={sayProblem}
        onDown={() => focusRow(list.current, 0)}
      />
      <p role="status" className="hint day-said">
        {said}
      </p>
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <DayList lines={lines} list={list} mayOpen={isToday} moved={moved} actions={actions} />
      <OpenElsewhere day={day} />
    </>
  );
}

/** What the keys and the field do. A refusal stays on the page in the server's own words, and what was typed with it. */
function useDayActions({ onDate, today }: DayView) {
  const client = useQueryClient();
  const [said, setSaid] = useState('');
  const [moved, setMoved] = useState<Moved | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const reread = () => client.invalidateQueries({ queryKey: ['day'] });
  const sayProblem = (error: unknown) => setProblem(error instanceof Error ? error.message : String(error));
  /** Throws again, so that a field keeps what was typed. */
  const attempt = async (action: () => Promise<string>) => {
    setProblem(null);
    try {
      setSaid(await action());
    } catch (error) {
      setSaid('');
      sayProblem(error);
      await reread();
      throw error;
    }
  };
  const quietly = (action: () => Promise<string>) => void attempt(action).catch(() => undefined);
  const goToVisit = async (patientId: string, visitId: string | null, page = '') => {
    const id = visitId ?? (await openVisit(patientId)).visitId;
    void client.invalidateQueries({ queryKey: ['people'] });
    void reread();
    goTo(`/visits/${id}${page}`);
    return '';
  };
  const putDown = async (patientId: string, name: string, { atTime }: DayEntry) => {
    await addAppointment(onDate, { patientId, atTime });
    await reread();
    return `${name} is on the list${atTime ? ` at ${atTime}` : ''}.`;
  };
  const isWalkIn = ({ atTime }: DayEntry) => onDate === today && atTime === undefined;
  const put = (person: FoundPerson, entry: DayEntry) =>
    attempt(() => (isWalkIn(entry) ? goToVisit(person.id, null) : putDown(person.id, person.name, entry)));
  const putNew = (birthDate: string, entry: DayEntry, isAnotherPerson: boolean) =>
    attempt(async () => {
      const { id } = await addPerson({ name: entry.who, birthDate, ...(isAnotherPerson && { isAnotherPerson }) });
      return isWalkIn(entry) ? goToVisit(id, null) : putDown(id, entry.who, entry);
    });
  const change = (line: DayLine, state: 'planned' | 'cancelled' | 'missed', reason?: string) =>
    quietly(async () => {
      if (!line.appointment) return '';
      const { id, version } = line.appointment;
      setMoved(null);
      const saved = await changeAppointment({ id, version, state, reason });
      // What is being read now may be older than this.
      await client.cancelQueries({ queryKey: ['day'] });
      if (saved) client.setQueriesData<DayView>({ queryKey: ['day'] }, (before) => before && withAppointment(before, saved));
      void reread();
      return state === 'planned' ? `${line.name} is expected again.` : `${line.name}: ${state}. The key u takes it back.`;
    });
  const changeTime = (line: DayLine, atTime: string | null, isUndo: boolean) =>
    quietly(async () => {
      if (!line.appointment) return '';
      const { id, version } = line.appointment;
      await changeAppointment({ id, version, atTime });
      setMoved(isUndo ? null : { appointmentId: id, atTime: line.atTime });
      await reread();
      const when = atTime === null ? 'some time this day' : `at ${atTime}`;
      return isUndo
        ? `${line.name}: ${when} again.`
        : `${line.name}: ${when}, was ${line.atTime ?? 'without a time'}. The key u takes it back.`;
    });
  const actions: RowActions = {
    open: (line) => quietly(() => goToVisit(line.patientId, line.visitId)),
    openSwab: (line) => quietly(() => goToVisit(line.patientId, line.visitId, '/swab')),
    put: (line, state, reason) => change(line, state, reason),
    putAt: (line, atTime) => changeTime(line, atTime, false),
    putBack: (line) => (line.state === 'not-here' && moved ? changeTime(line, moved.atTime, true) : change(line, 'planned')),
  };
  return { said, problem, moved, actions, put, putNew, sayProblem };
}

function DayLinks({ onDate, today }: Pick<DayView, 'onDate' | 'today'>) {
  const tomorrow = dayAfter(today, 1);
  return (
    <nav aria-label="Days" className="day-links">
      <Link to={dayPath(dayAfter(onDate, -1), today)}>
        <Key>←</Key> day before
      </Link>
      <Link to={dayPath(dayAfter(onDate, 1), today)}>
        <Key>→</Key> day after
      </Link>
      {onDate === today ? (
        <Link to={dayPath(tomorrow, today)}>Tomorrow sheet</Link>
      ) : (
        <Link to="/">
          <Key>t</Key> today
        </Link>
      )}
      <Link to={`/day/${onDate}/fill`}>
        <Key>f</Key> fill from a list
      </Link>
      <Link to={`/day/${onDate}/sheets`}>
        <Key>w</Key> sheets for the waiting room
      </Link>
      <Link to="/people">
        <Key>p</Key> all people
      </Link>
      <button type="button" className="link" onClick={() => print()}>
        Print
      </button>
    </nav>
  );
}

/** Nobody is forgotten over night. */
function OpenElsewhere({ day }: { readonly day: DayView }) {
  if (day.openElsewhere.length === 0) return null;
  return (
    <section aria-label="Still open" className="open-elsewhere">
      <h2>Visits still open from other days</h2>
      <ul>
        {day.openElsewhere.map(({ visitId, name, onDate }) => (
          <li key={visitId}>
            <Link to={`/visits/${visitId}`}>
              <bdi>{name}</bdi>
            </Link>
            , open since {formatDate(onDate)}
          </li>
        ))}
      </ul>
    </section>
  );
}
