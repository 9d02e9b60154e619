import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import type { GiveBody, GivenView } from '../../../api/stock.ts';
import { allocate } from '../../../core/shelf/allocate.ts';
import { isExpired } from '../../../core/shelf/lots.ts';
import type { Lot, LotStock } from '../../../core/shelf/types.ts';
import { shelfName } from '../../content.ts';
import { useSaveQueue } from '../../data/saving.ts';
import { giveItem, useGiven } from '../../data/stockQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { capitalise } from '../../format.ts';
import { SelectLine } from '../../parts/fields.tsx';
import { Key } from '../../parts/Key.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { TakeBack } from '../shelf/StockScreen.tsx';
import { sayLot, sayPacks } from '../shelf/sayStock.ts';
import { Refills } from './Refills.tsx';
import { useVisit } from './visitContext.ts';

/**
 * What was agreed and may go home: one key for each item, from the lot that is to be given first. On a later day the safety check of the
 * visit is old: then one more pack goes once somebody has asked whether anything is new, and anything else only by a professional.
 */
export function GivenToday() {
  const { bundle, input, assessment, session, isClosed } = useVisit();
  const { data } = useGiven(bundle.visitId);
  if (!data) return null;
  const standing = data.moves.filter(({ takenBack }) => takenBack === null);
  const agreed = assessment.plan.lines.filter(
    ({ shelfItemId, state }) => state !== 'waiting-for-signature' && input.visit.agreed?.items?.[shelfItemId] === 'agreed',
  );
  const isSameDay = input.visit.onDate === data.today;
  const open = (isSameDay ? agreed : []).filter(({ shelfItemId }) => !standing.some((move) => move.shelfItemId === shelfItemId));
  const isProfessional = session.member.roles.some((role) => role === 'hygienist' || role === 'dentist');
  if (agreed.length === 0 && standing.length === 0) return null;
  const counted = open.filter(({ shelfItemId }) => data.counted.some((item) => item.shelfItemId === shelfItemId));
  const uncounted = open.filter((line) => !counted.includes(line));
  return (
    <section aria-label="Given today" className="given">
      <h3>Given</h3>
      <ul className="plain-list">
        {standing.map((move) => (
          <li key={move.id} data-given={move.shelfItemId}>
            {shelfName(input.practice.shelf, move.shelfItemId)}: {sayPacks(-move.quantity)}, {sayLot(move)}{' '}
            <TakeBack move={move} about={shelfName(input.practice.shelf, move.shelfItemId)} />
          </li>
        ))}
        {counted.map(({ shelfItemId, name }, i) => (
          <GiveLine key={shelfItemId} id={shelfItemId} name={name} view={data} isNext={i === 0} />
        ))}
      </ul>
      {uncounted.length > 0 && <p className="small">Not counted, so no pack is booked: {uncounted.map(({ name }) => name).join('; ')}.</p>}
      {!isSameDay && isClosed && (
        <Refills visitId={bundle.visitId} counted={data.counted} isDentist={session.member.roles.includes('dentist')} />
      )}
      {isProfessional && (
        <GiveOther
          view={data}
          label={isSameDay ? 'give something that the plan does not hold' : 'give something on a later day'}
          inPlan={isSameDay ? assessment.plan.lines.map(({ shelfItemId }) => shelfItemId) : []}
        />
      )}
    </section>
  );
}

interface GiveLineProps {
  readonly id: string;
  readonly name: string;
  readonly view: GivenView;
  readonly isNext: boolean;
}

