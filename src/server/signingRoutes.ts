import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { ActionContext } from '../actions/context.ts';
import { readStoredAssessment } from '../actions/finishVisit.ts';
import { loadVisit } from '../actions/loadVisit.ts';
import { logAccess } from '../actions/logAccess.ts';
import { refuseItem } from '../actions/refuseItem.ts';
import { releaseFacts } from '../actions/releaseFacts.ts';
import { saveStandingOrder } from '../actions/saveStandingOrder.ts';
import { signItem } from '../actions/signItem.ts';
import { withdrawRelease } from '../actions/withdrawRelease.ts';
import { withdrawStandingOrder } from '../actions/withdrawStandingOrder.ts';
import {
  NewStandingOrder,
  type PrescriptionsView,
  PrintedBody,
  RefuseBody,
  type Releases,
  SignBody,
  type SigningView,
  type StandingOrderView,
  WithdrawBody,
} from '../api/signing.ts';
import { content } from '../content/allContent.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { prescriptionTexts } from '../core/visit/prescriptionTexts.ts';
import { printedOn } from '../core/visit/withReleases.ts';
import type { ContextOf } from './context.ts';
import { listSigning, listStandingOrders } from './listSigning.ts';
import { localDate } from './siteClock.ts';

const VisitId = z.strictObject({ id: z.uuid() });
const OrderId = z.strictObject({ id: z.string().min(1).max(100) });
const version = z.int().nonnegative();

/** Signatures, refusals, standing orders, and the texts of signed prescription items. */
export const signingRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/signing', async (req): Promise<SigningView> => listSigning(await contextOf(req)));

  app.post('/api/visits/:id/signatures', { schema: { params: VisitId, body: SignBody } }, async (req): Promise<Releases> => {
    const context = await contextOf(req);
    const visitId = req.params.id;
    const { input } = await loadVisit(context.db, context.scope, visitId);
    const today = await localDate(context);
    await signItem(context, { visitId, ...req.body, ...releaseFacts(input, req.body.shelfItemId), today });
    return readReleases(context, visitId);
  });

  app.post('/api/visits/:id/refusals', { schema: { params: VisitId, body: RefuseBody } }, async (req): Promise<Releases> => {
    const context = await contextOf(req);
    const visitId = req.params.id;
    const { input } = await loadVisit(context.db, context.scope, visitId);
    await refuseItem(context, { visitId, ...req.body, waits: releaseFacts(input, req.body.shelfItemId).waits });
    return readReleases(context, visitId);
  });

  app.post('/api/visits/:id/withdrawals', { schema: { params: VisitId, body: WithdrawBody } }, async (req): Promise<Releases> => {
    const context = await contextOf(req);
    await withdrawRelease(context, { visitId: req.params.id, ...req.body });
    return readReleases(context, req.params.id);
  });

  // A page cannot know what a printer did: opening the print dialogue counts as printed.
  app.post('/api/visits/:id/printed', { schema: { params: VisitId, body: PrintedBody } }, async (req) => {
    const context = await contextOf(req);
    const { visit } = await loadVisit(context.db, context.scope, req.params.id);
    await logAccess(context, { action: `print-${req.body.what}`, entity: { table: 'visit', id: visit.id } });
    return { ok: true };
  });

  app.get('/api/visits/:id/prescriptions', { schema: { params: VisitId } }, async (req): Promise<PrescriptionsView> => {
    const context = await contextOf(req);
    const { db, scope } = context;
    const loaded = await loadVisit(db, scope, req.params.id);
    const { practice, person, visit } = loaded.input;
    const stored = loaded.visit.state === 'open' ? assessVisit(loaded.input, content) : await readStoredAssessment(db, scope, loaded);
    const { assessment, past } = printedOn(stored, loaded.input, content, await localDate(context));
    return {
      practice: practice.name,
      invented: practice.invented,
      person: person.name,
      birthDate: person.birthDate,
      onDate: visit.onDate,
      items: prescriptionTexts(assessment, loaded.input, content),
      past,
    };
  });

  app.get('/api/standing-orders', async (req): Promise<{ orders: readonly StandingOrderView[] }> => {
    return { orders: await listStandingOrders(await contextOf(req)) };
  });

  app.post('/api/standing-orders', { schema: { body: NewStandingOrder } }, async (req, reply) => {
    const context = await contextOf(req);
    const id = context.newId();
    await saveStandingOrder(context, { id, order: req.body, expectedVersion: 0 });
    return reply.code(201).send({ id });
  });

  app.post('/api/standing-orders/:id/withdrawal', { schema: { params: OrderId, body: z.strictObject({ version }) } }, async (req) =>
    withdrawStandingOrder(await contextOf(req), { id: req.params.id, expectedVersion: req.body.version }),
  );
};

async function readReleases({ db, scope }: ActionContext, visitId: string): Promise<Releases> {
  const { signed, refused = [] } = (await loadVisit(db, scope, visitId)).input.visit;
  return { signed, refused };
}
