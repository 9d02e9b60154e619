import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { recordControl } from '../../actions/recordControl.ts';
import { recordTraining } from '../../actions/recordTraining.ts';
import { saveControlPlan } from '../../actions/saveControlPlan.ts';
import { setTarget } from '../../actions/setTarget.ts';
import { useUncompared } from '../../actions/useUncompared.ts';
import { voidReading } from '../../actions/voidReading.ts';
import { AppError } from '../../api/errors.ts';
import { type ChecksView, ControlPlanBody, NewControl, TargetBody, TrainingBody, UncomparedBody, VoidBody } from '../../api/swabChecks.ts';
import type { ContextOf } from '../context.ts';
import { sendCsv } from '../sendCsv.ts';
import { controlsCsv } from './controlsCsv.ts';
import { readChecks } from './readChecks.ts';

const Uuid = z.strictObject({ id: z.uuid() });
const EntryId = z.strictObject({ id: z.string().min(1).max(100) });
const LotOfPlan = EntryId.extend({ lotId: z.string().min(1).max(100) });

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

  app.put('/api/control-plans/:id/targets/:lotId', { schema: { params: LotOfPlan, body: TargetBody } }, async (req) => {
    const { version: expectedVersion, ...target } = req.body;
    return setTarget(await contextOf(req), { meterId: req.params.id, lotId: req.params.lotId, ...target, expectedVersion });
  });

  app.post('/api/lots/:id/uncompared', { schema: { params: EntryId, body: UncomparedBody } }, async (req) => {
    return useUncompared(await contextOf(req), { lotId: req.params.id, ...req.body });
  });

  app.post('/api/members/:id/training', { schema: { params: Uuid, body: TrainingBody } }, async (req) => {
    return recordTraining(await contextOf(req), { memberId: req.params.id, ...req.body });
  });
};
