import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { overrideStop } from '../../actions/overrideStop.ts';
import { questionReadings } from '../../actions/questionReadings.ts';
import { resolveStop } from '../../actions/resolveStop.ts';
import { OverrideBody, QuestionBody, type ReadingsBeforeStop, ResolveBody } from '../../api/swabChecks.ts';
import type { ContextOf } from '../context.ts';
import { localDate } from '../siteClock.ts';
import { readReadingsBeforeStop } from './readReadingsBeforeStop.ts';

const ControlId = z.strictObject({ id: z.uuid() });

/** What follows from a control out of limits: readings that count all the same, what was done, and the readings before it. */
export const stopRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.post('/api/overrides', { schema: { body: OverrideBody } }, async (req) => {
    const context = await contextOf(req);
    return { override: await overrideStop(context, { ...req.body, onDate: await localDate(context) }) };
  });

  app.post('/api/stops/:id/resolve', { schema: { params: ControlId, body: ResolveBody } }, async (req) => {
    return { resolution: await resolveStop(await contextOf(req), { outId: req.params.id, ...req.body }) };
  });

  app.get('/api/stops/:id/readings', { schema: { params: ControlId } }, async (req): Promise<ReadingsBeforeStop> => {
    return readReadingsBeforeStop(await contextOf(req), req.params.id);
  });

  app.post('/api/stops/:id/readings', { schema: { params: ControlId, body: QuestionBody } }, async (req) => {
    const { version: expectedVersion, ...said } = req.body;
    return questionReadings(await contextOf(req), { outId: req.params.id, expectedVersion, ...said });
  });
};
