import { useState } from 'react';
import { foodsById } from '../../../content/foods.ts';
import { readClockTime } from '../../../core/day/clockTime.ts';
import { findDayProblems } from '../../../core/plaque/day/findDayProblems.ts';
import type { AcidDay, DayEvent } from '../../../core/plaque/day/types.ts';
import { MOST_DESCRIBED_DAYS } from '../../../core/visit/describedDays.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { TextLine } from '../../parts/fields.tsx';
import { Link } from '../../parts/Link.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { AddToDay } from './AddToDay.tsx';
import { ChangeEvent } from './ChangeEvent.tsx';
import type { DayWork } from './dayWork.ts';
import { minuteOfTime } from './readEntry.ts';
import { nameEvent, sayPortion, sayWhen } from './sayEvent.ts';

/** The day as a list: added to, changed to the minute, taken out. While a change is tried, it is the changed day. */
export function TellDay({ work }: { readonly work: DayWork }) {
  const { shown, changed, isClosed, edit, bundle, seen } = work;
  if (!shown) return null;
  const named = seen(shown);
  return (
    <section aria-label="The day, one thing after the other">
      <h2>{changed ? 'The day with the change' : 'The day as told'}</h2>
      <Days work={work} />
      <ol className="day-events">
        {named.events.map((event) => (
          <li key={event.id}>
            {isClosed || !shown.events.includes(event) ? (
              <EventLine event={event} />
            ) : (
              <OpenForm
                label="Change"
                about={`${nameEvent(event)} at ${sayMinute(event.startMinute)}`}
                form={(close) => <ChangeEvent day={shown} event={event} onChange={edit} onClose={() => close()} />}
              >
                <EventLine event={event} />{' '}
              </OpenForm>
            )}
          </li>
        ))}
      </ol>
      {!isClosed && <AddToDay day={shown} onAdd={edit} seen={seen} />}
      <Sleep day={shown} isFixed={isClosed || changed !== undefined} onChange={edit} />
      {!isClosed && (
        <p className="small">
          <Link to={`/visits/${bundle.visitId}/diary`}>A paper diary to take home</Link>, in the language of the visit.
        </p>
      )}
    </section>
  );
}

function EventLine({ event }: { readonly event: DayEvent }) {
  const what = event.kind === 'eating' ? event.portions.map(sayPortion).join('; ') : '';
  const name = nameEvent(event);
  const notes = [event.kind === 'eating' && event.sipped && 'sipped', event.keep && 'will not change'].filter(Boolean).join(', ');
  return (
    <span>
      <strong>{sayMinute(event.startMinute)}</strong> {name}
      {event.label && what ? `: ${what}` : ''}
      <span className="side-note">
        {' '}
        {sayWhen(event).split(', ').slice(1).join(', ')}
        {notes && `, ${notes}`}
      </span>
    </span>
  );
}

/** Several days of a diary. */
function Days({ work }: { readonly work: DayWork }) {
  const { told, at, goToDay, isClosed, changed, save } = work;
  if (!told) return null;
  const add = () => {
    const { wakeMinute, sleepMinute } = told.days[at] ?? { wakeMinute: 420, sleepMinute: 1380 };
    save({ ...told, days: [...told.days, { wakeMinute, sleepMinute, events: [] }] });
    goToDay(told.days.length);
  };
  const remove = () => {
    const { onLeaflet, ...rest } = told;
    const days = told.days.filter((_, i) => i !== at);
    save({ ...rest, days, ...(onLeaflet !== undefined && onLeaflet < days.length && onLeaflet < at && { onLeaflet }) });
    goToDay(Math.max(0, at - 1));
  };
  const mayAdd = !isClosed && told.changed === undefined && told.days.length < MOST_DESCRIBED_DAYS;
  if (told.days.length === 1 && !mayAdd) return null;
  return (
    <p className="actions">
      {told.days.length > 1 &&
        told.days.map((day, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: a day is its place in the diary
            key={i}
            type="button"
            className={i === at ? 'answer chosen' : 'answer'}
            aria-pressed={i === at}
            onClick={() => goToDay(i)}
          >
            {day.label ?? `Day ${i + 1}`}
          </button>
        ))}
      {mayAdd && (
        <button type="button" className="link" onClick={add}>
          Another day
        </button>
      )}
      {!isClosed && !changed && told.changed === undefined && told.days.length > 1 && (
        <button type="button" className="link" onClick={remove}>
          Take this day out
        </button>
      )}
    </p>
  );
}

interface SleepProps {
  readonly day: AcidDay;
  readonly isFixed: boolean;
  readonly onChange: (day: AcidDay) => void;
}

function Sleep({ day, isFixed, onChange }: SleepProps) {
  const said = `Awake from ${sayMinute(day.wakeMinute)} to ${sayMinute(day.sleepMinute)}.`;
  if (isFixed) return <p className="small">{said}</p>;
  return (
    <OpenForm
      label="Change"
      about="when the person sleeps"
      form={(close) => <SleepForm day={day} onChange={onChange} onClose={() => close()} />}
    >
      {said}{' '}
    </OpenForm>
  );
}

function SleepForm({ day, onChange, onClose }: Omit<SleepProps, 'isFixed'> & { readonly onClose: () => void }) {
  const [wake, setWake] = useState(sayMinute(day.wakeMinute));
  const [sleep, setSleep] = useState(sayMinute(day.sleepMinute));
  const [problem, setProblem] = useState<string>();
  const save = () => {
    const [from, to] = [readClockTime(wake), readClockTime(sleep)];
    if (!from || !to) return setProblem('Times like 06:40 and 23:00 are needed.');
    const next = { ...day, wakeMinute: minuteOfTime(from), sleepMinute: minuteOfTime(to) };
    const [first] = findDayProblems(next, foodsById);
    if (first) return setProblem(`${first.path}: ${first.message}`);
    onChange(next);
    onClose();
  };
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      <TextLine label="Wakes at" value={wake} onChange={setWake} />
      <TextLine label="Goes to sleep at" value={sleep} onChange={setSleep} problem={problem} />
      <p className="actions">
        <button type="submit" className="action primary">
          Save
        </button>
        <button type="button" className="action" onClick={onClose}>
          Leave it
        </button>
      </p>
    </form>
  );
}
