import { type KeyboardEvent, useId, useState } from 'react';
import { readClockTime } from '../../../core/day/clockTime.ts';
import { Key } from '../../parts/Key.tsx';

interface AskTimeProps {
  readonly name: string;
  /** As it stands; null = some time that day. */
  readonly atTime: string | null;
  readonly onSay: (atTime: string | null) => void;
  readonly onLeave: () => void;
}

/** Another time of the same day. An empty field is some time that day; what is no time stays in the field. */
export function AskTime({ name, atTime, onSay, onLeave }: AskTimeProps) {
  const id = useId();
  const [typed, setTyped] = useState(atTime ?? '');
  const [isWrong, setWrong] = useState(false);
  const say = () => {
    const time = typed.trim() === '' ? null : readClockTime(typed);
    if (time === undefined) setWrong(true);
    else if (time === atTime) onLeave();
    else onSay(time);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') say();
    else if (event.key === 'Escape') onLeave();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div className="day-reason">
      <label htmlFor={id}>
        At what time? <span className="sr-only">{name}</span>
      </label>
      <input
        id={id}
        className="text"
        autoComplete="off"
        maxLength={20}
        // biome-ignore lint/a11y/noAutofocus: it appears on a key and is the only thing left to type
        autoFocus
        onFocus={(event) => event.target.select()}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? `${id}-problem` : `${id}-hint`}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setWrong(false);
        }}
        onKeyDown={onKeyDown}
      />
      <button type="button" className="quiet" onClick={say}>
        <Key>Enter</Key> {typed.trim() === '' ? 'no time' : 'this time'}
      </button>
      <button type="button" className="quiet" onClick={onLeave}>
        <Key>Esc</Key> leave it
      </button>
      {isWrong ? (
        <p id={`${id}-problem`} className="problem" role="alert">
          The time: “{typed}” is no time of day. 9:40, 0940 and 1:30 pm are.
        </p>
      ) : (
        <p id={`${id}-hint`} className="hint">
          9:40, 0940 or 1:30 pm; empty is some time that day
        </p>
      )}
    </div>
  );
}
