import { type FormEvent, type ReactNode, useEffect, useRef } from 'react';
import { focusFirstProblem } from './focusFirstProblem.ts';

interface SmallFormProps {
  /** Words for a screen reader: what it is for. */
  readonly about: string;
  readonly className?: string;
  readonly saveWords: string;
  /** What the server would not do, where no line says it. */
  readonly problem?: string | null | undefined;
  /** What the server would not do, wherever it is said: then the first line with a problem is gone to. */
  readonly refusal?: string | null | undefined;
  /** @returns false where a line needs a look first */
  readonly onTry: () => boolean;
  readonly onLeave: () => void;
  readonly children: ReactNode;
}

/** A form that opens in its place: the focus begins in its first line, and Escape leaves it. */
export function SmallForm({ about, className = '', saveWords, problem, refusal, onTry, onLeave, children }: SmallFormProps) {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);
  useEffect(() => {
    if (refusal) focusFirstProblem(form.current);
  }, [refusal]);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!onTry()) focusFirstProblem(form.current);
  };
  return (
    <form
      ref={form}
      noValidate
      onSubmit={submit}
      aria-label={about}
      className={`reason-form ${className}`.trim()}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onLeave();
      }}
    >
      {children}
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
