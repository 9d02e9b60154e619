import { type KeyboardEvent, type RefObject, useState } from 'react';
import type { DayLine } from '../../../api/day.ts';
import { useSingleKeys } from '../../preferences.ts';
import { goTo } from '../../routing.ts';
import { DayRow, maySwab, type RowActions } from './DayRow.tsx';

interface DayListProps {
  readonly lines: readonly DayLine[];
  readonly list: RefObject<HTMLOListElement | null>;
  /** Visits are opened on their own day only. */
  readonly mayOpen: boolean;
  readonly actions: RowActions;
}

export function DayList({ lines, list, mayOpen, actions }: DayListProps) {
  const singleKeys = useSingleKeys();
  const [asking, setAsking] = useState<{ readonly key: string; readonly state: 'cancelled' | 'missed' } | null>(null);
  if (lines.length === 0) return null;

  const ask = (line: DayLine, row: number, state: 'cancelled' | 'missed' | null) => {
    setAsking(state && { key: keyOf(line), state });
    if (state === null) focusRow(list.current, row);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLInputElement) return;
    const row = Number((event.target as HTMLElement).closest<HTMLElement>('[data-row]')?.dataset.row);
    const line = lines[row];
    if (!line) return;
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') focusRow(list.current, row + (event.key === 'ArrowDown' ? 1 : -1));
    else if (!singleKeys) return;
    else if (!actOnKey(event.key, line, row)) return;
    event.preventDefault();
  };
  const actOnKey = (key: string, line: DayLine, row: number): boolean => {
    const isOff = line.state === 'cancelled' || line.state === 'missed';
    if (key === 's' && maySwab(line, mayOpen)) actions.openSwab(line);
    else if (key === 'c' && line.appointment && line.state === 'not-here') ask(line, row, 'cancelled');
    else if (key === 'm' && line.appointment && line.state === 'not-here') ask(line, row, 'missed');
    else if (key === 'u' && isOff) actions.putBack(line);
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
          asking={asking?.key === keyOf(line) ? asking.state : null}
          ask={(state) => ask(line, row, state)}
          actions={{
            ...actions,
            put: (put, state, reason) => {
              ask(line, row, null);
              actions.put(put, state, reason);
            },
          }}
        />
      ))}
    </ol>
  );
}

const keyOf = ({ appointment, patientId }: DayLine): string => appointment?.id ?? patientId;

/** Above the first row stands the field. */
export function focusRow(list: HTMLOListElement | null, row: number): void {
  if (row < 0) document.getElementById('day-entry')?.focus();
  // The name takes the focus; where it opens nothing yet, the next thing in the row does.
  else list?.querySelector<HTMLElement>(`[data-row="${row}"] :is(button:enabled, a, input)`)?.focus();
}
