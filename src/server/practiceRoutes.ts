import { hash } from '@node-rs/argon2';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addAccount } from '../actions/addAccount.ts';
import { addMember } from '../actions/addMember.ts';
import { changeMember } from '../actions/changeMember.ts';
import { changePassword } from '../actions/changePassword.ts';
import { saveHideAfter } from '../actions/saveHideAfter.ts';
import { saveLot } from '../actions/saveLot.ts';
import { saveMeter } from '../actions/saveMeter.ts';
import { HideAfter, MemberChange, NewMember, NewPassword } from '../api/apiTypes.ts';
import type { PracticeView } from '../api/bundles.ts';
import { AppError } from '../api/errors.ts';
import { MeterSchema, SwabLotSchema } from '../api/visitSchema.ts';
import { hideAfterMinutes } from '../content/practiceDefaults.ts';
import { listCredentials } from '../store/read/accounts.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { findMember, listMembers, type Member } from '../store/read/members.ts';
import { findPractice } from '../store/read/sites.ts';
import type { Db } from '../store/schema.ts';
import type { ContextOf } from './context.ts';

const EntryId = z.strictObject({ id: z.string().max(100) });
const version = z.int().nonnegative();

/** Meters, swab lots and team: what a practice must say of itself before its first visit. */
export const practiceRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/practice', async (req): Promise<PracticeView> => {
    const { db, scope } = await contextOf(req);
    const members = await listMembers(db, scope);
    const stored = await findPractice(db, scope);
    return {
      meters: (await listCatalog(db, scope, 'meter')).map(({ body, version: v }) => ({ meter: body, version: v })),
      lots: (await listCatalog(db, scope, 'lot')).map(({ body, version: v }) => ({ lot: body, version: v })),
      members: await Promise.all(members.map((member) => toMemberView(db, member))),
      hideAfter: {
        minutes: stored?.hideAfterMinutes ?? hideAfterMinutes.value,
        isProposal: stored?.hideAfterMinutes === undefined,
        version: stored?.version ?? 0,
      },
    };
  });

  app.put('/api/meters/:id', { schema: { params: EntryId, body: z.strictObject({ meter: MeterSchema, version }) } }, async (req) => {
    const { meter, version: expectedVersion } = req.body;
    requireSameId('meter', meter.id, req.params.id);
    return saveMeter(await contextOf(req), { meter, expectedVersion });
  });

  app.put('/api/lots/:id', { schema: { params: EntryId, body: z.strictObject({ lot: SwabLotSchema, version }) } }, async (req) => {
    const { lot, version: expectedVersion } = req.body;
    requireSameId('lot', lot.id, req.params.id);
    return saveLot(await contextOf(req), { lot, expectedVersion });
  });

  app.post('/api/members', { schema: { body: NewMember } }, async (req, reply) => {
    const context = await contextOf(req);
    const { password, ...member } = req.body;
    const passwordHash = await hash(password);
    const { memberId } = await addMember(context, member);
    // The sign-in name is only for the log: members choose their name from the list.
    await addAccount(context, { memberId, login: memberId, passwordHash });
    return reply.code(201).send({ id: memberId });
  });

  app.put('/api/members/:id', { schema: { params: z.strictObject({ id: z.uuid() }), body: MemberChange } }, async (req) => {
    const { version: expectedVersion, ...change } = req.body;
    return changeMember(await contextOf(req), { memberId: req.params.id, ...change, expectedVersion });
  });

  app.put('/api/settings/hide-after', { schema: { body: HideAfter } }, async (req) => {
    const { minutes, version: expectedVersion } = req.body;
    return saveHideAfter(await contextOf(req), { minutes, expectedVersion });
  });

  app.put('/api/members/:id/password', { schema: { params: z.strictObject({ id: z.uuid() }), body: NewPassword } }, async (req) => {
    const context = await contextOf(req);
    const passwordHash = await hash(req.body.password);
    const memberId = req.params.id;
    const member = await findMember(context.db, context.scope, memberId);
    if (!member) throw new AppError('MEMBER_NOT_FOUND', 'There is no such member.');
    if (member.accountId === null) await addAccount(context, { memberId, login: memberId, passwordHash });
    else await changePassword(context, { memberId, passwordHash });
    return { ok: true };
  });
};

async function toMemberView(db: Db, { id, name, roles, trainedSwab, active, accountId, version: v }: Member) {
  const hasCode = accountId !== null && (await listCredentials(db, accountId)).some(({ kind }) => kind === 'code');
  return { id, name, roles, trainedSwab, active, hasPassword: accountId !== null, hasCode, version: v };
}

function requireSameId(what: string, id: string, inAddress: string): void {
  if (id !== inAddress) throw new AppError('INPUT_INVALID', `${what}.id: differs from the address`);
}
