import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import { resolveStop } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { DoneLines } from './DoneLines.tsx';
import { type DoneDraft, doneOf, doneProblem, NOTHING_SAID } from './stopWords.ts';

interface ResolveFormProps {
  readonly outId: string;
  /** The control in line that shows it, where it is of another lot. */
  readonly controlId?: string;
  readonly answer?: DoneDraft['answer'];
  readonly close?: (said?: string) => void;
}

/** What was done about a stop, once a control is in line again. */
export function ResolveForm({ outId, controlId, answer = 'not-said', close }: ResolveFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const { send, isSending, problem: refusal } = useSend();
  const [draft, setDraft] = useState<DoneDraft>({ ...NOTHING_SAID, answer });
  const [isTried, setTried] = useState(false);
  const did = doneOf(draft);
  const problem = doneProblem(draft) ?? (did ? undefined : 'What was done: choose one of the list.');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (problem !== undefined || !did) return focusFirstProblem(form.current);
    void send(async () => {
      await resolveStop(outId, { did, ...(controlId && { controlId }) });
      close?.('Noted.');
      await client.invalidateQueries({ queryKey: ['checks'] });
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="What was done about the stop">
      <DoneLines draft={draft} problem={isTried ? problem : undefined} hint="Kept with the stop." onChange={setDraft} />
      {refusal && (
        <p className="problem" role="alert">
          {refusal}
        </p>
      )}
      <div className="actions">
        <button type="submit" className="action primary" disabled={isSending}>
          Note what was done
        </button>
        {close && (
          <button type="button" className="action" onClick={() => close()}>
            Leave
          </button>
        )}
      </div>
    </form>
  );
}
