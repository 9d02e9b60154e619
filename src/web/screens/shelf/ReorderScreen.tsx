import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import { listReorder, type ReorderLine } from '../../../core/shelf/listReorder.ts';
import { type RulesView, saveSettings, useRules, useShelf } from '../../data/queries.ts';
import { useStock } from '../../data/stockQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, formatNumber, plural } from '../../format.ts';
import { TextLine } from '../../parts/fields.tsx';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { parsePacks } from './ReceiveForm.tsx';

/** What is at its minimum, or will be before an order arrives. On paper it is the list to order from. */
export function ReorderScreen({ session }: { readonly session: SessionView }) {
  const shelf = useShelf();
  const stock = useStock();
  if (!shelf.data) return <LoadState query={shelf} what="the shelf" />;
  if (!stock.data) return <LoadState query={stock} what="the stock" />;
  const { today, leadDays, items: counted } = stock.data;
  const lines = listReorder({ items: shelf.data.map(({ item }) => item), counted, today, leadDays: leadDays ?? undefined });
  return (
    <>
      <h1>What to order</h1>
      <p className="opening">{sayOpening(lines.length, counted.length)}</p>
      <p>
        {formatDate(today)}.{' '}
        {leadDays === null
          ? 'How long an order takes is not set: stock is looked at as it is today.'
          : `An order takes ${plural(leadDays, 'day')}; what expires before it is there does not count.`}
      </p>
      <p className="visit-links page-links">
        <Link to="/shelf">Shelf</Link>
        {lines.length > 0 && (
          <a href="/api/stock/reorder.csv" download>
            As a table (CSV)
          </a>
        )}
      </p>
      {session.member.roles.includes('lead') && (
        <p>
          <OpenForm
            label={leadDays === null ? 'say how long an order takes' : 'change how long an order takes'}
            form={(close) => <LeadForm leadDays={leadDays} close={close} />}
          />
        </p>
      )}
      {lines.length > 0 && <Lines lines={lines} />}
    </>
  );
}

function sayOpening(toOrder: number, counted: number): string {
  if (counted === 0) return 'Nothing is counted yet. Enter the packs of an item, and its minimum, to have it here in time.';
  if (toOrder === 0) return `Nothing to order among the ${plural(counted, 'item')} that are counted.`;
  return `${plural(toOrder, 'item')} to order, of ${formatNumber(counted)} that are counted.`;
}

function Lines({ lines }: { readonly lines: readonly ReorderLine[] }) {
  return (
    <table className="practice-table reorder">
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col">May be given</th>
          <th scope="col">Minimum</th>
          <th scope="col">Given in 30 days</th>
          <th scope="col">Order</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ item, usable, expiring, minimumLevel, perMonth, suggested }) => (
          <tr key={item.id}>
            <th scope="row">
              <Link to={`/shelf/${encodeURIComponent(item.id)}/stock`}>{item.name}</Link>
            </th>
            <td data-label="May be given">
              {formatNumber(usable)}
              {expiring > 0 && <span className="aside block">{expiring} of them expire before</span>}
            </td>
            <td data-label="Minimum">{minimumLevel ?? <span className="unknown">not set</span>}</td>
            <td data-label="Given in 30 days">{formatNumber(Number(perMonth.toFixed(1)))}</td>
            <td data-label="Order">{suggested === null ? <span className="unknown">yours to say</span> : plural(suggested, 'pack')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function LeadForm({ leadDays, close }: { readonly leadDays: number | null; readonly close: (said?: string) => void }) {
  const rules = useRules();
  if (!rules.data) return <LoadState query={rules} what="the settings" />;
  return <LeadFields leadDays={leadDays} rules={rules.data} close={close} />;
}

function LeadFields({
  leadDays,
  rules,
  close,
}: {
  readonly leadDays: number | null;
  readonly rules: RulesView;
  readonly close: (said?: string) => void;
}) {
  const client = useQueryClient();
  const [typed, setTyped] = useState(leadDays === null ? '' : String(leadDays));
  const [isTried, setTried] = useState(false);
  const { send, isSending, problem } = useSend();
  const days = parsePacks(typed);
  const isWrong = days === undefined || days > 365;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (isWrong) return;
    void send(async () => {
      await saveSettings({ ...rules.settings, reorderLeadDays: days }, rules.version);
      await Promise.all([['stock'], ['rules']].map((queryKey) => client.invalidateQueries({ queryKey })));
      close('Saved.');
    });
  };
  return (
    <form noValidate onSubmit={submit} aria-label="How long an order takes" className="stock-form">
      <TextLine
        label="From order to arrival"
        kind="number"
        unit="days"
        value={typed}
        problem={isTried && isWrong ? 'Whole days, up to 365.' : undefined}
        onChange={setTyped}
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
        <button type="button" className="action" onClick={() => close()}>
          Leave
        </button>
      </div>
    </form>
  );
}
