import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { SessionView } from '../../api/apiTypes.ts';
import type { VersionedShelfItem } from '../../api/bundles.ts';
import { leafletCurrency } from '../../core/leaflet/formatForLeaflet.ts';
import type { NeedKind, ShelfItem } from '../../core/regimen/types.ts';
import { countPacks } from '../../core/shelf/lots.ts';
import type { CountedItem } from '../../core/shelf/types.ts';
import { withStock } from '../../core/shelf/withStock.ts';
import { ApiError } from '../data/api.ts';
import { saveShelfItem, useShelf } from '../data/queries.ts';
import { useStock } from '../data/stockQueries.ts';
import { formatCents, plural } from '../format.ts';
import { firstNeed, NEED_ORDER, needWords } from '../needWords.ts';
import { parsePrice } from '../parsePrice.ts';
import { Key } from '../parts/Key.tsx';
import { Link } from '../parts/Link.tsx';
import { LoadState } from '../parts/LoadState.tsx';
import { useHashTarget } from '../parts/useHashTarget.ts';
import { useLetter } from '../parts/useLetter.ts';
import { goTo } from '../routing.ts';
import { RELEASE_WORDS } from './shelf/sayItem.ts';
import { sayLotsAside, sayPacks } from './shelf/sayStock.ts';

const ADD_KEY = 'a';
const goToNew = () => goTo('/shelf/new');
/** Where the form leads back to: the line of the item that was saved. */
export const lineOf = (itemId: string): string => `item-${itemId}`;

/** What the practice keeps, by the first need that each item meets. */
export function ShelfScreen({ session }: { readonly session: SessionView }) {
  const shelf = useShelf();
  const stock = useStock();
  const mayChange = session.member.roles.some((role) => role !== 'assistant');
  useHashTarget(shelf.data !== undefined && stock.data !== undefined);
  if (!shelf.data) return <LoadState query={shelf} what="the shelf" />;
  if (!stock.data) return <LoadState query={stock} what="the stock" />;
  const { today } = stock.data;
  const countedById = new Map(stock.data.items.map((item) => [item.shelfItemId, item]));
  const inStock = withStock(
    shelf.data.map(({ item }) => item),
    stock.data.items,
    { onDate: today },
  ).filter((item) => item.inStock).length;
  return (
    <>
      <h1>Shelf</h1>
      <p className="opening">
        {shelf.data.length === 0
          ? 'Nothing is on the shelf yet, so no product can be proposed: add what the practice keeps, one item at a time, with the pack in hand.'
          : `${inStock} of ${plural(shelf.data.length, 'item')} in stock. Only what is in stock, and safe for the person, is proposed.`}
      </p>
      {mayChange ? <AddItem /> : <p className="hint">A lead, a hygienist or a dentist adds and changes items.</p>}
      <p className="visit-links page-links">
        {shelf.data.length > 0 && <Link to="/shelf/reorder">What to order</Link>}
        {mayChange && <Link to="/shelf/table">Read a table (CSV)</Link>}
        <a href="/api/shelf.csv" download>
          The shelf as a table (CSV)
        </a>
      </p>
      {shelf.data.length > 0 && (
        <ShelfTable
          entries={shelf.data}
          countedById={countedById}
          today={today}
          mayChange={mayChange}
          currency={leafletCurrency(session.practice)}
        />
      )}
    </>
  );
}

/** A button, and one letter where single letters are keys. */
function AddItem() {
  const isSingle = useLetter(ADD_KEY, goToNew);
  return (
    <p className="actions">
      <button type="button" className="action" aria-keyshortcuts={isSingle ? ADD_KEY : undefined} onClick={goToNew}>
        {isSingle && <Key>{ADD_KEY}</Key>} Add an item
      </button>
    </p>
  );
}

function ShelfTable({
  entries,
  countedById,
  today,
  mayChange,
  currency,
}: {
  readonly entries: readonly VersionedShelfItem[];
  readonly countedById: ReadonlyMap<string, CountedItem>;
  readonly today: string;
  readonly mayChange: boolean;
  readonly currency: string | undefined;
}) {
  return (
    <table className="shelf">
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col">In stock</th>
          <th scope="col">Price{currency === undefined ? ', your currency' : `, ${currency}`}</th>
          <th scope="col">Released by</th>
          <th scope="col">Traits that rules look at</th>
          <th scope="col">
            <span className="sr-only">Change</span>
          </th>
        </tr>
      </thead>
      {groupByNeed(entries).map(([need, items]) => (
        <tbody key={need ?? 'none'}>
          <tr>
            <th scope="rowgroup" colSpan={6}>
              {need === undefined ? 'No need by itself: never proposed' : needWords(need)}
            </th>
          </tr>
          {items.map((entry) => (
            <ShelfRow
              key={`${entry.item.id} ${entry.version}`}
              entry={entry}
              counted={countedById.get(entry.item.id)}
              today={today}
              mayChange={mayChange}
            />
          ))}
        </tbody>
      ))}
    </table>
  );
}

