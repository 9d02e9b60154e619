import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { correctVisit } from '../actions/correctVisit.ts';
import { loadVisit } from '../actions/loadVisit.ts';
import { withdrawLevel } from '../actions/withdrawLevel.ts';
import { CorrectionBody, FieldWrite, WithdrawLevelBody } from '../api/apiTypes.ts';
import type { FieldHistory } from '../api/bundles.ts';
import { applyField } from '../core/visit/applyField.ts';
import type { VisitInput } from '../core/visit/types.ts';
import { checkField } from './checkField.ts';
import type { ContextOf } from './context.ts';
import { readHistory } from './readHistory.ts';
import { localDate } from './siteClock.ts';

const VisitId = z.strictObject({ id: z.uuid() });
const HistoryOf = z.strictObject({ path: z.union([FieldWrite.shape.path, z.literal('level')]) });

/** Taking back and putting right: a level while the visit is open, anything once it is closed, and what stood there before. */
export const correctionRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.post('/api/visits/:id/level/withdraw', { schema: { params: VisitId, body: WithdrawLevelBody } }, async (req) => {
    await withdrawLevel(await contextOf(req), { visitId: req.params.id, ...req.body });
    return { ok: true };
  });

  app.post('/api/visits/:id/corrections', { schema: { params: VisitId, body: CorrectionBody } }, async (req) => {
    const context = await contextOf(req);
    const { version, reason, changes, level } = req.body;
    const { input } = await loadVisit(context.db, context.scope, req.params.id);
    const checked = checkInOrder(input, changes);
    const onDate = await localDate(context);
    const assessment = await correctVisit(context, {
      visitId: req.params.id,
      expectedVersion: version,
      reason,
      onDate,
      changes: checked,
      level,
    });
    return { assessment };
  });

  app.get('/api/visits/:id/history', { schema: { params: VisitId, querystring: HistoryOf } }, async (req): Promise<FieldHistory> => {
    return { entries: await readHistory(await contextOf(req), req.params.id, req.query.path) };
  });
};

/** Each value against the visit as the changes before it have left it. */
function checkInOrder(input: VisitInput, changes: readonly { readonly path: string; readonly value?: unknown }[]) {
  let visit = input;
  return changes.map(({ path, value = null }) => {
    const checked = checkField(visit, path, value);
    visit = applyField(visit, path, checked);
    return { path, value: checked };
  });
}
