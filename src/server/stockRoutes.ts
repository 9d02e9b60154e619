import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { correctStock } from '../actions/correctStock.ts';
import { dispenseItem } from '../actions/dispenseItem.ts';
import { findGivingFacts } from '../actions/givingFacts.ts';
import { exportShelf, importShelf, previewShelf } from '../actions/importShelf.ts';
import { loadVisit } from '../actions/loadVisit.ts';
import { receiveStock } from '../actions/receiveStock.ts';
import { findRefills } from '../actions/refillFacts.ts';
import { refillItem } from '../actions/refillItem.ts';
import { stopRefill } from '../actions/stopRefill.ts';
import { takeBackMove } from '../actions/takeBackMove.ts';
import { AppError } from '../api/errors.ts';
import { ShelfTableSeen, ShelfTableText, type ShelfTableView } from '../api/shelfTable.ts';
import {
  CorrectStockBody,
  GiveBody,
  type GivenView,
  type MoveView,
  ReceiveBody,
  RefillBody,
  type RefillView,
  type StockView,
  TakeBackBody,
} from '../api/stock.ts';
import { regimenTables } from '../content/regimenTables.ts';
import { usualPacks } from '../content/usualPacks.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import type { ContextOf } from './context.ts';
import { readGiven, readMoves, readStock } from './readStock.ts';
import { reorderCsv } from './reorderCsv.ts';
import { sendCsv } from './sendCsv.ts';
import { localDate } from './siteClock.ts';

const Uuid = z.strictObject({ id: z.uuid() });
const ItemId = z.strictObject({ id: z.string().min(1).max(100) });

const TABLE_BYTES = 4_000_000;

/** The usual name belongs to the usual form: another form is another word. */
const leafletNameOf = (agentId: string, form: ShelfItem['form']): ShelfItem['leafletName'] | undefined =>
  usualPacks[agentId]?.form === form ? usualPacks[agentId].leafletName : undefined;
const TABLES = { tables: regimenTables, leafletNameOf };

/** The stock book: what came in, what was given, and what was put right. */
export const stockRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/stock', async (req): Promise<StockView> => readStock(await contextOf(req)));

  app.get('/api/stock/reorder.csv', async (req, reply) => sendCsv(reply, 'reorder.csv', await reorderCsv(await contextOf(req))));

  app.get('/api/shelf.csv', async (req, reply) => sendCsv(reply, 'shelf.csv', await exportShelf(await contextOf(req))));

  app.post('/api/shelf/table/look', { bodyLimit: TABLE_BYTES, schema: { body: ShelfTableText } }, async (req): Promise<ShelfTableView> => {
    const context = await contextOf(req);
    return previewShelf(context, { ...req.body, ...TABLES, today: await localDate(context) });
  });

  app.post('/api/shelf/table', { bodyLimit: TABLE_BYTES, schema: { body: ShelfTableSeen } }, async (req): Promise<ShelfTableView> => {
    const context = await contextOf(req);
    return importShelf(context, { ...req.body, ...TABLES, today: await localDate(context) });
  });

  app.get('/api/shelf/:id/moves', { schema: { params: ItemId } }, async (req): Promise<{ moves: readonly MoveView[] }> => {
    return { moves: await readMoves(await contextOf(req), req.params.id) };
  });

  app.post('/api/shelf/:id/receipts', { schema: { params: ItemId, body: ReceiveBody } }, async (req, reply) => {
    const context = await contextOf(req);
    const saved = await receiveStock(context, { shelfItemId: req.params.id, ...req.body, today: await localDate(context) });
    return reply.code(201).send(saved);
  });

  app.post('/api/shelf/:id/corrections', { schema: { params: ItemId, body: CorrectStockBody } }, async (req) => {
    const context = await contextOf(req);
    await correctStock(context, { shelfItemId: req.params.id, ...req.body, today: await localDate(context) });
    return { ok: true };
  });

  app.post('/api/stock-moves/:id/taken-back', { schema: { params: Uuid, body: TakeBackBody } }, async (req) => {
    const context = await contextOf(req);
    await takeBackMove(context, { moveId: req.params.id, ...req.body, today: await localDate(context) });
    return { ok: true };
  });

  app.get('/api/visits/:id/given', { schema: { params: Uuid } }, async (req): Promise<GivenView> => {
    const context = await contextOf(req);
    const { visit } = await loadVisit(context.db, context.scope, req.params.id);
    return readGiven(context, visit.id);
  });

  app.post('/api/visits/:id/given', { schema: { params: Uuid, body: GiveBody } }, async (req, reply) => {
    const context = await contextOf(req);
    const today = await localDate(context);
    const loaded = await loadVisit(context.db, context.scope, req.params.id);
    const facts = await findGivingFacts(context.db, context.scope, loaded, { shelfItemId: req.body.shelfItemId, today });
    if (!facts) throw new AppError('SHELF_ITEM_NOT_FOUND', 'There is no such item on the shelf.');
    const lots = await dispenseItem(context, { visitId: req.params.id, ...req.body, facts, today });
    return reply.code(201).send({ lots });
  });

  app.get('/api/visits/:id/refills', { schema: { params: Uuid } }, async (req): Promise<RefillView> => {
    const context = await contextOf(req);
    const today = await localDate(context);
    const loaded = await loadVisit(context.db, context.scope, req.params.id);
    const { notHere, lines } = await findRefills(context.db, context.scope, loaded, today);
    return { today, notHere, lines: lines.map(({ coveredPacks: _, ...line }) => line) };
  });

  app.post('/api/visits/:id/refills', { schema: { params: Uuid, body: RefillBody } }, async (req, reply) => {
    const context = await contextOf(req);
    const today = await localDate(context);
    const loaded = await loadVisit(context.db, context.scope, req.params.id);
    const refills = await findRefills(context.db, context.scope, loaded, today);
    const lots = await refillItem(context, { visitId: req.params.id, ...req.body, refills, today });
    return reply.code(201).send({ lots });
  });

  app.post('/api/visits/:id/refill-stops', { schema: { params: Uuid } }, async (req, reply) => {
    const context = await contextOf(req);
    await stopRefill(context, { visitId: req.params.id, today: await localDate(context) });
    return reply.code(201).send({ ok: true });
  });
};
