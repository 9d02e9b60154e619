import type { ActionContext } from '../actions/context.ts';
import { writeCsv } from '../actions/writeCsv.ts';
import { listReorder } from '../core/shelf/listReorder.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { readStock } from './readStock.ts';

const HEAD = ['item', 'id', 'may be given', 'of those, expiring before an order is there', 'minimum', 'given in 30 days', 'order, packs'];

/** What to order, as a table for a spreadsheet or a supplier. */
export async function reorderCsv(context: Pick<ActionContext, 'db' | 'scope' | 'now' | 'actor'>): Promise<string> {
  const { items: counted, today, leadDays } = await readStock(context);
  const items = (await listCatalog(context.db, context.scope, 'shelf-item')).map(({ body }) => body);
  const lines = listReorder({ items, counted, today, leadDays: leadDays ?? undefined });
  return writeCsv([
    HEAD,
    ...lines.map(({ item, usable, expiring, minimumLevel, perMonth, suggested }) => [
      ...[item.name, item.id, usable, expiring],
      ...[minimumLevel, Number(perMonth.toFixed(1)), suggested],
    ]),
  ]);
}
