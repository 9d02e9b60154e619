import { type KeyboardEvent, type ReactNode, useId, useState } from 'react';
import { Key } from '../../parts/Key.tsx';
import { isTooth, NO_TOOTH } from './findings.ts';
import { replyOfKey } from './keys.ts';
import type { Entry, Line, Reply } from './line.ts';
import { parsePastDate } from './parsePastDate.ts';
import { parseNumber } from './swabLines.ts';

interface EntryProps {
  readonly line: Line;
  readonly onReply: (reply: Reply) => void;
}

/** A number and Enter. d and x answer here too: no number holds these letters. */
export function NumberEntry({ line, onReply, entry }: EntryProps & { readonly entry: Extract<Entry, { kind: 'number' }> }) {
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const save = () => {
    const reply = parseNumber(typed, entry);
    if ('problem' in reply) setProblem(reply.problem);
    else onReply(reply);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const unknown = line.mayBeUnknown && typed === '' ? ({ d: 'does-not-know', x: 'declined' } as const)[event.key] : undefined;
    if (unknown) {
      event.preventDefault();
      onReply({ how: unknown });
    }
  };
  return (
    <Field label={entry.unit ? `${line.label}, ${entry.unit}` : line.label} after={entry.unit} problem={problem} onSave={save}>
      {(id, describedBy) => (
        <input
          id={id}
          data-entry
          className="number"
          inputMode="decimal"
          autoComplete="off"
          value={typed}
          aria-invalid={problem !== null}
          aria-describedby={describedBy}
          onKeyDown={onKeyDown}
          onChange={(event) => {
            setTyped(event.target.value);
            setProblem(null);
          }}
        />
      )}
    </Field>
  );
}

export function TextEntry({ line, hint, onReply }: EntryProps & { readonly hint: string }) {
  const [typed, setTyped] = useState(typeof line.value === 'string' ? line.value : '');
  return (
    <Field label={line.label} problem={null} hint={hint} onSave={() => onReply({ how: 'asked', value: typed.trim() })}>
      {(id, describedBy) => (
        <input
          id={id}
          data-entry
          className="text"
          autoComplete="off"
          maxLength={300}
          value={typed}
          aria-describedby={describedBy}
          onChange={(event) => setTyped(event.target.value)}
        />
      )}
    </Field>
  );
}

export function DateEntry({ line, onReply }: EntryProps) {
  const [typed, setTyped] = useState(typeof line.value === 'string' ? line.value : '');
  const [problem, setProblem] = useState<string | null>(null);
  const save = () => (typed === '' ? setProblem('A date is needed here.') : onReply({ how: 'asked', value: typed }));
  return (
    <Field label={line.label} problem={problem} onSave={save}>
      {(id, describedBy) => (
        <input
          id={id}
          data-entry
          type="date"
          value={typed}
          aria-invalid={problem !== null}
          aria-describedby={describedBy}
          onChange={(event) => {
            setTyped(event.target.value);
            setProblem(null);
          }}
        />
      )}
    </Field>
  );
}

/** Two digits are a tooth and go on by themselves; what is none is said, and the field is free for the next two. */
export function ToothEntry({ line, onReply }: EntryProps) {
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const take = (text: string) => {
    const digits = text.replace(/\D/g, '');
    setTyped(digits);
    setProblem(null);
    if (digits.length < 2) return;
    if (isTooth(digits)) return onReply({ how: 'asked', value: digits });
    setTyped('');
    setProblem(`${digits}: ${NO_TOOTH}`);
  };
  return (
    <Field label={`${line.label}, tooth`} problem={problem} hint="two digits, 11 to 48 or 51 to 85" onSave={() => setProblem(NO_TOOTH)}>
      {(id, describedBy) => (
        <input
          id={id}
          data-entry
          className="number"
          inputMode="numeric"
          autoComplete="off"
          value={typed}
          aria-invalid={problem !== null}
          aria-describedby={describedBy}
          onChange={(event) => take(event.target.value)}
        />
      )}
    </Field>
  );
}

/** A month, or a day, and Enter. t is today, n the first choice; d and x answer here too. */
export function PastDateEntry({ line, entry, onReply }: EntryProps & { readonly entry: Extract<Entry, { kind: 'past-date' }> }) {
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const save = () => {
    const parsed = parsePastDate(typed, entry);
    if ('problem' in parsed) setProblem(parsed.problem);
    else onReply({ how: 'asked', value: parsed.value });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const reply = typed === '' ? replyOfKey(event.key, line) : undefined;
    if (!reply) return;
    event.preventDefault();
    onReply(reply);
  };
  return (
    <Field label={line.label} problem={problem} hint="month and year, like 0625; or a day, like 2025-06-14" onSave={save}>
      {(id, describedBy) => (
        <input
          id={id}
          data-entry
          className="number"
          autoComplete="off"
          value={typed}
          aria-invalid={problem !== null}
          aria-describedby={describedBy}
          onKeyDown={onKeyDown}
          onChange={(event) => {
            setTyped(event.target.value);
            setProblem(null);
          }}
        />
      )}
    </Field>
  );
}

interface FieldProps {
  readonly label: string;
  readonly after?: string | undefined;
  readonly hint?: string | undefined;
  readonly problem: string | null;
  readonly onSave: () => void;
  readonly children: (id: string, describedBy: string | undefined) => ReactNode;
}

/** A field with its unit, its key and what is wrong with it, in one line. */
function Field({ label, after, hint, problem, onSave, children }: FieldProps) {
  const id = useId();
  const note = problem ?? hint;
  return (
    <form
      className="field"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSave();
      }}
    >
      <label className="sr-only" htmlFor={id}>
        {label}
      </label>
      {children(id, note ? `${id}n` : undefined)}
      {after && <span aria-hidden="true">{after}</span>}
      <button type="submit" className="answer">
        <Key>Enter</Key>
        <span>save</span>
      </button>
      {note && (
        <span id={`${id}n`} className={problem ? 'problem' : 'hint'} role={problem ? 'alert' : undefined}>
          {note}
        </span>
      )}
    </form>
  );
}
