import { type KeyboardEvent, type RefObject, useLayoutEffect, useRef, useState } from 'react';
import type { DayLine } from '../../../api/day.ts';
import { useSingleKeys } from '../../preferences.ts';
import { goTo } from '../../routing.ts';
import { type Asking, DayRow, mayChange, maySwab, type RowActions } from './DayRow.tsx';

interface DayListProps {
  readonly lines: readonly DayLine[];
  readonly list: RefObject<HTMLOListElement | null>;
  /** Visits are opened on their own day only. */
  readonly mayOpen: boolean;
  readonly moved: Moved | null;
  readonly actions: RowActions;
}

/** The appointment whose time was changed last, so that one key takes it back. */
export interface Moved {
  readonly appointmentId: string;
  /** The time before. */
  readonly atTime: string | null;
}

export function DayList({ lines, list, mayOpen, moved, actions }: DayListProps) {
  const singleKeys = useSingleKeys();
  const [asking, setAsking] = useState<{ readonly key: string; readonly what: Asking } | null>(null);
  const focus = useLineFocus(lines, list);
  if (lines.length === 0) return null;

  const ask = (line: DayLine, what: Asking | null) => {
    if (what === null) focus.back(line);
    setAsking(what && { key: keyOf(line), what });
  };
  const timeBefore = ({ appointment }: DayLine) => (moved !== null && moved.appointmentId === appointment?.id ? moved.atTime : undefined);
  const putBack = (line: DayLine) => {
    focus.follow(line);
    actions.putBack(line);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLInputElement) return;
    const row = Number((event.target as HTMLElement).closest<HTMLElement>('[data-row]')?.dataset.row);
    const line = lines[row];
    if (!line) return;
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') focusRow(list.current, row + (event.key === 'ArrowDown' ? 1 : -1));
    else if (!singleKeys) return;
    else if (!actOnKey(event.key, line)) return;
    event.preventDefault();
  };
  const actOnKey = (key: string, line: DayLine): boolean => {
    const isOff = line.state === 'cancelled' || line.state === 'missed';
    if (key === 's' && maySwab(line, mayOpen)) actions.openSwab(line);
    else if (key === 'n' && mayChange(line)) ask(line, 'time');
    else if (key === 'c' && mayChange(line)) ask(line, 'cancelled');
    else if (key === 'm' && mayChange(line)) ask(line, 'missed');
    else if (key === 'u' && (isOff || timeBefore(line) !== undefined)) putBack(line);
    else if (key === 'i') goTo(`/people/${line.patientId}`);
    else return false;
    return true;
  };

  return (
    <ol className="day" ref={list} onKeyDown={onKeyDown} aria-label="People of the day">
      {lines.map((line, row) => (
        <DayRow
          key={keyOf(line)}
          line={line}
          row={row}
          mayOpen={mayOpen}
          timeBefore={timeBefore(line)}
          asking={asking?.key === keyOf(line) ? asking.what : null}
          ask={(what) => ask(line, what)}
          actions={{
            ...actions,
            put: (put, state, reason) => {
              ask(line, null);
              actions.put(put, state, reason);
            },
            putAt: (put, atTime) => {
              ask(line, null);
              focus.follow(put);
              actions.putAt(put, atTime);
            },
            putBack,
          }}
        />
      ))}
    </ol>
  );
}

/**
 * The focus goes back to a line once what was asked on it is gone from the page, and goes with it where another time moves it to another
 * place in the list.
 */
function useLineFocus(lines: readonly DayLine[], list: RefObject<HTMLOListElement | null>) {
  const wanted = useRef<string | null>(null);
  const followed = useRef<{ readonly key: string; readonly from: DayLine } | null>(null);
  useLayoutEffect(() => {
    const rowOf = (key: string | undefined) => lines.findIndex((line) => keyOf(line) === key);
    const moved = rowOf(followed.current?.key);
    const hasMoved = moved >= 0 && lines[moved] !== followed.current?.from;
    const row = hasMoved ? moved : rowOf(wanted.current ?? undefined);
    if (hasMoved) followed.current = null;
    wanted.current = null;
    if (row >= 0) focusRow(list.current, row);
  });
  return {
    back: (line: DayLine) => {
      wanted.current = keyOf(line);
    },
    follow: (line: DayLine) => {
      followed.current = { key: keyOf(line), from: line };
    },
  };
}

const keyOf = ({ appointment, patientId }: DayLine): string => appointment?.id ?? patientId;

/** Above the first row stands the field. */
export function focusRow(list: HTMLOListElement | null, row: number): void {
  if (row < 0) document.getElementById('day-entry')?.focus();
  // The name takes the focus; where it opens nothing yet, the next thing in the row does.
  else list?.querySelector<HTMLElement>(`[data-row="${row}"] :is(button:enabled, a, input)`)?.focus();
}
