import { type FormEvent, useId, useState } from 'react';
import { formatDate, plural, uncapitalise } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { listChanges } from './correcting.ts';
import { fieldName, isPrivateField, sayFieldValue } from './fieldWords.ts';
import type { VisitWork } from './visitContext.ts';

/** What a page needs to put a closed visit right: the whole visit, or its day alone. */
export type CorrectingWork = Pick<
  VisitWork,
  'bundle' | 'input' | 'correction' | 'beginCorrection' | 'saveCorrection' | 'dropCorrection' | 'problem'
>;

interface CorrectionBarProps {
  readonly work: CorrectingWork;
  readonly isAsked: boolean;
  readonly onLeave: () => void;
}

/** Above a closed visit that is put right: first the reason, then what differs by now, then saving all of it together. */
export function CorrectionBar({ work, isAsked, onLeave }: CorrectionBarProps) {
  if (work.correction) return <OpenCorrection work={work} onLeave={onLeave} />;
  return isAsked ? <AskReason work={work} onLeave={onLeave} /> : null;
}

function AskReason({ work: { beginCorrection }, onLeave }: Omit<CorrectionBarProps, 'isAsked'>) {
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState(false);
  const id = useId();
  const begin = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim() === '') setProblem(true);
    else beginCorrection(reason.trim());
  };
  return (
    <form className="correction" onSubmit={begin} aria-label="Correct this visit">
      <label htmlFor={id}>What was wrong? The reason is kept on the record, and what stood there stays.</label>
      <div className="field">
        <input
          id={id}
          className="text"
          maxLength={500}
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: one came here by a key to type this
          autoFocus
          aria-invalid={problem}
          aria-describedby={problem ? `${id}-problem` : undefined}
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        <button type="submit" className="action primary">
          Correct
        </button>
        <button type="button" className="action" onClick={onLeave}>
          Leave it as it is
        </button>
      </div>
      {problem && (
        <p id={`${id}-problem`} className="problem" role="alert">
          A reason is needed.
        </p>
      )}
    </form>
  );
}

function OpenCorrection({ work, onLeave }: Omit<CorrectionBarProps, 'isAsked'>) {
  const { bundle, input, correction, saveCorrection, dropCorrection, problem } = work;
  const changes = listChanges(bundle.input, input);
  const context = { practice: input.practice, visit: input.visit };
  const count = changes.length + (correction?.level ? 1 : 0);
  const before = (path: string) => {
    const [first = '', question] = path.split('.', 2);
    return first === 'answers' ? bundle.input.visit.answers[question ?? ''] : Reflect.get(bundle.input.visit, first);
  };
  return (
    <section className="correction" aria-label="Correction">
      <p>
        Correcting, because {correction?.reason}. {count === 0 ? 'Nothing differs yet.' : `${plural(count, 'change')}, not saved yet:`}
      </p>
      <ul className="plain-list">
        {changes.map(({ path, value }) => (
          <li key={path}>
            {fieldName(path)}: {sayFieldValue(path, value, context)}{' '}
            <span className="aside">(was {sayFieldValue(path, before(path), context)})</span>
          </li>
        ))}
        {correction?.level && <li>The level: {correction.level}, confirmed anew</li>}
      </ul>
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <p className="actions">
        <button type="button" className="action primary" disabled={count === 0} onClick={saveCorrection}>
          Save the correction
        </button>
        <button
          type="button"
          className="action"
          onClick={() => {
            dropCorrection();
            onLeave();
          }}
        >
          Leave it as it was
        </button>
      </p>
    </section>
  );
}

interface CorrectionsProps {
  readonly work: Pick<VisitWork, 'bundle' | 'input' | 'isPrivateHidden'>;
  /** Only corrections of this field. */
  readonly of?: string;
}

/** What was corrected since the visit was closed, each with both values. */
export function Corrections({ work: { bundle, input, isPrivateHidden }, of }: CorrectionsProps) {
  const corrections = bundle.corrections.filter(({ changes }) => of === undefined || changes.some(({ path }) => path === of));
  if (corrections.length === 0) return null;
  const context = { practice: input.practice, visit: input.visit };
  return (
    <section aria-label="Corrections" className="correction">
      {corrections.map(({ at, on, by, reason, changes }) => (
        <div key={at}>
          <p>
            Corrected on {formatDate(on)} by {by}
            {!isPrivateHidden && `, because ${reason}`}.
          </p>
          <ul className="plain-list">
            {changes
              .filter(({ path }) => (of === undefined || path === of) && !(isPrivateHidden && isPrivateField(path)))
              .map(({ path, before, after }) => (
                <li key={path}>
                  {fieldName(path)}: now {uncapitalise(sayValue(path, after))} <span className="aside">(was {sayValue(path, before)})</span>
                </li>
              ))}
          </ul>
        </div>
      ))}
    </section>
  );

  function sayValue(path: string, value: unknown): string {
    return path === 'level' ? String(value ?? 'not confirmed') : sayFieldValue(path, value, context);
  }
}

/** The way into a correction, on a closed visit. */
export function CorrectButton({ onPress }: { readonly onPress: () => void }) {
  return (
    <button type="button" className="link" aria-keyshortcuts="c" onClick={onPress}>
      <Key>c</Key> Correct this visit
    </button>
  );
}
