import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { recordMeterCheck } from '../../actions/recordMeterCheck.ts';
import { saveMeterCheckPlan } from '../../actions/saveMeterCheckPlan.ts';
import { AppError } from '../../api/errors.ts';
import { MeterCheckPlanBody, NewMeterCheck } from '../../api/meterChecks.ts';
import type { ContextOf } from '../context.ts';
import { meterChecksCsv } from './meterChecksCsv.ts';
import { readChecks } from './readChecks.ts';

const MeterId = z.strictObject({ id: z.string().min(1).max(100) });

/** Checks of meters themselves, and how often each is due. */
export const meterCheckRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.post('/api/meter-checks', { schema: { body: NewMeterCheck } }, async (req, reply) => {
    return reply.code(201).send(await recordMeterCheck(await contextOf(req), req.body));
  });

  app.get('/api/meter-checks.csv', async (req, reply) => {
    const text = meterChecksCsv(await readChecks(await contextOf(req)));
    return reply.type('text/csv; charset=utf-8').header('content-disposition', 'attachment; filename="meter-checks.csv"').send(text);
  });

  app.put('/api/meter-check-plans/:id', { schema: { params: MeterId, body: MeterCheckPlanBody } }, async (req) => {
    const { plan, version: expectedVersion } = req.body;
    if (plan.meterId !== req.params.id) throw new AppError('INPUT_INVALID', 'plan.meterId: differs from the address');
    return saveMeterCheckPlan(await contextOf(req), { plan, expectedVersion });
  });
};
