import { type FormEvent, useEffect, useRef, useState } from 'react';
import { TextLine } from './fields.tsx';
import { focusFirstProblem } from './focusFirstProblem.ts';

interface ReasonFormProps {
  /** Words for a screen reader: what the reason is for. */
  readonly about: string;
  readonly label?: string;
  readonly hint?: string;
  readonly saveWords: string;
  readonly problem?: string | null;
  readonly onGive: (reason: string) => void;
  readonly onLeave: () => void;
}

/** One line for a reason, which stays on the record. */
export function ReasonForm({
  about,
  label = 'Because',
  hint = 'kept on the record',
  saveWords,
  problem,
  onGive,
  onLeave,
}: ReasonFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [reason, setReason] = useState('');
  const [isTried, setTried] = useState(false);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);
  const isMissing = isTried && reason.trim() === '';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (reason.trim() === '') return focusFirstProblem(form.current);
    onGive(reason.trim());
  };
  return (
    <form
      ref={form}
      noValidate
      onSubmit={submit}
      aria-label={about}
      className="reason-form"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onLeave();
      }}
    >
      <TextLine label={label} value={reason} hint={hint} problem={isMissing ? 'A reason is needed.' : undefined} onChange={setReason} />
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <div className="actions">
        <button type="submit" className="action primary">
          {saveWords}
        </button>
        <button type="button" className="action" onClick={onLeave}>
          Leave
        </button>
      </div>
    </form>
  );
}
