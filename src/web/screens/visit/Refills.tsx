import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { RefillView } from '../../../api/stock.ts';
import { saySigner } from '../../../core/regimen/saySigner.ts';
import { packsCovered, sayCovers, sayLeft } from '../../../core/regimen/signatureCover.ts';
import { allocate } from '../../../core/shelf/allocate.ts';
import type { CountedItem, LotStock } from '../../../core/shelf/types.ts';
import { signItem } from '../../data/signingQueries.ts';
import { refillItem, stopRefill, useRefills } from '../../data/stockQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { sayLot } from '../shelf/sayStock.ts';
import { type Covers, SignForm } from '../signing/SignForm.tsx';

interface RefillsProps {
  readonly visitId: string;
  readonly counted: readonly CountedItem[];
  readonly isDentist: boolean;
}

/**
 * One more pack of what was agreed, at the counter on a later day. First the question whether anything is new: a yes gives nothing and
 * leaves a check for the hygienist.
 */
export function Refills({ visitId, counted, isDentist }: RefillsProps) {
  const { data } = useRefills(visitId);
  const [hasAsked, setAsked] = useState(false);
  if (!data || data.lines.length === 0) return null;
  const place = { visitId, counted, isDentist };
  const next = data.lines.find((line) => line.state === 'may-be-given' && firstLot(line, place, data.today))?.shelfItemId;
  return (
    <section aria-label="One more pack" className="given">
      <h3>One more pack</h3>
      {data.notHere !== null && <p className="unknown">{data.notHere}</p>}
      {data.notHere === null && !hasAsked && <AskFirst visitId={visitId} onNothingNew={() => setAsked(true)} />}
      {data.notHere === null && hasAsked && (
        <ul className="plain-list">
          {data.lines.map((line) => (
            <RefillRow key={line.shelfItemId} line={line} isNext={line.shelfItemId === next} today={data.today} place={place} />
          ))}
        </ul>
      )}
    </section>
  );
}

function AskFirst({ visitId, onNothingNew }: { readonly visitId: string; readonly onNothingNew: () => void }) {
  const client = useQueryClient();
  const { send, isSending, problem } = useSend();
  const stop = () =>
    void send(async () => {
      await stopRefill(visitId);
      await client.invalidateQueries({ queryKey: ['stock'] });
    });
  return (
    <>
      <p>Ask first: anything new since the last visit? Pregnancy, an allergy, medicines, an illness?</p>
      <div className="actions">
        <button type="button" className="action" onClick={onNothingNew}>
          No, nothing new
        </button>
        <button type="button" className="action" disabled={isSending} onClick={stop}>
          Yes, or not sure: give nothing, the hygienist looks first
        </button>
      </div>
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </>
  );
}

type RefillLine = RefillView['lines'][number];

interface RowProps {
  readonly line: RefillLine;
  readonly today: string;
  /** The key gives this one. */
  readonly isNext: boolean;
  readonly place: RefillsProps;
}

const lotsOf = ({ shelfItemId }: RefillLine, { counted }: RefillsProps) => counted.find((item) => item.shelfItemId === shelfItemId)?.lots;

/** The lot that goes first; undefined where none may be given, or the item is not counted. */
function firstLot(line: RefillLine, place: RefillsProps, today: string): LotStock | undefined {
  const proposed = allocate(lotsOf(line, place) ?? [], 1, today);
  return proposed.ok ? proposed.takes[0] : undefined;
}

function RefillRow({ line, today, isNext, place }: RowProps) {
  const { shelfItemId, name, state, says, lastGivenOn } = line;
  const client = useQueryClient();
  const { send, isSending, problem } = useSend();
  // Asked again with the same id after a lost answer, it is written once.
  const [id, setId] = useState(() => crypto.randomUUID());
  const lots = lotsOf(line, place);
  const first = firstLot(line, place, today);
  const mayGive = first !== undefined && (state === 'may-be-given' || (state === 'waits' && place.isDentist));
  const give = () =>
    void send(async () => {
      await refillItem(place.visitId, { id, shelfItemId, nothingNew: true });
      setId(crypto.randomUUID());
      await client.invalidateQueries({ queryKey: ['stock'] });
    });
  return (
    <li data-refill={shelfItemId}>
      {mayGive ? (
        <button
          type="button"
          className="action"
          data-give={shelfItemId}
          aria-keyshortcuts={isNext ? 'v' : undefined}
          disabled={isSending}
          onClick={give}
        >
          {isNext && <Key>v</Key>} Given today: {name}
          <span className="aside block">{sayLot(first)}</span>
        </button>
      ) : (
        <span>{name}</span>
      )}{' '}
      {says !== '' && <span className="unknown block">{says}</span>}
      <Signature line={line} />
      {state !== 'stopped' && first === undefined && (
        <span className="unknown block">
          {lots === undefined ? 'Not counted, so no pack is booked.' : 'No pack that may be given is left.'}
        </span>
      )}
      <span className="aside block">{lastGivenOn === null ? 'No pack given yet.' : `Last given ${formatDate(lastGivenOn)}.`}</span>
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      {state === 'waits' && place.isDentist && <SignAnew line={line} today={today} visitId={place.visitId} />}
    </li>
  );
}

/** On what it goes: who signed, for how many packs and to which day, and how many are left. */
function Signature({ line: { signedBy, given, state } }: { readonly line: RefillLine }) {
  if (!signedBy) return null;
  const left = state === 'may-be-given' ? `, ${sayLeft(packsCovered(signedBy) - given)}` : '';
  return (
    <span className="aside block">
      Signed by {saySigner(signedBy, formatDate)}, {formatDate(signedBy.at)}, for {sayCovers(signedBy, formatDate)}
      {left}.
    </span>
  );
}

interface SignAnewProps {
  readonly line: RefillLine;
  readonly today: string;
  readonly visitId: string;
}

/** A dentist at the counter signs for what is to come, so that nobody has to fetch her or him for each pack. */
function SignAnew({ line: { shelfItemId, name, given }, today, visitId }: SignAnewProps) {
  const client = useQueryClient();
  const { send, problem } = useSend();
  const sign = (covers: Covers) =>
    void send(async () => {
      await signItem(visitId, shelfItemId, covers);
      await Promise.all([['stock'], ['visit', visitId], ['signing']].map((queryKey) => client.invalidateQueries({ queryKey })));
    });
  return (
    <OpenForm
      label="Sign anew, for more packs or to another day"
      about={name}
      isAction
      form={(close) => (
        <SignForm about={`Sign ${name}`} limits={{ today, given }} problem={problem} onSign={sign} onLeave={() => close()} />
      )}
    />
  );
}
