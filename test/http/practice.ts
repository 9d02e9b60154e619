import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hash } from '@node-rs/argon2';
import type { FastifyInstance } from 'fastify';
import { v7 as newUuid } from 'uuid';
import { addAccount } from '../../src/actions/addAccount.ts';
import { addMember } from '../../src/actions/addMember.ts';
import { createPractice } from '../../src/actions/createPractice.ts';
import type { Role } from '../../src/api/apiTypes.ts';
import { buildDemoPractice } from '../../src/content/demo/practice.ts';
import { buildApp } from '../../src/server/app.ts';
import { SignInAddress } from '../../src/server/sessions.ts';
import type { Db } from '../../src/store/schema.ts';
import { setUpSqliteStore } from '../../src/store/setUpStore.ts';
import type { SiteScope } from '../../src/store/siteScope.ts';

export const PASSWORD = 'a password of the test';
export const NOW = '2026-11-25T10:42:07.000Z';
export const TODAY = '2026-11-25';

export interface TestPractice {
  /** What the server takes for now; sign in again after moving it. */
  readonly clock: { now: string };
  readonly app: FastifyInstance;
  readonly db: Db;
  readonly scope: SiteScope;
  readonly address: SignInAddress;
  readonly members: Readonly<Record<'lead' | 'assistant' | 'dentist', string>>;
  /** A request as one of the members, signed in by password. */
  as(role: 'lead' | 'assistant' | 'dentist'): Promise<Asks>;
  close(): Promise<void>;
}

/** One request; the body is parsed. */
export type Asks = (method: 'GET' | 'POST' | 'PUT', url: string, body?: unknown) => Promise<{ status: number; body: unknown }>;

/** The invented practice in a real encrypted file, with the real routes and no network. */
export async function startPractice({ reusableAddress = false } = {}): Promise<TestPractice> {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-http-'));
  const webRoot = join(folder, 'web');
  mkdirSync(webRoot);
  writeFileSync(join(webRoot, 'index.html'), '<!doctype html><title>page</title>');
  const { store } = await setUpSqliteStore({ folder: join(folder, 'data'), passphrase: 'a passphrase of the test', random: randomBytes });
  const { db } = store;
  const clock = { now: NOW };
  const now = () => clock.now;
  const base = { db, now, newId: newUuid };
  const lead = { name: 'Ines Marrow', roles: ['lead', 'hygienist'] as Role[], trainedSwab: true };
  const { scope, memberId } = await createPractice(base, { practice: buildDemoPractice(TODAY), locale: 'en-GB', firstMember: lead });
  const context = { ...base, scope, actor: { memberId, ...lead } };
  const assistant = (await addMember(context, { name: 'Tomas Quill', roles: ['assistant'], trainedSwab: true })).memberId;
  const dentist = (await addMember(context, { name: 'Dr. Ahlgren', roles: ['dentist'], trainedSwab: false })).memberId;
  const members = { lead: memberId, assistant, dentist };
  const passwordHash = await hash(PASSWORD, { memoryCost: 1024, timeCost: 1 });
  for (const [login, id] of Object.entries(members)) await addAccount(context, { memberId: id, login, passwordHash });

  const address = new SignInAddress(reusableAddress);
  const app = await buildApp({ webRoot, db, scope, now, address, firstMemberId: memberId });
  return {
    clock,
    app,
    db,
    scope,
    address,
    members,
    as: async (role) => {
      const signedIn = await app.inject({ method: 'POST', url: '/api/sign-in', payload: { memberId: members[role], password: PASSWORD } });
      const cookies = Object.fromEntries(signedIn.cookies.map((cookie) => [cookie.name, cookie.value]));
      return async (method, url, body) => {
        const response = await app.inject({ method, url, cookies, ...(body === undefined ? {} : { payload: body as object }) });
        return { status: response.statusCode, body: response.body === '' ? null : JSON.parse(response.body) };
      };
    },
    close: async () => {
      await app.close();
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A person with an open visit. */
export async function openVisitFor(ask: Asks, person: { name: string; birthDate: string }): Promise<{ personId: string; visitId: string }> {
  // Tests name many people alike.
  const added = await ask('POST', '/api/people', { ...person, isAnotherPerson: true });
  const personId = (added.body as { id: string }).id;
  const opened = await ask('POST', `/api/people/${personId}/visits`, {});
  return { personId, visitId: (opened.body as { visitId: string }).visitId };
}