/** Last stand those that meet no need by themselves. */
function groupByNeed(items: readonly VersionedShelfItem[]): readonly (readonly [NeedKind | undefined, readonly VersionedShelfItem[]])[] {
  const groups = [...NEED_ORDER, undefined].map((need) => [need, items.filter(({ item }) => firstNeed(item.meets) === need)] as const);
  return groups.filter(([, found]) => found.length > 0);
}

interface RowProps {
  readonly entry: VersionedShelfItem;
  /** Undefined = not counted: in stock is what somebody said. */
  readonly counted: CountedItem | undefined;
  readonly today: string;
  readonly mayChange: boolean;
}

/** Stock and price are changed in the line; everything else in a form of its own. */
function ShelfRow({ entry, counted, today, mayChange }: RowProps) {
  const { item, version } = entry;
  const client = useQueryClient();
  const [price, setPrice] = useState(item.priceCents === undefined ? '' : formatCents(item.priceCents));
  const [said, setSaid] = useState<{ readonly isProblem: boolean; readonly text: string } | null>(null);
  const save = async (changed: ShelfItem) => {
    setSaid({ isProblem: false, text: 'sending' });
    try {
      const saved = await saveShelfItem(changed, version);
      client.setQueryData<readonly VersionedShelfItem[]>(['shelf'], (list) =>
        list?.map((e) => (e.item.id === item.id ? { item: changed, version: saved.version } : e)),
      );
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setSaid({
        isProblem: true,
        text: error.status === 409 ? 'Changed elsewhere. Read again, then change it.' : `Not saved: ${error.message}`,
      });
      if (error.status === 409) void client.invalidateQueries({ queryKey: ['shelf'] });
    }
  };
  const cents = parsePrice(price);
  const isPriceChanged = cents !== undefined && cents !== item.priceCents;
  return (
    <tr>
      <th scope="row">
        <Link to={`/shelf/${encodeURIComponent(item.id)}/stock`}>{item.name}</Link>
      </th>
      <td data-label="In stock">
        {counted ? (
          <PacksOf counted={counted} today={today} />
        ) : (
          <label className="check">
            <input type="checkbox" checked={item.inStock} onChange={(event) => void save({ ...item, inStock: event.target.checked })} />
            <span className="sr-only">{item.name} in stock</span>
            <span className="aside">not counted</span>
          </label>
        )}
      </td>
      <td data-label="Price">
        <form
          className="price"
          onSubmit={(event) => {
            event.preventDefault();
            if (cents === undefined) setSaid({ isProblem: true, text: 'A price like 12.50 is needed.' });
            else if (isPriceChanged) void save({ ...item, priceCents: cents });
          }}
        >
          <input
            inputMode="decimal"
            aria-label={`Price of ${item.name}`}
            placeholder="not known"
            value={price}
            onChange={(event) => setPrice(event.target.value)}
          />
          {isPriceChanged && (
            <button type="submit" className="link">
              save
            </button>
          )}
        </form>
        {said && (
          <span role="status" className={said.isProblem ? 'problem' : 'hint'}>
            {said.text}
          </span>
        )}
      </td>
      <td data-label="Released by">{RELEASE_WORDS[item.release]}</td>
      <td data-label="Traits">
        {item.traits === undefined ? <span className="unknown">pack not checked</span> : item.traits.join(', ') || 'none of them'}
      </td>
      <td className="change-cell">
        {mayChange && (
          <Link to={`/shelf/${encodeURIComponent(item.id)}/change`} id={lineOf(item.id)}>
            change<span className="sr-only"> {item.name}</span>
          </Link>
        )}
      </td>
    </tr>
  );
}

function PacksOf({ counted: { lots }, today }: { readonly counted: CountedItem; readonly today: string }) {
  return (
    <>
      {sayPacks(countPacks(lots, today).usable)}
      {sayLotsAside(lots, today).map((says) => (
        <span key={says} className="aside block">
          {says}
        </span>
      ))}
    </>
  );
}
