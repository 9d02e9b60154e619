import { type FocusEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { type DayRow, FIELD_WORDS, type RowField } from '../../../core/day/dayRow.ts';
import { plural } from '../../format.ts';
import { sortedFields } from './rowFields.ts';
import { withDates } from './sayDay.ts';
import type { JudgedRow } from './useFillDay.ts';

interface RowsProps {
  readonly rows: readonly JudgedRow[];
  readonly onChange: (row: DayRow) => void;
}

/** Rows in which something is wrong, each to be mended in its place or left out. */
export function MendRows({ rows, onChange }: RowsProps) {
  const list = useRef<HTMLUListElement>(null);
  // A row that was mended goes away, and the focus with it: it goes on to the next one that wants something.
  useEffect(() => {
    if (rows.length > 0 && document.activeElement === document.body) list.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus();
  }, [rows]);
  if (rows.length === 0) return null;
  return (
    <section aria-label="To mend">
      <h2>To mend, or to leave out</h2>
      <ul className="mend-rows" ref={list}>
        {rows.map(({ row, verdict }) => (
          <MendRow
            key={row.row}
            row={row}
            field={verdict.kind === 'wrong' ? verdict.field : 'row'}
            says={verdict.says}
            onChange={onChange}
          />
        ))}
      </ul>
    </section>
  );
}

interface MendRowProps {
  readonly row: DayRow;
  readonly field: RowField | 'row';
  readonly says: string;
  readonly onChange: (row: DayRow) => void;
}

function MendRow({ row, field, says, onChange }: MendRowProps) {
  const [typed, setTyped] = useState(row);
  const isChanged = sortedFields.some((name) => typed[name] !== row[name]);
  const send = () => {
    const { problem: _mended, ...fields } = typed;
    onChange(fields);
  };
  const onBlur = (event: FocusEvent<HTMLLIElement>) => {
    if (isChanged && !event.currentTarget.contains(event.relatedTarget)) send();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    if (isChanged) send();
  };
  const id = `row-${row.row}`;
  return (
    <li className="mend-row" onBlur={onBlur} onKeyDown={onKeyDown}>
      <p id={`${id}-problem`} className="problem">
        {withDates(says)}
      </p>
      {sortedFields.map((name) => (
        <span key={name} className="mend-field">
          <label htmlFor={`${id}-${name}`}>
            {FIELD_WORDS[name]}
            <span className="sr-only"> of row {row.row}</span>
          </label>
          <input
            id={`${id}-${name}`}
            className="text"
            dir="auto"
            autoComplete="off"
            maxLength={500}
            value={typed[name]}
            aria-invalid={name === field || (field === 'row' && name === 'name') || undefined}
            aria-describedby={`${id}-problem`}
            onChange={(event) => setTyped({ ...typed, [name]: event.target.value })}
          />
        </span>
      ))}
      <button type="button" className="quiet" onClick={() => onChange({ ...row, leftOut: true })}>
        leave out<span className="sr-only"> row {row.row}</span>
      </button>
    </li>
  );
}

/** Rows about which something is asked back. */
export function RowsToAnswer({ rows, onChange }: RowsProps) {
  if (rows.length === 0) return null;
  return (
    <section aria-label="To answer">
      <h2>To answer</h2>
      <ul className="mend-rows">
        {rows.map(({ row, verdict }) => (
          <li key={row.row} className="mend-row">
            <p>
              <bdi>{row.name}</bdi> {row.birthday} {row.time && `at ${row.time}`}
            </p>
            <p className="unknown">{withDates(verdict.says)}</p>
            {verdict.kind === 'ask' &&
              verdict.choices.map(({ id, label }) => (
                <button key={id} type="button" className="action" onClick={() => onChange({ ...row, choice: id })}>
                  {withDates(label)}
                </button>
              ))}
            <button type="button" className="quiet" onClick={() => onChange({ ...row, leftOut: true })}>
              leave out<span className="sr-only"> row {row.row}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What will be written when the list is taken. */
export function RightRows({ rows, onChange }: RowsProps) {
  if (rows.length === 0) return null;
  return (
    <section aria-label="To be taken">
      <h2>To be taken</h2>
      <RowTable rows={rows} action="leave out" onAct={(row) => onChange({ ...row, leftOut: true })} />
    </section>
  );
}

export function NothingRows({ rows, onChange }: RowsProps) {
  if (rows.length === 0) return null;
  return (
    <details>
      <summary>{plural(rows.length, 'row')} with nothing to do</summary>
      <RowTable rows={rows} action="take after all" onAct={(row) => onChange({ ...row, leftOut: false })} onlyLeftOut />
    </details>
  );
}

interface RowTableProps {
  readonly rows: readonly JudgedRow[];
  readonly action: string;
  readonly onAct: (row: DayRow) => void;
  readonly onlyLeftOut?: boolean;
}

function RowTable({ rows, action, onAct, onlyLeftOut = false }: RowTableProps) {
  return (
    <table className="row-table">
      <thead>
        <tr>
          <th scope="col">Row</th>
          <th scope="col">Time</th>
          <th scope="col">Name</th>
          <th scope="col">Chart</th>
          <th scope="col">What it does</th>
          <th scope="col">
            <span className="sr-only">{action}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ row, verdict }) => (
          <tr key={row.row}>
            <td data-label="Row">{row.row}</td>
            <td data-label="Time">{'atTime' in verdict ? (verdict.atTime ?? 'no time') : row.time}</td>
            <th scope="row">
              <bdi>{row.name || (verdict.kind === 'known' ? verdict.person.name : '')}</bdi>
            </th>
            <td data-label="Chart">
              <bdi>{row.chartNumber}</bdi>
            </td>
            <td data-label="What it does">{withDates(verdict.says)}</td>
            <td>
              {(!onlyLeftOut || row.leftOut) && (
                <button type="button" className="quiet" onClick={() => onAct(row)}>
                  {action}
                  <span className="sr-only"> row {row.row}</span>
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
