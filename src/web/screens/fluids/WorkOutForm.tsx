import type { ReactNode } from 'react';
import { TextLine } from '../../parts/fields.tsx';
import type { FieldsOf } from './readNumbers.ts';
import type { WorkOut } from './useWorkOut.ts';

interface WorkOutFormProps<R> {
  readonly label: string;
  readonly work: WorkOut<R>;
  readonly children: ReactNode;
  readonly say: (result: R) => ReactNode;
}

/** Fields, one button, and the answer below it. Nothing of it is stored. */
export function WorkOutForm<R>({ label, work, children, say }: WorkOutFormProps<R>) {
  const { result, problems, problem } = work;
  const count = Object.keys(problems).filter((name) => name !== '').length;
  return (
    <form ref={work.form} noValidate className="form work-out" aria-label={label} data-done={result !== undefined} onSubmit={work.submit}>
      {children}
      <p className="problem" role="alert">
        {problem ?? (count > 0 ? `Not worked out yet: ${count === 1 ? 'one line needs' : `${count} lines need`} a look.` : '')}
      </p>
      <p className="actions">
        <button type="submit" className="action primary">
          Work it out
        </button>
      </p>
      <div role="status" className="worked-out">
        {result !== undefined && say(result)}
      </div>
    </form>
  );
}

/** A line for each number, in the order of the list. */
export function NumberLines({ fields, work }: { readonly fields: FieldsOf<string>; readonly work: WorkOut<unknown> }) {
  return Object.entries(fields).map(([name, { label, unit, hint }]) => (
    <TextLine
      key={name}
      label={label}
      kind="number"
      unit={unit}
      hint={hint}
      value={work.typed[name] ?? ''}
      problem={work.problems[name]}
      onChange={(value) => work.set(name, value)}
    />
  ));
}
