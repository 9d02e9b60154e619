import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import { parseExpiry } from '../../../core/shelf/parseExpiry.ts';
import { receiveStock } from '../../data/stockQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { parseDecimal } from '../../parseDecimal.ts';
import { TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { sayPacks } from './sayStock.ts';

interface Draft {
  readonly packs: string;
  readonly lot: string;
  readonly lastDay: string;
}

const EMPTY: Draft = { packs: '', lot: '', lastDay: '' };

/** Whole packs as typed; undefined for anything else. */
export function parsePacks(typed: string): number | undefined {
  const value = parseDecimal(typed);
  return value !== undefined && Number.isInteger(value) ? value : undefined;
}

/** Packs that came in: how many, and what is printed on them. */
export function ReceiveForm({ itemId, onDone }: { readonly itemId: string; readonly onDone: (said: string) => void }) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [draft, setDraft] = useState(EMPTY);
  const [isTried, setTried] = useState(false);
  // Made once, so that a second try after a lost answer does not count the packs twice.
  const [id] = useState(() => crypto.randomUUID());
  const { send, isSending, problem } = useSend();
  const packs = parsePacks(draft.packs);
  const expiry = draft.lastDay.trim() === '' ? null : parseExpiry(draft.lastDay);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (packs === undefined || packs < 1 || expiry === undefined) return focusFirstProblem(form.current);
    void send(async () => {
      await receiveStock(itemId, { id, packs, lot: draft.lot, expiry });
      await client.invalidateQueries({ queryKey: ['stock'] });
      onDone(`${sayPacks(packs)} came in.`);
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="Packs that came in" className="stock-form">
      <TextLine
        label="Packs"
        kind="number"
        value={draft.packs}
        problem={isTried && (packs === undefined || packs < 1) ? 'A whole number of packs is needed.' : undefined}
        onChange={(value) => setDraft({ ...draft, packs: value })}
      />
      <TextLine label="Lot" value={draft.lot} hint="as printed; empty = not noted" onChange={(lot) => setDraft({ ...draft, lot })} />
      <TextLine
        label="Last day"
        value={draft.lastDay}
        problem={isTried && expiry === undefined ? LAST_DAY_PROBLEM : undefined}
        hint={LAST_DAY_HINT}
        onChange={(lastDay) => setDraft({ ...draft, lastDay })}
      />
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <div className="actions">
        <button type="submit" className="action primary" disabled={isSending}>
          Save
        </button>
        <button type="button" className="action" onClick={() => onDone('')}>
          Leave
        </button>
      </div>
    </form>
  );
}

export const LAST_DAY_HINT = 'like 2027-05-31, or 05/2027 for the whole month; empty = not known';
export const LAST_DAY_PROBLEM = 'A date like 2027-05-31, or a month like 05/2027.';
