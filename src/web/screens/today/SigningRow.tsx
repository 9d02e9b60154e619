import type { SigningLine } from '../../../api/signing.ts';
import { formatDate, formatShortClock, plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';

interface SigningRowProps {
  readonly line: SigningLine;
  readonly row: number;
  readonly right: 'in person' | 'on an order' | 'none';
  readonly isRefusing: boolean;
  readonly onOpen: () => void;
  readonly onSign: () => void;
  readonly onRefuse: (reason: string) => void;
  readonly onAskRefusal: (isAsked: boolean) => void;
}

/** One item that waits: whose, what, why, with what cautions, who asked; then what can be done by one key. */
export function SigningRow({ line, row, right, isRefusing, onOpen, onSign, onRefuse, onAskRefusal }: SigningRowProps) {
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
      {isRefusing ? (
        <ReasonForm
          about={`Do not release ${item} for ${person}`}
          saveWords="Do not release"
          onGive={onRefuse}
          onLeave={() => onAskRefusal(false)}
        />
      ) : (
        <p className="actions">
          {right === 'in person' && (
            <>
              <button type="button" className="action" aria-keyshortcuts="s" onClick={onSign}>
                <Key>s</Key> Sign<span className="sr-only"> {`${item} for ${person}`}</span>
              </button>
              <button type="button" className="action" aria-keyshortcuts="r" onClick={() => onAskRefusal(true)}>
                <Key>r</Key> Do not release<span className="sr-only"> {`${item} for ${person}`}</span>
              </button>
            </>
          )}
          {right === 'on an order' && order && (
            <button type="button" className="action" aria-keyshortcuts="s" onClick={onSign}>
              <Key>s</Key> Sign on the order "{order.name}" of {formatDate(order.date)}
              <span className="sr-only"> {`${item} for ${person}`}</span>
            </button>
          )}
        </p>
      )}
    </li>
  );
}

const sayAge = ({ ageYears, ageMonths }: SigningLine) => (ageYears < 2 ? plural(ageMonths, 'month') : String(ageYears));
