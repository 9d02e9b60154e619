import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addPatient } from '../actions/addPatient.ts';
import { changePatient } from '../actions/changePatient.ts';
import type { ActionContext } from '../actions/context.ts';
import { mergePatients, unmergePatient } from '../actions/mergePatients.ts';
import { openVisit } from '../actions/openVisit.ts';
import { readClock } from '../actions/readClock.ts';
import { NewPerson, OpenVisitBody } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import { ChangePersonBody, MergeBody, type PersonDetails, UnmergeBody } from '../api/personSchema.ts';
import type { ContextOf } from './context.ts';
import { listPeople } from './listPeople.ts';
import { readPerson } from './readPerson.ts';
import { readPersonPage } from './readPersonPage.ts';
import { localDate } from './siteClock.ts';

const PersonId = z.strictObject({ id: z.uuid() });

export const peopleRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/clock', async (req) => readClock(await contextOf(req)));

  app.get('/api/people', async (req) => ({ people: await listPeople(await contextOf(req)) }));

  app.post('/api/people', { schema: { body: NewPerson } }, async (req, reply) => {
    const context = await contextOf(req);
    const { isAnotherPerson = false, ...details } = req.body;
    await requireNotInFuture(context, details);
    const { patientId } = await addPatient(context, { ...details, isAnotherPerson });
    return reply.code(201).send({ id: patientId });
  });

  app.get('/api/people/:id', { schema: { params: PersonId } }, async (req) => readPerson(await contextOf(req), req.params.id));

  app.get('/api/people/:id/details', { schema: { params: PersonId } }, async (req) => readPersonPage(await contextOf(req), req.params.id));

  app.put('/api/people/:id/details', { schema: { params: PersonId, body: ChangePersonBody } }, async (req) => {
    const context = await contextOf(req);
    const { details, version, reason, isAnotherPerson } = req.body;
    await requireNotInFuture(context, details);
    return changePatient(context, { patientId: req.params.id, details, expectedVersion: version, reason, isAnotherPerson });
  });

  app.post('/api/people/:id/merge', { schema: { params: PersonId, body: MergeBody } }, async (req) => {
    const { version, merged, reason } = req.body;
    await mergePatients(await contextOf(req), { kept: { id: req.params.id, version }, merged, reason });
    return { ok: true };
  });

  app.post('/api/people/:id/unmerge', { schema: { params: PersonId, body: UnmergeBody } }, async (req) => {
    const { version, reason } = req.body;
    await unmergePatient(await contextOf(req), { merged: { id: req.params.id, version }, reason });
    return { ok: true };
  });

  app.post('/api/people/:id/visits', { schema: { params: PersonId, body: OpenVisitBody } }, async (req, reply) => {
    const context = await contextOf(req);
    const { clockIsRight } = req.body;
    const visit = await openVisit(context, { patientId: req.params.id, kind: 'chair', onDate: await localDate(context), clockIsRight });
    return reply.code(201).send({ visitId: visit.id });
  });
};

/** @throws AppError INPUT_INVALID */
async function requireNotInFuture(
  context: ActionContext,
  { birthDate, permissions = {} }: Pick<PersonDetails, 'birthDate' | 'permissions'>,
): Promise<void> {
  const today = await localDate(context);
  if (birthDate > today) throw new AppError('INPUT_INVALID', 'birthDate: lies in the future');
  for (const [kind, permission] of Object.entries(permissions))
    if (permission && permission.on > today) throw new AppError('INPUT_INVALID', `permissions.${kind}.on: lies in the future`);
}
