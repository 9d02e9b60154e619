import { useEffect, useRef, useState } from 'react';
import { Key } from '../parts/Key.tsx';
import { parseBirthday } from './findPeople.ts';

interface AddPersonProps {
  readonly name: string;
  readonly says?: string;
  /** Keys that were pressed before this field was there. */
  readonly early?: readonly string[];
  /** The server asked whether it is somebody on record: the same key once more says that it is not. */
  readonly isAskedBack?: boolean;
  readonly onAdd: (birthDate: string, isAnotherPerson: boolean) => void;
}

/** What is asked of somebody who is not on file: the birthday, nothing more. */
export function AddPerson({ name, says = 'Add and open the visit', early = [], isAskedBack = false, onAdd }: AddPersonProps) {
  const [typed, setTyped] = useState(() => early.filter((key) => key.length === 1).join(''));
  const [problem, setProblem] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const isSentEarly = useRef(early.includes('Enter'));
  useEffect(() => {
    if (isSentEarly.current) form.current?.requestSubmit();
    isSentEarly.current = false;
  }, []);
  return (
    <form
      ref={form}
      className="search"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const birthDate = parseBirthday(typed);
        setProblem(birthDate === undefined);
        if (birthDate) onAdd(birthDate, isAskedBack);
      }}
    >
      <label htmlFor="birthday">
        Birthday of <bdi>{name}</bdi>
      </label>
      <input
        id="birthday"
        inputMode="numeric"
        autoComplete="off"
        placeholder="YYYYMMDD"
        // biome-ignore lint/a11y/noAutofocus: it appears on Enter in the field above and is the only thing left to type
        autoFocus
        value={typed}
        aria-invalid={problem}
        aria-describedby="birthday-hint"
        onChange={(event) => setTyped(event.target.value)}
      />
      <button type="submit" className="action primary">
        <Key>Enter</Key> {isAskedBack ? 'Another person: add' : says}
      </button>
      <span id="birthday-hint" className={problem ? 'problem' : 'hint'} role={problem ? 'alert' : undefined}>
        {problem ? 'This is no day of the calendar. Year, month and day, like 20190307.' : 'Year, month and day, like 20190307'}
      </span>
    </form>
  );
}
