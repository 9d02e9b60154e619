import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addPatient } from '../actions/addPatient.ts';
import { openVisit } from '../actions/openVisit.ts';
import { readClock } from '../actions/readClock.ts';
import { NewPerson, OpenVisitBody } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import type { ContextOf } from './context.ts';
import { listPeople } from './listPeople.ts';
import { readPerson } from './readPerson.ts';
import { localDate } from './siteClock.ts';

const PersonId = z.strictObject({ id: z.uuid() });

export const peopleRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/clock', async (req) => readClock(await contextOf(req)));

  app.get('/api/people', async (req) => ({ people: await listPeople(await contextOf(req)) }));

  app.post('/api/people', { schema: { body: NewPerson } }, async (req, reply) => {
    const context = await contextOf(req);
    if (req.body.birthDate > (await localDate(context))) throw new AppError('INPUT_INVALID', 'birthDate: lies in the future');
    const { patientId } = await addPatient(context, req.body);
    return reply.code(201).send({ id: patientId });
  });

  app.get('/api/people/:id', { schema: { params: PersonId } }, async (req) => readPerson(await contextOf(req), req.params.id));

  app.post('/api/people/:id/visits', { schema: { params: PersonId, body: OpenVisitBody } }, async (req, reply) => {
    const context = await contextOf(req);
    const { clockIsRight } = req.body;
    const visit = await openVisit(context, { patientId: req.params.id, kind: 'chair', onDate: await localDate(context), clockIsRight });
    return reply.code(201).send({ visitId: visit.id });
  });
};
