import { sql } from 'kysely';
import { sumLots } from '../../core/shelf/lots.ts';
import type { CountedItem, LotStock } from '../../core/shelf/types.ts';
import { engineKindOf } from '../dialect.ts';
import type { Db, StockMoveTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import { type CatalogEntry, findCatalogEntry } from './catalog.ts';

export type Move = Omit<StockMoveTable, 'siteId'>;

/** Every item with a move that counts, with what is left of its lots. */
export async function listCountedItems(db: Db, scope: SiteScope): Promise<CountedItem[]> {
  const rows = await db
    .selectFrom('stockMove')
    .select(['shelfItemId', 'lot', 'expiry', sql<number>`cast(sum(quantity) as bigint)`.as('quantity')])
    .where('siteId', '=', scope.siteId)
    .where('takenBack', 'is', null)
    .groupBy(['shelfItemId', 'lot', 'expiry'])
    .orderBy('shelfItemId')
    .execute();
  const ids = [...new Set(rows.map(({ shelfItemId }) => shelfItemId))];
  const lotsOf = (id: string) => rows.filter((row) => row.shelfItemId === id).map((row) => ({ ...row, takenBack: null }));
  return ids.map((shelfItemId) => ({ shelfItemId, lots: sumLots(lotsOf(shelfItemId)) }));
}

export interface ItemUse {
  readonly shelfItemId: string;
  /** Local date of the first move that counts. */
  readonly since: string;
  /** Packs given since the day asked for. */
  readonly given: number;
}

/** For each counted item, since when it is counted and how many packs were given on a local date or later. */
export function listItemUse(db: Db, scope: SiteScope, from: string): Promise<ItemUse[]> {
  const given = sql<number>`cast(sum(case when reason = 'dispensed' and on_date >= ${from} then -quantity else 0 end) as bigint)`;
  return db
    .selectFrom('stockMove')
    .select(({ fn }) => ['shelfItemId', fn.min('onDate').as('since'), given.as('given')])
    .where('siteId', '=', scope.siteId)
    .where('takenBack', 'is', null)
    .groupBy('shelfItemId')
    .execute();
}

/** Of one item, oldest first, those taken back among them. */
export function listMoves(db: Db, scope: SiteScope, shelfItemId: string): Promise<Move[]> {
  return moves(db, scope).where('shelfItemId', '=', shelfItemId).execute();
}

/** What was given at a visit, oldest first, what was taken back among it. */
export function listMovesOfVisit(db: Db, scope: SiteScope, visitId: string): Promise<Move[]> {
  return moves(db, scope).where('visitId', '=', visitId).execute();
}

export function findMove(db: Db, scope: SiteScope, id: string): Promise<Move | undefined> {
  return moves(db, scope).where('id', '=', id).executeTakeFirst();
}

const moves = (db: Db, { siteId }: SiteScope) =>
  db
    .selectFrom('stockMove')
    .select([
      ...(['id', 'version', 'shelfItemId', 'lot', 'expiry', 'quantity', 'reason'] as const),
      ...(['onDate', 'visitId', 'memberId', 'note', 'takenBack'] as const),
    ])
    .where('siteId', '=', siteId)
    .orderBy('onDate')
    .orderBy('id');

/** Inside a transaction: whoever else moves packs of this item waits until the transaction ends. */
export async function findShelfItemHeld(trx: Db, scope: SiteScope, id: string): Promise<CatalogEntry<'shelf-item'> | undefined> {
  // On SQLite the transaction itself has the only connection.
  if (engineKindOf(trx) === 'postgres') {
    const row = trx.selectFrom('catalog').select('id').where('siteId', '=', scope.siteId).where('kind', '=', 'shelf-item');
    await row.where('id', '=', id).forUpdate().execute();
  }
  return findCatalogEntry(trx, scope, 'shelf-item', id);
}

/** Inside a transaction: nobody else changes an item or moves packs until the transaction ends. */
export async function holdShelf(trx: Db, scope: SiteScope): Promise<void> {
  if (engineKindOf(trx) !== 'postgres') return;
  const rows = trx.selectFrom('catalog').select('id').where('siteId', '=', scope.siteId).where('kind', '=', 'shelf-item');
  await rows.orderBy('id').forUpdate().execute();
}

/** What is left of the lots of one item; undefined while it is not counted. */
export async function findLots(db: Db, scope: SiteScope, shelfItemId: string): Promise<readonly LotStock[] | undefined> {
  const counted = (await listMoves(db, scope, shelfItemId)).filter(({ takenBack }) => takenBack === null);
  return counted.length === 0 ? undefined : sumLots(counted);
}
