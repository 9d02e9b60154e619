import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { retireLocalProtocol } from '../actions/retireLocalProtocol.ts';
import { saveLocalProtocol } from '../actions/saveLocalProtocol.ts';
import { type LocalProtocolView, NewLocalProtocol, RetireBody } from '../api/localProtocols.ts';
import { listCatalog } from '../store/read/catalog.ts';
import type { ContextOf } from './context.ts';
import { localDate } from './siteClock.ts';

const ProtocolId = z.strictObject({ id: z.string().min(1).max(100) });

/** The practice's own protocols: read by everybody, written and retired by a dentist. */
export const localProtocolRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/local-protocols', async (req): Promise<{ protocols: readonly LocalProtocolView[] }> => {
    const { db, scope } = await contextOf(req);
    const entries = await listCatalog(db, scope, 'local-protocol');
    return { protocols: entries.map(({ body, version }) => ({ protocol: body, version })) };
  });

  app.post('/api/local-protocols', { schema: { body: NewLocalProtocol } }, async (req, reply) => {
    const context = await contextOf(req);
    const id = context.newId();
    await saveLocalProtocol(context, { id, protocol: req.body });
    return reply.code(201).send({ id });
  });

  app.post('/api/local-protocols/:id/retirement', { schema: { params: ProtocolId, body: RetireBody } }, async (req) => {
    const context = await contextOf(req);
    const { reason, version: expectedVersion } = req.body;
    return retireLocalProtocol(context, { id: req.params.id, reason, on: await localDate(context), expectedVersion });
  });
};
