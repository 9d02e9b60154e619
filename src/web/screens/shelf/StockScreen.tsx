import { useQueryClient } from '@tanstack/react-query';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { MoveView } from '../../../api/stock.ts';
import { packDays } from '../../../core/regimen/choice/packDays.ts';
import type { ShelfItem } from '../../../core/regimen/types.ts';
import { countPacks, isExpired } from '../../../core/shelf/lots.ts';
import type { LotStock } from '../../../core/shelf/types.ts';
import { useShelf } from '../../data/queries.ts';
import { takeBackMove, useMoves, useStock } from '../../data/stockQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, formatNumber } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { LastOnPaper, rowOnPaper } from '../../parts/OnPaper.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { LotForm } from './LotForm.tsx';
import { ReceiveForm } from './ReceiveForm.tsx';
import { sayMove, sayPacks } from './sayStock.ts';

/** Who may put the book right, or take back what somebody else entered. */
export const mayCorrectStock = ({ member }: SessionView): boolean => member.roles.some((role) => role !== 'assistant');

/** One item: its lots, what came in, and everything that came and went. */
export function StockScreen({ itemId, session }: { readonly itemId: string; readonly session: SessionView }) {
  const shelf = useShelf();
  const stock = useStock();
  const moves = useMoves(itemId);
  if (!shelf.data) return <LoadState query={shelf} what="the shelf" />;
  if (!stock.data) return <LoadState query={stock} what="the stock" />;
  if (!moves.data) return <LoadState query={moves} what="the stock book" />;
  const item = shelf.data.find((entry) => entry.item.id === itemId)?.item;
  if (!item) return <h1>There is no such item on the shelf.</h1>;
  const counted = stock.data.items.find(({ shelfItemId }) => shelfItemId === itemId);
  const { today } = stock.data;
  return (
    <>
      <h1>{item.name}</h1>
      <p className="opening">{counted ? sayOpening(item, counted.lots, today) : sayNotCounted(item)}</p>
      <p className="visit-links page-links">
        <Link to="/shelf">Shelf</Link>
        {mayCorrectStock(session) && <Link to={`/shelf/${encodeURIComponent(itemId)}/change`}>Change the item</Link>}
      </p>
      <div className="actions">
        <OpenForm label="Packs came in" isAction form={(close) => <ReceiveForm itemId={itemId} onDone={close} />} />
      </div>
      {counted && <Lots itemId={itemId} lots={counted.lots} today={today} mayCorrect={mayCorrectStock(session)} />}
      {moves.data.length > 0 && <Moves moves={moves.data} mayCorrect={mayCorrectStock(session)} />}
    </>
  );
}

function sayOpening(item: ShelfItem, lots: readonly LotStock[], today: string): string {
  const { usable, expired, undated } = countPacks(lots, today);
  const days = packDays(item, item.use);
  return [
    usable === 0 ? 'No pack may be given.' : `${sayPacks(usable)} may be given.`,
    expired > 0 ? `${sayPacks(expired)} past the last day: never given.` : '',
    undated > 0 ? `The last day of ${undated} is not known; they go last.` : '',
    days === undefined ? '' : `A pack lasts about ${formatNumber(Math.floor(days + 1e-9))} days.`,
    item.minimumLevel === undefined ? 'No minimum is set.' : `To order at ${item.minimumLevel}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

const sayNotCounted = ({ inStock }: ShelfItem) =>
  `Not counted: ${inStock ? 'in stock' : 'not in stock'}, as somebody said. From the first packs that you enter, the plan goes by the count.`;

interface LotsProps {
  readonly itemId: string;
  readonly lots: readonly LotStock[];
  readonly today: string;
  readonly mayCorrect: boolean;
}

function Lots({ itemId, lots, today, mayCorrect }: LotsProps) {
  if (lots.length === 0) return null;
  return (
    <section aria-label="Lots">
      <h2>Lots</h2>
      <p>The first in the list is given first.</p>
      <table className="practice-table">
        <thead>
          <tr>
            <th scope="col">Lot</th>
            <th scope="col">Last day</th>
            <th scope="col">Packs</th>
            <th scope="col">
              <span className="sr-only">Put right</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {[...lots.filter((lot) => !isExpired(lot, today)), ...lots.filter((lot) => isExpired(lot, today))].map((lot) => (
            <tr key={`${lot.lot} ${lot.expiry} ${lot.quantity}`}>
              <th scope="row">{lot.lot ?? <span className="unknown">not noted</span>}</th>
              <td data-label="Last day">
                {lot.expiry === null ? <span className="unknown">not known</span> : formatDate(lot.expiry)}
                {isExpired(lot, today) && <span className="problem">, past</span>}
              </td>
              <td data-label="Packs">{formatNumber(lot.quantity)}</td>
              <td>
                {mayCorrect && (
                  <OpenForm
                    label="put right"
                    about={`lot ${lot.lot ?? 'not noted'}`}
                    form={(close) => <LotForm itemId={itemId} lot={lot} isExpired={isExpired(lot, today)} onDone={close} />}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Moves({ moves, mayCorrect }: { readonly moves: readonly MoveView[]; readonly mayCorrect: boolean }) {
  return (
    <section aria-label="What came and went">
      <h2>What came and went</h2>
      <LastOnPaper count={moves.length} one="entry" />
      <table className="practice-table">
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What</th>
            <th scope="col">Packs</th>
            <th scope="col">Lot</th>
            <th scope="col">By</th>
            <th scope="col">
              <span className="sr-only">Take back</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {moves.map((move, at) => (
            <tr key={move.id} className={rowOnPaper(at)}>
              <th scope="row">{formatDate(move.onDate)}</th>
              <td data-label="What">
                {move.visitId === null ? sayMove(move) : <Link to={`/visits/${move.visitId}`}>{sayMove(move)}</Link>}
                {move.note !== null && <span className="aside block">{move.note}</span>}
                {move.takenBack !== null && <span className="unknown block">taken back, not counted: {move.takenBack}</span>}
              </td>
              <td data-label="Packs">{move.takenBack === null ? sayCount(move.quantity) : <s>{sayCount(move.quantity)}</s>}</td>
              <td data-label="Lot">{move.lot ?? <span className="unknown">not noted</span>}</td>
              <td data-label="By">{move.by}</td>
              <td>{move.takenBack === null && (move.isMineToday || mayCorrect) && <TakeBack move={move} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const sayCount = (quantity: number) => (quantity > 0 ? `+${formatNumber(quantity)}` : `−${formatNumber(-quantity)}`);

/** One press for one's own entry of the day, otherwise with a reason. */
export function TakeBack({ move, about = sayMove(move) }: { readonly move: MoveView; readonly about?: string }) {
  const client = useQueryClient();
  const { send, isSending, problem } = useSend();
  const takeBack = (reason?: string) =>
    void send(async () => {
      await takeBackMove(move.id, reason);
      await client.invalidateQueries({ queryKey: ['stock'] });
    });
  if (!move.isMineToday) {
    return (
      <OpenForm
        label="take back"
        about={about}
        form={(close) => (
          <ReasonForm about={`Take back: ${about}`} saveWords="Take back" problem={problem} onGive={takeBack} onLeave={() => close()} />
        )}
      />
    );
  }
  return (
    <>
      <button type="button" className="link" disabled={isSending} onClick={() => takeBack()}>
        take back<span className="sr-only"> {about}</span>
      </button>
      {problem && (
        <span className="problem block" role="alert">
          {problem}
        </span>
      )}
    </>
  );
}
