import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { recordControl } from '../../actions/recordControl.ts';
import { recordTraining } from '../../actions/recordTraining.ts';
import { saveControlPlan } from '../../actions/saveControlPlan.ts';
import { voidReading } from '../../actions/voidReading.ts';
import { AppError } from '../../api/errors.ts';
import { type ChecksView, ControlPlanBody, NewControl, TrainingBody, VoidBody } from '../../api/swabChecks.ts';
import type { ContextOf } from '../context.ts';
import { sendCsv } from '../sendCsv.ts';
import { controlsCsv } from './controlsCsv.ts';
import { readChecks } from './readChecks.ts';

const Uuid = z.strictObject({ id: z.uuid() });
const EntryId = z.strictObject({ id: z.string().min(1).max(100) });

/** Controls, their plan, and who is trained. */
export const checkRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/checks', async (req): Promise<ChecksView> => readChecks(await contextOf(req)));

  app.get('/api/controls.csv', async (req, reply) => {
    const text = controlsCsv(await readChecks(await contextOf(req)));
    return sendCsv(reply, 'controls.csv', text);
  });

  app.post('/api/controls', { schema: { body: NewControl } }, async (req, reply) => {
    return reply.code(201).send(await recordControl(await contextOf(req), req.body));
  });

  app.post('/api/readings/:id/void', { schema: { params: Uuid, body: VoidBody } }, async (req) => {
    const { version: expectedVersion, reason } = req.body;
    return voidReading(await contextOf(req), { id: req.params.id, expectedVersion, reason });
  });

  app.put('/api/control-plans/:id', { schema: { params: EntryId, body: ControlPlanBody } }, async (req) => {
    const { plan, version: expectedVersion } = req.body;
    if (plan.meterId !== req.params.id) throw new AppError('INPUT_INVALID', 'plan.meterId: differs from the address');
    return saveControlPlan(await contextOf(req), { plan, expectedVersion });
  });

  app.post('/api/members/:id/training', { schema: { params: Uuid, body: TrainingBody } }, async (req) => {
    return recordTraining(await contextOf(req), { memberId: req.params.id, ...req.body });
  });
};
