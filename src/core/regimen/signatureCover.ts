import type { SignedBy, SignedItem } from './types.ts';

type Covers = Pick<SignedItem, 'packs' | 'until'>;

/** More packs than this on one signature is a slip of the finger. Ours. */
export const MOST_PACKS_SIGNED = 100;

/** How far a signature goes on a day. */
export interface SignatureCover {
  /** Packs that it covers in all, those given among them. */
  readonly packs: number;
  /** Packs of the visit that were given, by whom ever. */
  readonly given: number;
  /** Packs that may still go on it; 0 once it is over. */
  readonly left: number;
  /** Why nothing more goes on it; null = something does. */
  readonly over: 'packs' | 'until' | 'order' | null;
}

interface CoverPlace {
  readonly given: number;
  /** ISO local date. */
  readonly today: string;
  /** The standing order that it was given on still holds; true for a signature in person. */
  readonly orderHolds: boolean;
}

/** A signature that says nothing of packs covers one: nobody said more. */
export const packsCovered = ({ packs = 1 }: Covers): number => packs;

/** Whether a signature holds on a day; without a last day it does. */
export const holdsOn = ({ until }: Covers, today: string): boolean => until === undefined || today <= until;

/** How far a signature goes today: no pack beyond its number, none after its last day, none once its standing order has ended. */
export function coverOf(signature: Covers, { given, today, orderHolds }: CoverPlace): SignatureCover {
  const packs = packsCovered(signature);
  const over = !holdsOn(signature, today) ? 'until' : !orderHolds ? 'order' : given >= packs ? 'packs' : null;
  return { packs, given, left: over === null ? packs - given : 0, over };
}

/** "one pack in all, no last day", "3 packs in all, to 1 February 2027"; the date in the reader's way. */
export function sayCovers(covers: Covers, sayDate: (isoDate: string) => string = (date) => date): string {
  const packs = packsCovered(covers);
  return `${packs === 1 ? 'one pack' : `${packs} packs`} in all, ${covers.until === undefined ? 'no last day' : `to ${sayDate(covers.until)}`}`;
}

/** "2 left", "none left" */
export const sayLeft = (left: number): string => (left === 0 ? 'none left' : `${left} left`);

/** Why a further pack waits for a new signature, as a clause; `null` = nobody has signed. */
export function sayOver(
  signed: SignedBy | null,
  over: SignatureCover['over'],
  sayDate: (isoDate: string) => string = (date) => date,
): string {
  if (!signed || over === null) return 'nobody has signed for it';
  if (over === 'until') return `the signature of ${signed.name} held to ${sayDate(signed.until ?? '')}`;
  if (over === 'order') return `the standing order "${signed.standingOrder?.name ?? ''}" that it was signed on has ended`;
  const packs = packsCovered(signed);
  return packs === 1
    ? `${signed.name} signed for one pack, and it was given`
    : `${signed.name} signed for ${packs} packs, and they were given`;
}
