import { useState } from 'react';
import type { PersonLine } from '../../../api/apiTypes.ts';
import { usePeople } from '../../data/queries.ts';
import { formatDate } from '../../format.ts';
import { TextLine } from '../../parts/fields.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { findPeople } from '../findPeople.ts';

const MOST_FOUND = 8;

interface ChartSearchProps {
  /** What the form is for, in words for a screen reader. */
  readonly title: string;
  readonly label: string;
  /** A chart that is never offered. */
  readonly except?: string | undefined;
  readonly problem?: string | null | undefined;
  readonly leaveWords: string;
  readonly onChoose: (person: PersonLine) => void;
  readonly onLeave: () => void;
}

/** One chart of the practice, by a part of the name or its number. */
export function ChartSearch({ title, label, except, problem, leaveWords, onChoose, onLeave }: ChartSearchProps) {
  const people = usePeople();
  const [typed, setTyped] = useState('');
  const found = typed.trim() === '' ? [] : findPeople(people.data ?? [], typed).filter(({ id }) => id !== except);
  return (
    <form noValidate aria-label={title} onSubmit={(event) => event.preventDefault()}>
      <TextLine label={label} value={typed} hint="A part of the name, or the chart number. Then choose." onChange={setTyped} />
      {/* The field is there from the first moment, so that the keyboard finds it. */}
      {!people.data && <LoadState query={people} what="the people" />}
      <ul className="plain-list" aria-label="Charts found">
        {found.slice(0, MOST_FOUND).map((person) => (
          <li key={person.id}>
            <button type="button" className="link" onClick={() => onChoose(person)}>
              <bdi>{person.name}</bdi>, born {formatDate(person.birthDate)}
            </button>
          </li>
        ))}
      </ul>
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <div className="actions">
        <button type="button" className="action" onClick={onLeave}>
          {leaveWords}
        </button>
      </div>
    </form>
  );
}
