import { AppError } from '../api/errors.ts';

import { coverOf, MOST_PACKS_SIGNED, packsCovered, type SignatureCover } from '../core/regimen/signatureCover.ts';
import type { SignedItem } from '../core/regimen/types.ts';
import { addMonthsToDate } from '../core/visit/calendar.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { listMovesOfVisit } from '../store/read/stock.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import type { StandingOrder } from '../store/storedJson.ts';
import { requireDate } from './checks.ts';

/** Our own: what was answered longer ago than this is asked anew at a visit before anything more is given. */
export const CHECK_HOLDS_MONTHS = 12;

type Covers = Pick<SignedItem, 'packs' | 'until'>;

interface CoverPlace {
  /** ISO local date of the visit. */
  readonly onDate: string;
  readonly today: string;
  /** The standing order that is signed on. */
  readonly order?: Pick<StandingOrder, 'name' | 'packs' | 'until'> | undefined;
}

/** For how many packs and to which day somebody signs. @throws AppError INPUT_INVALID, with the field */
export function requireCovers({ packs, until }: Covers, { onDate, today, order }: CoverPlace): Covers {
  if (packs !== undefined && !(Number.isInteger(packs) && packs >= 1 && packs <= MOST_PACKS_SIGNED))
    throw new AppError('INPUT_INVALID', `packs: a whole number from 1 to ${MOST_PACKS_SIGNED} is needed, not ${packs}.`);
  if (order && packsCovered({ packs }) > packsCovered(order))
    throw new AppError('INPUT_INVALID', `packs: the standing order ${order.name} covers at most ${packsCovered(order)}.`);
  if (until !== undefined) requireLastDay(until, { onDate, today, order });
  return { ...(packs !== undefined && { packs }), ...(until !== undefined && { until }) };
}

function requireLastDay(until: string, { onDate, today, order }: CoverPlace): void {
  requireDate('until', until);
  if (until < today) throw new AppError('INPUT_INVALID', `until: ${until} lies before today, ${today}.`);
  const checkEnds = addMonthsToDate(onDate, CHECK_HOLDS_MONTHS);
  if (until >= checkEnds)
    throw new AppError(
      'INPUT_INVALID',
      `until: no pack goes by the answers of this visit from ${checkEnds} on, ${CHECK_HOLDS_MONTHS} months after it. Name a day before that.`,
    );
  if (order?.until !== undefined && until > order.until)
    throw new AppError('INPUT_INVALID', `until: the standing order ${order.name} ends on ${order.until}.`);
}

interface SignaturePlace {
  readonly visitId: string;
  readonly today: string;
}

/** How far a signature of a visit still goes today, by the stock book and by the standing order that it was given on. */
export async function findCover(
  db: Db,
  scope: SiteScope,
  signature: Omit<SignedItem, 'override'>,
  { visitId, today }: SignaturePlace,
): Promise<SignatureCover> {
  const given = await countGiven(db, scope, visitId, signature.shelfItemId);
  return coverOf(signature, { given, today, orderHolds: await orderHolds(db, scope, signature, today) });
}

/** Packs of an item that were given at or after a visit, and not taken back. */
export async function countGiven(db: Db, scope: SiteScope, visitId: string, shelfItemId: string): Promise<number> {
  const standing = (await listMovesOfVisit(db, scope, visitId)).filter((m) => m.takenBack === null && m.shelfItemId === shelfItemId);
  return -standing.reduce((sum, { quantity }) => sum + quantity, 0);
}

async function orderHolds(db: Db, scope: SiteScope, { standingOrder }: Pick<SignedItem, 'standingOrder'>, today: string): Promise<boolean> {
  if (!standingOrder) return true;
  const { name, date } = standingOrder;
  const order = (await listCatalog(db, scope, 'standing-order')).find(({ body }) => body.name === name && body.date === date)?.body;
  return order !== undefined && order.withdrawn !== true && (order.until === undefined || today <= order.until);
}
