import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { StandingOrderView } from '../../../api/signing.ts';
import { shelfName } from '../../content.ts';
import { useShelf } from '../../data/queries.ts';
import { useStandingOrders, withdrawStandingOrder, writeStandingOrder } from '../../data/signingQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate } from '../../format.ts';
import { TextLine, TicksLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { LoadState } from '../../parts/LoadState.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { parseBirthday as parseDay } from '../findPeople.ts';

/** Items that a dentist lets hygienists release in her or his name, from a date on. A dentist writes and withdraws; the others read. */
export function StandingOrders({ session }: { readonly session: SessionView }) {
  const orders = useStandingOrders();
  const shelf = useShelf();
  const isDentist = session.member.roles.includes('dentist');
  const nameOf = (id: string) =>
    shelfName(
      (shelf.data ?? []).map(({ item }) => item),
      id,
    );
  return (
    <section id="standing-orders" tabIndex={-1} aria-label="Standing orders">
      <h2>Standing orders</h2>
      <p>
        With a named and dated order of a dentist, a hygienist may sign the items on it. It never covers an item that a rule stops, or one
        that waits for a question to be asked. Local law says whether such an order is allowed.
      </p>
      {!orders.data ? (
        <LoadState query={orders} what="the standing orders" />
      ) : orders.data.length === 0 ? (
        <p className="hint">There is none.</p>
      ) : (
        <table className="practice-table">
          <thead>
            <tr>
              <th scope="col">Order</th>
              <th scope="col">Items</th>
              <th scope="col">Written by</th>
              <th scope="col">Holds</th>
              <th scope="col">
                <span className="sr-only">Withdraw</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {orders.data.map((order) => (
              <tr key={order.id}>
                <th scope="row">
                  {order.name}, {formatDate(order.date)}
                </th>
                <td data-label="Items">{order.shelfItemIds.map(nameOf).join('; ')}</td>
                <td data-label="Written by">{order.signedBy}</td>
                <td data-label="Holds">{sayHolds(order, session.today)}</td>
                <td>{isDentist && !order.withdrawnBy && <Withdraw order={order} />}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {isDentist ? (
        <div className="actions">
          <OpenForm label="Write an order" isAction form={(close) => <OrderForm today={session.today} close={close} />} />
        </div>
      ) : (
        <p className="hint">A dentist writes and withdraws orders.</p>
      )}
    </section>
  );
}

function sayHolds(order: StandingOrderView, today: string): string {
  const { date, until, packs = 1, holds, withdrawnBy } = order;
  if (withdrawnBy) return `withdrawn by ${withdrawnBy.name}, ${formatDate(withdrawnBy.at)}`;
  if (holds)
    return `${until ? `to ${formatDate(until)}` : 'until it is withdrawn'}; for ${packs === 1 ? 'one pack' : `up to ${packs} packs`} each`;
  return date > today ? `from ${formatDate(date)}` : `ended ${until ? formatDate(until) : ''}`;
}

function Withdraw({ order }: { readonly order: StandingOrderView }) {
  const client = useQueryClient();
  const sending = useSend();
  const withdraw = () =>
    void sending.send(async () => {
      await withdrawStandingOrder(order);
      await Promise.all(['standing-orders', 'signing'].map((key) => client.invalidateQueries({ queryKey: [key] })));
    });
  return (
    <>
      <button type="button" className="link" disabled={sending.isSending} onClick={withdraw}>
        withdraw<span className="sr-only"> {order.name}</span>
      </button>
      {sending.problem && (
        <span className="problem" role="alert">
          {sending.problem}
        </span>
      )}
    </>
  );
}

function OrderForm({ today, close }: { readonly today: string; readonly close: (said?: string) => void }) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const shelf = useShelf();
  const [name, setName] = useState('');
  const [from, setFrom] = useState(today.replaceAll('-', ''));
  const [until, setUntil] = useState('');
  const [packs, setPacks] = useState('');
  const [items, setItems] = useState<readonly string[]>([]);
  const [isTried, setTried] = useState(false);
  const sending = useSend();
  const date = parseDay(from);
  const lastDay = until.trim() === '' ? undefined : parseDay(until);
  const all = {
    name: name.trim() === '' ? 'It needs a name.' : undefined,
    date: date === undefined ? NO_DAY : undefined,
    until:
      until.trim() !== '' && lastDay === undefined
        ? NO_DAY
        : date && lastDay && lastDay < date
          ? 'It lies before the first day.'
          : undefined,
    packs:
      packs.trim() !== '' && !/^\s*([1-9]\d?|100)\s*$/.test(packs) ? 'A whole number from 1 to 100, or nothing for one pack.' : undefined,
    items: items.length === 0 ? 'Tick at least one item.' : undefined,
  };
  const count = Object.values(all).filter(Boolean).length;
  const problems: Partial<typeof all> = isTried ? all : {};
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (count > 0 || !date) return focusFirstProblem(form.current);
    void sending.send(async () => {
      await writeStandingOrder({
        name: name.trim(),
        date,
        ...(lastDay && { until: lastDay }),
        ...(packs.trim() !== '' && { packs: Number(packs) }),
        shelfItemIds: [...items],
      });
      await Promise.all(['standing-orders', 'signing'].map((key) => client.invalidateQueries({ queryKey: [key] })));
      close(`${name.trim()} is written.`);
    });
  };
  const bound = (shelf.data ?? []).map(({ item }) => item).filter((item) => item.release !== 'anyone');
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="New standing order">
      <TextLine label="Name of the order" value={name} problem={problems.name} onChange={setName} />
      <TextLine
        label="First day"
        kind="number"
        value={from}
        problem={problems.date}
        hint="Year, month and day, like 20270307."
        onChange={setFrom}
      />
      <TextLine
        label="Last day"
        kind="number"
        value={until}
        problem={problems.until}
        hint="Empty: until it is withdrawn."
        onChange={setUntil}
      />
      <TextLine
        label="Packs for one person"
        kind="number"
        value={packs}
        problem={problems.packs}
        hint="How many packs a signature on this order may cover in all. Empty: one pack."
        onChange={setPacks}
      />
      <TicksLine
        label="Items"
        options={bound.map(({ id, name: label }) => ({ id, label }))}
        ticked={items}
        problem={problems.items}
        onChange={setItems}
      />
      <SaveBar saving={sending} problemCount={isTried ? count : 0} saveWords="Write and sign the order" onLeave={() => close()} />
    </form>
  );
}

const NO_DAY = 'This is no day of the calendar. Year, month and day, like 20270307.';
