import type { SigningLine } from '../../../api/signing.ts';
import { formatDate, formatShortClock, plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { type Covers, SignForm } from '../signing/SignForm.tsx';

interface SigningRowProps {
  readonly line: SigningLine;
  readonly row: number;
  readonly right: 'in person' | 'on an order' | 'none';
  /** The form that stands open under it. */
  readonly asks: 'reason' | 'covers' | null;
  readonly today: string;
  readonly problem: string | null;
  readonly onOpen: () => void;
  readonly onSign: (covers?: Covers) => void;
  readonly onRefuse: (reason: string) => void;
  readonly onAsk: (asks: 'reason' | 'covers' | null) => void;
}

/** One item that waits: whose, what, why, with what cautions, who asked; then what can be done by one key. */
export function SigningRow({ line, row, right, asks, today, problem, onOpen, onSign, onRefuse, onAsk }: SigningRowProps) {
  const { person, item, directions, because, level, cautions, notKnown } = line;
  const [order] = line.orders;
  return (
    <li data-signing={row}>
      <button type="button" className="signing-row" data-row onClick={onOpen}>
        <strong>
          {person}, {sayAge(line)}
        </strong>{' '}
        <span>
          {item}. {directions}.
        </span>
      </button>
      <div className="signing-why">
        <p>
          {because.join(' ')} Level: {level ?? <span className="unknown">not confirmed</span>}.{' '}
          {cautions.length > 0 && <>To check: {cautions.join(' ')} </>}
          {notKnown.length > 0 && (
            <>
              <span className="unknown">The safety check does not know:</span> {notKnown.join(', ')}.{' '}
            </>
          )}
          <span className="aside">
            Asked by {line.askedBy}, {formatDate(line.since)}, {formatShortClock(line.since)}; visit of {formatDate(line.onDate)},{' '}
            {line.isOpen ? 'open' : 'closed'}.
          </span>
        </p>
      </div>
      {asks === 'reason' && (
        <ReasonForm
          about={`Do not release ${item} for ${person}`}
          saveWords="Do not release"
          onGive={onRefuse}
          onLeave={() => onAsk(null)}
        />
      )}
      {asks === 'covers' && (
        <SignForm
          about={`Sign ${item} for ${person}`}
          limits={{ today, given: 0, order: right === 'on an order' ? order : undefined }}
          problem={problem}
          onSign={onSign}
          onLeave={() => onAsk(null)}
        />
      )}
      {asks === null && <RowActions line={line} right={right} onSign={() => onSign()} onAsk={onAsk} />}
    </li>
  );
}

const sayAge = ({ ageYears, ageMonths }: SigningLine) => (ageYears < 2 ? plural(ageMonths, 'month') : String(ageYears));

/** What can be done by one key. A signature that is given by one key covers one pack and has no last day, which is said. */
function RowActions({ line, right, onSign, onAsk }: Pick<SigningRowProps, 'line' | 'right' | 'onAsk'> & { readonly onSign: () => void }) {
  const { item, person, isForHome } = line;
  const [order] = line.orders;
  const about = <span className="sr-only"> {`${item} for ${person}`}</span>;
  const isOnOrder = right === 'on an order' && order !== undefined;
  if (right !== 'in person' && !isOnOrder) return null;
  return (
    <p className="actions">
      <button type="button" className="action" aria-keyshortcuts="s" onClick={onSign}>
        <Key>s</Key> {isOnOrder ? `Sign on the order "${order.name}" of ${formatDate(order.date)}` : 'Sign'}
        {isForHome && (isOnOrder ? ', for one pack' : ' for one pack, no last day')}
        {about}
      </button>
      {isForHome && (
        <button type="button" className="action" aria-keyshortcuts="p" onClick={() => onAsk('covers')}>
          <Key>p</Key> Sign for more packs, or to a day{about}
        </button>
      )}
      {right === 'in person' && (
        <button type="button" className="action" aria-keyshortcuts="r" onClick={() => onAsk('reason')}>
          <Key>r</Key> Do not release{about}
        </button>
      )}
    </p>
  );
}
