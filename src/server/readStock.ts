import type { ActionContext } from '../actions/context.ts';
import type { GivenView, MoveView, StockView } from '../api/stock.ts';
import { GIVEN_OVER_DAYS } from '../core/shelf/listReorder.ts';
import { addDays } from '../core/visit/calendar.ts';
import { listMembers } from '../store/read/members.ts';
import { findPractice } from '../store/read/sites.ts';
import { listCountedItems, listItemUse, listMoves, listMovesOfVisit, type Move } from '../store/read/stock.ts';
import { localDate } from './siteClock.ts';

type Reader = Pick<ActionContext, 'db' | 'scope' | 'now' | 'actor'>;

/** Every counted item with its lots, and how fast it goes. */
export async function readStock(context: Reader): Promise<StockView> {
  const { db, scope } = context;
  const today = await localDate(context);
  const counted = await listCountedItems(db, scope);
  const use = new Map((await listItemUse(db, scope, addDays(today, -GIVEN_OVER_DAYS))).map((item) => [item.shelfItemId, item]));
  const leadDays = (await findPractice(db, scope))?.practice.settings.reorderLeadDays ?? null;
  const items = counted.map((item) => ({
    ...item,
    given: use.get(item.shelfItemId)?.given ?? 0,
    since: use.get(item.shelfItemId)?.since ?? today,
  }));
  return { today, leadDays, items };
}

/** The stock book of one item, newest first. */
export async function readMoves(context: Reader, shelfItemId: string): Promise<readonly MoveView[]> {
  const moves = await listMoves(context.db, context.scope, shelfItemId);
  return (await toViews(context, moves, await localDate(context))).reverse();
}

export async function readGiven(context: Reader, visitId: string): Promise<GivenView> {
  const { db, scope } = context;
  const today = await localDate(context);
  const moves = await listMovesOfVisit(db, scope, visitId);
  return { today, moves: await toViews(context, moves, today), counted: await listCountedItems(db, scope) };
}

async function toViews({ db, scope, actor }: Reader, moves: readonly Move[], today: string): Promise<MoveView[]> {
  if (moves.length === 0) return [];
  const names = new Map((await listMembers(db, scope)).map(({ id, name }) => [id, name]));
  return moves.map(({ memberId, version: _, ...move }) => ({
    ...move,
    by: names.get(memberId) ?? 'a member who is not on file',
    isMineToday: memberId === actor.memberId && move.onDate === today,
  }));
}
