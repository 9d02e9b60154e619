import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { CorrectStockBody } from '../../../api/stock.ts';
import { parseExpiry } from '../../../core/shelf/parseExpiry.ts';
import type { LotStock } from '../../../core/shelf/types.ts';
import { correctStock } from '../../data/stockQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { SelectLine, TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { LAST_DAY_HINT, LAST_DAY_PROBLEM, parsePacks } from './ReceiveForm.tsx';

type As = CorrectStockBody['as'];

const AS = [
  { id: 'corrected', label: 'put right: what is really there' },
  { id: 'expired', label: 'thrown away, past the last day' },
  { id: 'returned', label: 'sent back to the supplier' },
  { id: 'dispensed', label: 'used up in the practice' },
] as const satisfies readonly { readonly id: As; readonly label: string }[];

/** One lot put right, or packs of it taken out. */
export function LotForm({
  itemId,
  lot,
  isExpired,
  onDone,
}: {
  readonly itemId: string;
  readonly lot: LotStock;
  readonly isExpired: boolean;
  readonly onDone: (said: string) => void;
}) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [as, setAs] = useState<As>(isExpired ? 'expired' : 'corrected');
  const [draft, setDraft] = useState({ packs: String(lot.quantity), lot: lot.lot ?? '', lastDay: lot.expiry ?? '', reason: '' });
  const [isTried, setTried] = useState(false);
  const [id] = useState(() => crypto.randomUUID());
  const { send, isSending, problem } = useSend();
  const set = (part: Partial<typeof draft>) => setDraft({ ...draft, ...part });
  const packs = parsePacks(draft.packs);
  const expiry = draft.lastDay.trim() === '' ? null : parseExpiry(draft.lastDay);
  const isCorrection = as === 'corrected';
  const isReasonMissing = isCorrection && draft.reason.trim() === '';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (packs === undefined || (isCorrection && (expiry === undefined || isReasonMissing))) return focusFirstProblem(form.current);
    const reads = isCorrection ? { reads: { lot: draft.lot, expiry: expiry ?? null } } : {};
    const why = draft.reason.trim() === '' ? {} : { reason: draft.reason };
    void send(async () => {
      await correctStock(itemId, { id, as, packs, lot: { lot: lot.lot, expiry: lot.expiry }, ...reads, ...why });
      await client.invalidateQueries({ queryKey: ['stock'] });
      onDone('Saved.');
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`Lot ${lot.lot ?? 'not noted'}`} className="stock-form">
      <SelectLine label="What happened" value={as} options={AS} onChange={setAs} />
      <TextLine
        label={isCorrection ? 'Packs there now' : 'Packs that went'}
        kind="number"
        value={draft.packs}
        problem={isTried && packs === undefined ? 'A whole number of packs is needed.' : undefined}
        onChange={(value) => set({ packs: value })}
      />
      {isCorrection && (
        <>
          <TextLine label="Lot" value={draft.lot} onChange={(value) => set({ lot: value })} />
          <TextLine
            label="Last day"
            value={draft.lastDay}
            problem={isTried && expiry === undefined ? LAST_DAY_PROBLEM : undefined}
            hint={LAST_DAY_HINT}
            onChange={(lastDay) => set({ lastDay })}
          />
        </>
      )}
      <TextLine
        label="Because"
        value={draft.reason}
        problem={isTried && isReasonMissing ? 'A reason is needed.' : undefined}
        hint="kept on the record"
        onChange={(reason) => set({ reason })}
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
