import type { SwabLot } from '../reading/types.ts';

/**
 * Whether a lot was compared with the one before it: `first` = there is none before it; `compared`; `went-on` = somebody gave a reason to
 * use it without; `not-compared` = nobody has. A comparison with too few pairs to say is none.
 */
export type LotStanding = 'first' | 'compared' | 'went-on' | 'not-compared';

/** @param lots  every lot of the practice; the one that lasts less long is the one before */
export function lotStanding(lot: SwabLot, lots: readonly SwabLot[]): LotStanding {
  if (lot.compared !== undefined && lot.compared.verdict !== 'too-few') return 'compared';
  const isBefore = (other: SwabLot) => other.id !== lot.id && other.expiresOn < lot.expiresOn;
  // The old lot of a comparison was in use before comparisons began.
  const isOldOfOne = lots.some(({ compared }) => compared?.lotId === lot.id);
  if (isOldOfOne || !lots.some(isBefore)) return 'first';
  return lot.uncompared === undefined ? 'not-compared' : 'went-on';
}
