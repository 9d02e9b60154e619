import { isExpired, isSameLot, lotKey } from '../lots.ts';
import type { Lot, LotStock } from '../types.ts';
import type { ShelfEntry } from './formatShelf.ts';
import { CellReader, type FieldProblem } from './readItem.ts';
import { type ReadLot, readLot } from './readLot.ts';
import type { LineProblem, TableLot } from './types.ts';

export interface LotPlace {
  readonly entry: ShelfEntry | undefined;
  /** Lots of the same item in lines above. */
  readonly before: readonly TableLot[];
}

/** The lot of a line, against the lots above it and in the book; what is wrong, or has to be asked, goes to the problems. */
export function readTableLot(
  { line, cells }: { readonly line: number; readonly cells: Readonly<Record<string, string>> },
  place: LotPlace,
  { today, problems }: { readonly today: string; readonly problems: LineProblem[] },
): TableLot | undefined {
  const read = new CellReader(cells);
  const found = readLot(read, cells);
  const asked = found && askAboutLot(found, place);
  if (asked) read.fail(asked.field, asked.says);
  problems.push(...read.problems.map((problem) => ({ line, ...problem })));
  if (!found || asked) return undefined;
  const same = place.entry?.lots?.find((lot) => isSameLot(lot, found.lot));
  // "0" without a lot says that none is left; an item that nobody counts does not become counted by it.
  if (!same && found.packs === 0) return undefined;
  const lot = same ? { lot: same.lot, expiry: same.expiry } : found.lot;
  return { line, ...lot, packs: found.packs, there: same?.quantity ?? null, isExpired: isExpired(lot, today) };
}

/** The same lot twice, or with two last days. */
function askAboutLot({ lot }: ReadLot, { entry, before }: LotPlace): FieldProblem | undefined {
  const twice = before.find((other) => isSameLot(other, lot));
  if (twice) {
    const says = `${sayLot(lot)} stands in line ${twice.line} already. Are these the same packs? Count each lot once, in one line`;
    return { field: 'lot', says };
  }
  if (lot.lot === null) return undefined;
  const others: readonly Lot[] = [...before, ...(entry?.lots ?? ([] as readonly LotStock[]))];
  const other = others.find((o) => lotKey(o.lot) === lotKey(lot.lot) && o.expiry !== lot.expiry);
  return (
    other && {
      field: 'last day',
      says: `lot ${other.lot} has ${other.expiry ?? 'no date'} ${before.some((b) => b === other) ? 'above' : 'in the book'}. One of the two is misread`,
    }
  );
}

const sayLot = ({ lot }: Lot): string => (lot === null ? 'a lot without a number and with this last day' : `lot ${lot}`);