/** One press gives a pack of the proposed lot. Another lot is one step away, for the pack that is in the hand. */
function GiveLine({ id, name, view, isNext }: GiveLineProps) {
  const { give, isSending, problem } = useGive();
  const lots = view.counted.find(({ shelfItemId }) => shelfItemId === id)?.lots ?? [];
  const proposed = allocate(lots, 1, view.today);
  const others = lots.filter((lot) => !isExpired(lot, view.today)).slice(1);
  if (!proposed.ok) {
    return (
      <li>
        {name}: <span className="unknown">{proposed.reason === 'expired' ? 'every pack is past its last day' : 'no pack left'}</span>
      </li>
    );
  }
  const [first] = proposed.takes;
  return (
    <li>
      <button
        type="button"
        className="action"
        data-give={id}
        aria-keyshortcuts={isNext ? 'v' : undefined}
        disabled={isSending}
        onClick={() => give({ shelfItemId: id })}
      >
        {isNext && <Key>v</Key>} Given today: {name}
        {first && <span className="aside block">{sayLot(first)}</span>}
      </button>{' '}
      {others.length > 0 && (
        <OpenForm
          label="another lot"
          about={name}
          form={(close) => <LotChoice lots={others} onGive={(lot) => give({ shelfItemId: id, lot })} onLeave={() => close()} />}
        />
      )}
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </li>
  );
}

function LotChoice({
  lots,
  onGive,
  onLeave,
}: {
  readonly lots: readonly LotStock[];
  readonly onGive: (lot: Lot) => void;
  readonly onLeave: () => void;
}) {
  const [chosen, setChosen] = useState('0');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const lot = lots[Number(chosen)];
    if (lot) onGive({ lot: lot.lot, expiry: lot.expiry });
  };
  return (
    <form noValidate onSubmit={submit} aria-label="Another lot" className="stock-form">
      <SelectLine
        label="The pack says"
        value={chosen}
        options={lots.map((lot, i) => ({ id: String(i), label: sayLot(lot) }))}
        onChange={setChosen}
      />
      <div className="actions">
        <button type="submit" className="action primary">
          Given from this lot
        </button>
        <button type="button" className="action" onClick={onLeave}>
          Leave
        </button>
      </div>
    </form>
  );
}

interface GiveOtherProps {
  readonly view: GivenView;
  readonly label: string;
  readonly inPlan: readonly string[];
}

/** Something counted that is not offered by itself, with a reason. Rules are looked at when it is given. */
function GiveOther({ view, label, inPlan }: GiveOtherProps) {
  const { input } = useVisit();
  const items = view.counted.filter(({ shelfItemId, lots }) => !inPlan.includes(shelfItemId) && allocate(lots, 1, view.today).ok);
  if (items.length === 0) return null;
  const options = items.map(({ shelfItemId }) => ({ id: shelfItemId, label: shelfName(input.practice.shelf, shelfItemId) }));
  return <OpenForm label={label} form={(close) => <OtherForm label={label} options={options} close={close} />} />;
}

function OtherForm({
  label,
  options,
  close,
}: {
  readonly label: string;
  readonly options: readonly { readonly id: string; readonly label: string }[];
  readonly close: (said?: string) => void;
}) {
  const { give, problem } = useGive(() => close('Given.'));
  const [id, setId] = useState(options[0]?.id ?? '');
  return (
    <>
      <SelectLine label="Item" value={id} options={options} onChange={setId} />
      <ReasonForm
        about={capitalise(label)}
        saveWords="Given today"
        problem={problem}
        onGive={(reason) => give({ shelfItemId: id, reason })}
        onLeave={() => close()}
      />
    </>
  );
}

/** What was just agreed is on the record before anything is given on it. */
function useGive(onGiven: () => void = () => undefined) {
  const { bundle } = useVisit();
  const client = useQueryClient();
  const queue = useSaveQueue();
  const { send, isSending, problem } = useSend();
  // One id until it is written, so that pressing again after a lost answer gives one pack.
  const [id, setId] = useState(() => crypto.randomUUID());
  const give = (body: Omit<GiveBody, 'id'>) =>
    void send(async () => {
      await queue.settled();
      await giveItem(bundle.visitId, { ...body, id });
      setId(crypto.randomUUID());
      await client.invalidateQueries({ queryKey: ['stock'] });
      onGiven();
    });
  return { give, isSending, problem };
}
