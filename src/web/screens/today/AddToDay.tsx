import { type KeyboardEvent, useId, useRef, useState } from 'react';
import type { FoundPerson } from '../../../api/day.ts';
import { findPeopleOnFile, useFoundPeople } from '../../data/dayQueries.ts';
import { isAskedBack } from '../../data/queries.ts';
import { formatDate } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { AddPerson } from '../AddPerson.tsx';
import { type DayEntry, readEntry } from './readEntry.ts';

interface AddToDayProps {
  /** A name without a time opens a visit at once. */
  readonly isToday: boolean;
  /** Whom the day expects, so that they are found before others of the same name. */
  readonly expected: ReadonlySet<string>;
  readonly onPerson: (person: FoundPerson, entry: DayEntry) => Promise<void>;
  readonly onNewPerson: (birthDate: string, entry: DayEntry, isAnotherPerson: boolean) => Promise<void>;
  readonly onProblem: (error: unknown) => void;
  readonly onDown: () => void;
}

/** One field: a time and a name put somebody down, a name alone is a walk-in. */
export function AddToDay({ isToday, expected, onPerson, onNewPerson, onProblem, onDown }: AddToDayProps) {
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState(0);
  const [isNew, setNew] = useState(false);
  const [isAsked, setAsked] = useState(false);
  /** Keys that come while the server still looks whether somebody is on file: they are meant for the birthday. */
  const early = useRef<string[] | null>(null);
  const listId = useId();
  const entry = readEntry(typed);
  const found = useFoundPeople(entry.who);
  const people = entry.who === '' ? [] : expectedFirst(found.data ?? [], expected);
  const isWalkIn = isToday && entry.atTime === undefined;

  const clear = () => {
    setTyped('');
    setChosen(0);
    setNew(false);
    setAsked(false);
    early.current = null;
  };
  const take = async () => {
    // What the list shows may belong to fewer letters than were typed.
    const isCurrent = found.data !== undefined && !found.isPlaceholderData;
    early.current = [];
    try {
      const current = isCurrent ? people : expectedFirst(await findPeopleOnFile(entry.who), expected);
      const person = current[chosen];
      if (!person) return setNew(true);
      await onPerson(person, entry);
      clear();
    } catch (error) {
      early.current = null;
      onProblem(error);
    }
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    if (early.current && !isNew) early.current.push(event.key);
    else if (event.key === 'ArrowDown' && entry.who === '') onDown();
    else if (event.key === 'ArrowDown') setChosen(Math.min(chosen + 1, people.length));
    else if (event.key === 'ArrowUp' && entry.who !== '') setChosen(Math.max(chosen - 1, 0));
    else if (event.key === 'Enter' && entry.who !== '') event.shiftKey ? setNew(true) : void take();
    else return;
    event.preventDefault();
  };

  return (
    <div className="add-to-day">
      <div className="search">
        <label htmlFor="day-entry">Name, or time and name</label>
        <input
          id="day-entry"
          role="combobox"
          aria-expanded={people.length > 0}
          aria-controls={listId}
          aria-autocomplete="list"
          aria-activedescendant={people.length > 0 ? `${listId}-${chosen}` : undefined}
          aria-describedby="day-entry-hint"
          autoComplete="off"
          maxLength={200}
          dir="auto"
          // biome-ignore lint/a11y/noAutofocus: the first page begins with this one field; a keyboard starts here
          autoFocus
          value={typed}
          onChange={(event) => {
            setTyped(event.target.value);
            setChosen(0);
            setNew(false);
            setAsked(false);
            early.current = null;
          }}
          onKeyDown={onKeyDown}
        />
        <span id="day-entry-hint" className="hint" role="status">
          {hintOf({ entry, person: people[chosen], isWalkIn, isReading: found.isFetching })}
        </span>
      </div>
      {!isNew && (
        <Choices
          id={listId}
          people={people}
          entry={entry}
          chosen={chosen}
          onChoose={(person) => (person ? void onPerson(person, entry).then(clear, () => undefined) : setNew(true))}
        />
      )}
      {isNew && (
        <AddPerson
          name={entry.who}
          early={early.current ?? []}
          says={isWalkIn ? 'Add and open the visit' : 'Add and put down'}
          isAskedBack={isAsked}
          onAdd={(birthDate, isAnotherPerson) =>
            void onNewPerson(birthDate, entry, isAnotherPerson).then(clear, (error: unknown) => setAsked(isAskedBack(error)))
          }
        />
      )}
    </div>
  );
}

interface ChoicesProps {
  readonly id: string;
  readonly people: readonly FoundPerson[];
  readonly entry: DayEntry;
  readonly chosen: number;
  readonly onChoose: (person: FoundPerson | null) => void;
}

function Choices({ id, people, entry, chosen, onChoose }: ChoicesProps) {
  if (entry.who === '') return <div id={id} hidden />;
  return (
    <div id={id} role="listbox" aria-label="People on file" className="choices">
      {people.map((person, index) => (
        <Choice key={person.id} id={`${id}-${index}`} isChosen={index === chosen} onChoose={() => onChoose(person)}>
          <bdi>{person.name}</bdi>{' '}
          <span className="aside">
            born {formatDate(person.birthDate)}
            {person.chartNumber && (
              <>
                , chart <bdi>{person.chartNumber}</bdi>
              </>
            )}
          </span>
        </Choice>
      ))}
      <Choice id={`${id}-${people.length}`} isChosen={chosen >= people.length} onChoose={() => onChoose(null)}>
        <span className="aside">a new person:</span> <bdi>{entry.who}</bdi> {people.length > 0 && <Key>Shift Enter</Key>}
      </Choice>
    </div>
  );
}

interface ChoiceProps {
  readonly id: string;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
  readonly children: React.ReactNode;
}

/** The focus stays in the field; the field's own keys choose. */
function Choice({ id, isChosen, onChoose, children }: ChoiceProps) {
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the combobox's
    <div id={id} role="option" tabIndex={-1} aria-selected={isChosen} className="choice-of-list" onClick={onChoose}>
      {children}
    </div>
  );
}

function expectedFirst(people: readonly FoundPerson[], expected: ReadonlySet<string>): readonly FoundPerson[] {
  return [...people.filter(({ id }) => expected.has(id)), ...people.filter(({ id }) => !expected.has(id))];
}

interface HintInput {
  readonly entry: DayEntry;
  readonly person: FoundPerson | undefined;
  readonly isWalkIn: boolean;
  readonly isReading: boolean;
}

function hintOf({ entry, person, isWalkIn, isReading }: HintInput): string {
  if (entry.who === '') return '“9:40 Odile” puts somebody down; a name or a chart number alone is a walk-in';
  const at = entry.atTime === undefined ? 'without a time' : `at ${entry.atTime}`;
  if (!person) return isReading ? 'looking' : `No one on file. Enter adds a new person${isWalkIn ? '' : `, put down ${at}`}.`;
  return isWalkIn ? `Enter opens the visit of ${person.name}` : `Enter puts ${person.name} down ${at}`;
}
