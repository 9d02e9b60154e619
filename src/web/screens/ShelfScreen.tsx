import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { VersionedShelfItem } from '../../api/bundles.ts';
import type { NeedKind, ShelfItem } from '../../core/regimen/types.ts';
import { ApiError } from '../data/api.ts';
import { saveShelfItem, useShelf } from '../data/queries.ts';
import { capitalise, formatCents, plural } from '../format.ts';
import { LoadState } from '../parts/LoadState.tsx';

const RELEASE_WORDS: Readonly<Record<ShelfItem['release'], string>> = {
  anyone: 'anyone on the team',
  prescription: "needs a prescriber's signature",
  dentist: 'dentist only',
};

/** What the practice keeps, by the first need that each item meets. */
export function ShelfScreen() {
  const shelf = useShelf();
  if (!shelf.data) return <LoadState query={shelf} what="the shelf" />;
  const groups = groupByNeed(shelf.data);
  const inStock = shelf.data.filter(({ item }) => item.inStock).length;
  return (
    <>
      <h1>Shelf</h1>
      <p className="opening">
        {inStock} of {plural(shelf.data.length, 'item')} in stock. Only what is in stock, and safe for the person, is proposed.
      </p>
      <table className="shelf">
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">In stock</th>
            <th scope="col">Price</th>
            <th scope="col">Released by</th>
            <th scope="col">Traits that rules look at</th>
          </tr>
        </thead>
        {groups.map(([need, items]) => (
          <tbody key={need}>
            <tr>
              <th scope="rowgroup" colSpan={5}>
                {needWords(need)}
              </th>
            </tr>
            {items.map((entry) => (
              <ShelfRow key={`${entry.item.id} ${entry.version}`} entry={entry} />
            ))}
          </tbody>
        ))}
      </table>
    </>
  );
}

/** An item that meets several needs stands under the first of these. */
const NEED_ORDER: readonly NeedKind[] = [
  'fluoride-base',
  'fluoride-extra',
  'professional-fluoride',
  'antimicrobial',
  'acid-control',
  'sweetener',
  'calcium-phosphate',
  'saliva',
  'sealing',
  'diet',
  'acid-wear-advice',
  'referral',
];

function groupByNeed(items: readonly VersionedShelfItem[]): readonly (readonly [NeedKind, readonly VersionedShelfItem[]])[] {
  const needOf = ({ item }: VersionedShelfItem) => NEED_ORDER.find((need) => item.meets.includes(need)) ?? item.meets[0] ?? 'referral';
  return NEED_ORDER.map((need) => [need, items.filter((entry) => needOf(entry) === need)] as const).filter(([, found]) => found.length > 0);
}

export const needWords = (need: string): string => capitalise(need.replaceAll('-', ' '));

/** Stock and price are the practice's to change; what an item is, and who may release it, is not changed here. */
function ShelfRow({ entry }: { readonly entry: VersionedShelfItem }) {
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
      <th scope="row">{item.name}</th>
      <td data-label="In stock">
        <label className="check">
          <input type="checkbox" checked={item.inStock} onChange={(event) => void save({ ...item, inStock: event.target.checked })} />
          <span className="sr-only">{item.name} in stock</span>
        </label>
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
    </tr>
  );
}

/** Cents from "12.50", "12,50" or "12"; undefined for anything else. */
export function parsePrice(typed: string): number | undefined {
  const match = /^\s*(\d{1,6})(?:[.,](\d{1,2}))?\s*$/.exec(typed);
  return match ? Number(match[1]) * 100 + Number((match[2] ?? '').padEnd(2, '0')) : undefined;
}
