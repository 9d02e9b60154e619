import { type KeyboardEvent, useState } from 'react';
import type { DayLine } from '../../../api/day.ts';
import { formatDate } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { Link } from '../../parts/Link.tsx';
import { AskTime } from './AskTime.tsx';
import { sayLevel, sayReady, sayState, withDates } from './sayDay.ts';

export interface RowActions {
  readonly open: (line: DayLine) => void;
  readonly openSwab: (line: DayLine) => void;
  readonly put: (line: DayLine, state: 'cancelled' | 'missed', reason: string) => void;
  readonly putAt: (line: DayLine, atTime: string | null) => void;
  /** Expected again, or at the time it had before. */
  readonly putBack: (line: DayLine) => void;
}

export type Asking = 'cancelled' | 'missed' | 'time';

interface DayRowProps {
  readonly line: DayLine;
  readonly row: number;
  readonly mayOpen: boolean;
  /** The time before it was changed here; undefined = it was not. */
  readonly timeBefore: string | null | undefined;
  /** What is being asked for, if anything is. */
  readonly asking: Asking | null;
  readonly ask: (what: Asking | null) => void;
  readonly actions: RowActions;
}

export function DayRow({ line, row, mayOpen, timeBefore, asking, ask, actions }: DayRowProps) {
  const isOff = line.state === 'cancelled' || line.state === 'missed';
  return (
    <li className={`day-line ${line.state}`} data-row={row}>
      <p className="day-time">{line.atTime ?? <span className="aside">no time</span>}</p>
      <div className="day-who">
        <p className="day-name">
          <button type="button" className="name-button" onClick={() => actions.open(line)} disabled={!mayOpen && line.visitId === null}>
            <bdi>{line.name}</bdi>
          </button>{' '}
          <span className={line.state === 'not-here' ? 'side-note' : 'day-state'}>{sayState(line)}</span>
        </p>
        <p className="side-note">
          {line.ageYears} years, born {formatDate(line.birthDate)}
          {line.chartNumber && (
            <>
              , chart <bdi>{line.chartNumber}</bdi>
            </>
          )}
        </p>
        <p className="side-note">{sayLevel(line)}</p>
        {line.appointment?.note && <p className="side-note">{line.appointment.note}</p>}
      </div>
      <ul className="day-due" aria-label={`Due, ${line.name}`}>
        {line.due.map(({ kind, says }) => (
          <li key={`${kind} ${says}`} className={says.includes('not known') ? 'unknown' : undefined}>
            {withDates(says)}
          </li>
        ))}
      </ul>
      <ul className="day-ready" aria-label={`To have ready, ${line.name}`}>
        {!isOff &&
          sayReady(line).map(({ says, isUnknown }) => (
            <li key={says} className={isUnknown ? 'unknown' : undefined}>
              {says}
            </li>
          ))}
      </ul>
      {asking === 'time' && (
        <AskTime name={line.name} atTime={line.atTime} onSay={(atTime) => actions.putAt(line, atTime)} onLeave={() => ask(null)} />
      )}
      {(asking === 'cancelled' || asking === 'missed') && (
        <AskReason state={asking} name={line.name} onSay={(reason) => actions.put(line, asking, reason)} onLeave={() => ask(null)} />
      )}
      {asking === null && <RowButtons line={line} mayOpen={mayOpen} timeBefore={timeBefore} ask={ask} actions={actions} />}
    </li>
  );
}

export const maySwab = ({ state }: DayLine, mayOpen: boolean): boolean => state === 'open' || (mayOpen && state === 'not-here');

/** Whoever is expected and not here yet can be put off, taken off or missed. */
export const mayChange = ({ appointment, state }: DayLine): boolean => appointment !== null && state === 'not-here';

type ButtonsProps = Pick<DayRowProps, 'line' | 'mayOpen' | 'timeBefore' | 'ask' | 'actions'>;

function RowButtons({ line, mayOpen, timeBefore, ask, actions }: ButtonsProps) {
  const isOff = line.state === 'cancelled' || line.state === 'missed';
  const about = <span className="sr-only"> {line.name}</span>;
  return (
    <div className="day-actions">
      {maySwab(line, mayOpen) && (
        <button type="button" className="quiet" onClick={() => actions.openSwab(line)} aria-keyshortcuts="s">
          <Key>s</Key> swab{about}
        </button>
      )}
      {mayChange(line) && (
        <>
          <button type="button" className="quiet" onClick={() => ask('time')} aria-keyshortcuts="n">
            <Key>n</Key> new time{about}
          </button>
          <button type="button" className="quiet" onClick={() => ask('cancelled')} aria-keyshortcuts="c">
            <Key>c</Key> cancelled{about}
          </button>
          <button type="button" className="quiet" onClick={() => ask('missed')} aria-keyshortcuts="m">
            <Key>m</Key> missed{about}
          </button>
        </>
      )}
      {isOff && (
        <button type="button" className="quiet" onClick={() => actions.putBack(line)} aria-keyshortcuts="u">
          <Key>u</Key> expected again{about}
        </button>
      )}
      {mayChange(line) && timeBefore !== undefined && (
        <button type="button" className="quiet" onClick={() => actions.putBack(line)} aria-keyshortcuts="u">
          <Key>u</Key> back to {timeBefore ?? 'no time'}
          {about}
        </button>
      )}
      <Link to={`/people/${line.patientId}`} className="quiet" keys="i">
        <Key>i</Key> person{about}
      </Link>
      <Link to={`/over-time/${line.patientId}`} className="quiet">
        over time{about}
      </Link>
    </div>
  );
}

const REASONS = {
  cancelled: ['ill', 'no time', 'wants another day', 'the practice cancelled'],
  missed: ['did not come', 'came too late', 'went away again'],
} as const;
const NO_REASON = 'no reason given';

interface AskReasonProps {
  readonly state: 'cancelled' | 'missed';
  readonly name: string;
  readonly onSay: (reason: string) => void;
  readonly onLeave: () => void;
}

/** A digit or words; Enter alone says that no reason was given. */
function AskReason({ state, name, onSay, onLeave }: AskReasonProps) {
  const [typed, setTyped] = useState('');
  const reasons = REASONS[state];
  const onKeyDown = (event: KeyboardEvent) => {
    const reason = typed === '' ? reasons[Number(event.key) - 1] : undefined;
    if (reason) onSay(reason);
    else if (event.key === 'Enter') onSay(typed.trim() || NO_REASON);
    else if (event.key === 'Escape') onLeave();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div className="day-reason">
      <label htmlFor="day-reason">
        Why {state}? <span className="sr-only">{name}</span>
      </label>
      <input
        id="day-reason"
        className="text"
        autoComplete="off"
        maxLength={500}
        // biome-ignore lint/a11y/noAutofocus: it appears on a key and is the only thing left to type
        autoFocus
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={onKeyDown}
      />
      {reasons.map((reason, index) => (
        <button key={reason} type="button" className="quiet" onClick={() => onSay(reason)}>
          <Key>{index + 1}</Key> {reason}
        </button>
      ))}
      <button type="button" className="quiet" onClick={() => onSay(typed.trim() || NO_REASON)}>
        <Key>Enter</Key> {typed.trim() === '' ? NO_REASON : 'these words'}
      </button>
    </div>
  );
}
