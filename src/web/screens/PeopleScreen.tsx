import { useQueryClient } from '@tanstack/react-query';
import { type KeyboardEvent, type RefObject, useRef, useState } from 'react';
import type { PersonLine } from '../../api/apiTypes.ts';
import { addPerson, isAskedBack, openVisit, usePeople } from '../data/queries.ts';
import { formatDate, plural } from '../format.ts';
import { Link } from '../parts/Link.tsx';
import { LoadState } from '../parts/LoadState.tsx';
import { useSingleKeys } from '../preferences.ts';
import { goTo } from '../routing.ts';
import { AddPerson } from './AddPerson.tsx';
import { findPeople } from './findPeople.ts';

export function PeopleScreen() {
  const people = usePeople();
  const client = useQueryClient();
  const [typed, setTyped] = useState('');
  const [isAdding, setAdding] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [isAsked, setAsked] = useState(false);
  const table = useRef<HTMLTableElement>(null);
  if (!people.data) return <LoadState query={people} what="the people" />;
  const found = findPeople(people.data, typed);
  const first = typed.trim() === '' ? undefined : found[0];

  const attempt = async (action: () => Promise<string>) => {
    setProblem(null);
    try {
      const visitId = await action();
      void client.invalidateQueries({ queryKey: ['people'] });
      goTo(`/visits/${visitId}`);
    } catch (error) {
      setAsked(isAskedBack(error));
      setProblem(error instanceof Error ? error.message : String(error));
    }
  };
  const open = (person: PersonLine) => void attempt(async () => person.openVisitId ?? (await openVisit(person.id)).visitId);
  const add = (birthDate: string, isAnotherPerson: boolean) =>
    void attempt(async () => {
      const { id } = await addPerson({ name: typed.trim(), birthDate, ...(isAnotherPerson && { isAnotherPerson }) });
      return (await openVisit(id)).visitId;
    });
  const onSearchKey = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown') focusRow(table.current, 0);
    else if (event.key !== 'Enter') return;
    else if (first) open(first);
    else if (typed.trim() !== '') setAdding(true);
    event.preventDefault();
  };

  return (
    <>
      <h1>People</h1>
      <div className="search">
        <label htmlFor="search">Name</label>
        <input
          id="search"
          type="search"
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: the first page is this one field; a keyboard starts here
          autoFocus
          value={typed}
          onChange={(event) => {
            setTyped(event.target.value);
            setAdding(false);
            setAsked(false);
          }}
          onKeyDown={onSearchKey}
          aria-describedby="search-hint"
        />
        <span id="search-hint" className="hint" role="status">
          {hintOf(typed, first, found.length)}
        </span>
      </div>
      {isAdding && <AddPerson name={typed.trim()} isAskedBack={isAsked} onAdd={add} />}
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      {!isAdding && typed.trim() !== '' && (
        <p>
          <button type="button" className="link" onClick={() => setAdding(true)}>
            Add {typed.trim()} as a new person
          </button>
        </p>
      )}
      <PeopleTable people={found} table={table} onOpen={open} />
    </>
  );
}

function hintOf(typed: string, first: PersonLine | undefined, count: number): string {
  if (typed.trim() === '') return `${plural(count, 'person', 'people')}; type a part of the name`;
  if (!first) return 'No one by this name. Enter adds a new person.';
  return first.openVisitId ? `Enter goes on with the visit of ${first.name}` : `Enter opens a visit of ${first.name}`;
}

interface PeopleTableProps {
  readonly people: readonly PersonLine[];
  readonly table: RefObject<HTMLTableElement | null>;
  readonly onOpen: (person: PersonLine) => void;
}

function PeopleTable({ people, table, onOpen }: PeopleTableProps) {
  const singleKeys = useSingleKeys();
  if (people.length === 0) return null;
  const onKeyDown = (event: KeyboardEvent) => {
    const person = event.target instanceof HTMLElement ? people[Number(event.target.closest('tr')?.dataset.row)] : undefined;
    if (event.key === 'i' && person && singleKeys) return goTo(`/people/${person.id}`);
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (by === 0 || !(event.target instanceof HTMLElement)) return;
    event.preventDefault();
    focusRow(table.current, Number(event.target.closest('tr')?.dataset.row) + by);
  };
  return (
    <table className="people" ref={table} onKeyDown={onKeyDown}>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Age</th>
          <th scope="col">Last visit</th>
          <th scope="col">Due, and why</th>
          <th scope="col">Waiting</th>
          <th scope="col">
            <span className="sr-only">Person, over time</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {people.map((person, row) => (
          <tr key={person.id} data-row={row}>
            <th scope="row">
              <button type="button" className="name-button" onClick={() => onOpen(person)}>
                <bdi>{person.name}</bdi>
              </button>
            </th>
            <td data-label="Age">{person.ageYears}</td>
            <td data-label="Last visit">
              {person.lastVisitOn ? `${formatDate(person.lastVisitOn)}${person.lastLevel ? `, ${person.lastLevel}` : ''}` : 'none'}
            </td>
            <td data-label="Due">{withDates(person.due)}</td>
            <td data-label="Waiting">
              {person.waiting > 0 && <span className="unknown waits">{plural(person.waiting, 'signature')}</span>}
            </td>
            <td>
              <Link to={`/people/${person.id}`} keys="i">
                person
              </Link>{' '}
              <Link to={`/over-time/${person.id}`}>over time</Link>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Above the first row stands the search field. */
function focusRow(table: HTMLTableElement | null, row: number): void {
  if (row < 0) document.getElementById('search')?.focus();
  else table?.querySelector<HTMLElement>(`tr[data-row="${row}"] button`)?.focus();
}

/** ISO dates inside a sentence as people write them. */
function withDates(text: string): string {
  return text.replace(/\d{4}-\d{2}-\d{2}/g, formatDate);
}
