import { hash } from '@node-rs/argon2';
import { v7 as newUuid } from 'uuid';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { changeMember } from '../../src/actions/changeMember.ts';
import { setCode } from '../../src/actions/setCode.ts';
import { NOW, PASSWORD, startPractice, type TestPractice } from './practice.ts';

const CODE = '4862';
const HIDDEN = { error: { code: 'SESSION_HIDDEN', message: 'The screen is hidden.' } };
let practice: TestPractice;
beforeAll(async () => {
  practice = await startPractice();
});
afterAll(() => practice.close());
beforeEach(async () => {
  const codeHash = await hash(CODE, { memoryCost: 1024, timeCost: 1 });
  for (const id of Object.values(practice.members)) await setCode(contextOf(id), { codeHash });
});

const contextOf = (memberId: string) => ({
  db: practice.db,
  scope: practice.scope,
  now: () => NOW,
  newId: newUuid,
  actor: { memberId, name: 'Somebody', roles: ['lead', 'hygienist', 'dentist', 'assistant'] },
});

/** A browser: one cookie, which the server may change. */
async function browse(role: 'lead' | 'assistant' | 'dentist') {
  const signedIn = await practice.app.inject({
    method: 'POST',
    url: '/api/sign-in',
    payload: { memberId: practice.members[role], password: PASSWORD },
  });
  let cookie = signedIn.cookies[0]?.value ?? '';
  const ask = async (method: 'GET' | 'POST' | 'PUT', url: string, body?: object, headers: Record<string, string> = {}) => {
    const response = await practice.app.inject({
      method,
      url,
      headers,
      cookies: { ebbline_session: cookie },
      ...(body === undefined ? {} : { payload: body }),
    });
    const before = cookie;
    cookie = response.cookies.find(({ name }) => name === 'ebbline_session')?.value ?? cookie;
    return { status: response.statusCode, body: response.body === '' ? null : JSON.parse(response.body), before };
  };
  return { ask, cookie: () => cookie };
}

const here = async ({ ask }: Awaited<ReturnType<typeof browse>>) => (await ask('GET', '/api/session')).body?.member?.name ?? null;

test('a hidden session is answered nothing at any address of the interface but the code', async () => {
  const browser = await browse('lead');
  expect((await browser.ask('POST', '/api/session/hide', {})).status).toBe(200);
  const { paths } = (await browser.ask('GET', '/api/openapi.json')).body as { paths: Record<string, Record<string, unknown>> };
  const open: readonly string[] = [
    '/api/members',
    '/api/sign-in',
    '/api/sign-out',
    '/api/session',
    '/api/session/hide',
    '/api/session/who',
  ];
  const tried: string[] = [];
  for (const [path, methods] of Object.entries(paths)) {
    if (!path.startsWith('/api/') || path.startsWith('/api/calculators/') || (open.includes(path) && path !== '/api/members')) continue;
    for (const method of Object.keys(methods)) {
      if (path === '/api/members' && method === 'get') continue;
      const url = path.replace(/\{[^}]*\}/g, '0198a000-0000-7000-8000-000000000000');
      const answer = await browser.ask(method.toUpperCase() as 'GET', url, method === 'get' ? undefined : {});
      // What no schema takes is refused before anybody asks who is here: that tells nothing either.
      if (answer.status === 400) continue;
      expect([path, method, answer.status, answer.body]).toEqual([path, method, 423, HIDDEN]);
      tried.push(path);
    }
  }
  for (const path of [
    '/api/people',
    '/api/visits/{id}',
    '/api/visits/{id}/leaflet',
    '/api/signing',
    '/api/practice',
    '/api/shelf',
    '/api/rules',
  ])
    expect(tried).toContain(path);
  expect((await browser.ask('GET', '/api/session')).body).toEqual({ hidden: true, memberId: practice.members.lead });
  expect(
    (await browser.ask('PUT', '/api/visits/0198a000-0000-7000-8000-000000000000/fields', { path: 'nextOn', value: null })).status,
  ).toBe(423);
});

test('the code brings back the same member or another one, under a new token; the old one is worth nothing', async () => {
  const browser = await browse('lead');
  const old = browser.cookie();
  await browser.ask('POST', '/api/session/hide', {});
  expect((await browser.ask('POST', '/api/session/who', { memberId: practice.members.assistant, code: CODE })).status).toBe(200);
  expect(browser.cookie()).not.toBe(old);
  expect(await here(browser)).toBe('Tomas Quill');
  expect((await practice.app.inject({ url: '/api/session', cookies: { ebbline_session: old } })).json()).toBeNull();
  // Without a hidden screen the same door changes the member.
  await browser.ask('POST', '/api/session/who', { memberId: practice.members.dentist, code: CODE });
  expect(await here(browser)).toBe('Dr. Ahlgren');
  expect(
    (await practice.app.inject({ method: 'POST', url: '/api/session/who', payload: { memberId: practice.members.lead, code: CODE } }))
      .statusCode,
  ).toBe(401);
});

test('five wrong codes in a row, also at once, shut the code until the password is given; every no sounds alike', async () => {
  const browser = await browse('lead');
  const memberId = practice.members.dentist;
  const wrong = () => browser.ask('POST', '/api/session/who', { memberId, code: '1357' });
  const nobody = await browser.ask('POST', '/api/session/who', { memberId: 'nobody', code: CODE });
  const noes = [nobody, ...(await Promise.all([wrong(), wrong(), wrong(), wrong(), wrong()]))];
  const shut = await browser.ask('POST', '/api/session/who', { memberId, code: CODE });
  for (const no of [...noes, shut]) expect([no.status, no.body]).toEqual([403, nobody.body]);
  expect(await here(browser)).toBe('Ines Marrow');
  // Another member's code is not shut by it.
  await browser.ask('POST', '/api/session/who', { memberId: practice.members.assistant, code: CODE });
  expect(await here(browser)).toBe('Tomas Quill');
  await browser.ask('POST', '/api/session/who', { memberId, password: PASSWORD });
  expect(await here(browser)).toBe('Dr. Ahlgren');
  await browser.ask('POST', '/api/session/who', { memberId, code: CODE });
  expect(await here(browser)).toBe('Dr. Ahlgren');
  const log = await practice.db.selectFrom('change').select(['action', 'entityId']).where('stream', '=', 'access').execute();
  expect(log.filter(({ action, entityId }) => action === 'code-refused' && entityId === memberId)).toHaveLength(6);
  expect(log.filter(({ entityId }) => entityId === 'nobody')).toEqual([]);
});

test('four wrong codes and a right one begin anew', async () => {
  const browser = await browse('lead');
  const memberId = practice.members.assistant;
  for (let round = 0; round < 2; round += 1) {
    for (let i = 0; i < 4; i += 1) await browser.ask('POST', '/api/session/who', { memberId, code: '1357' });
    expect((await browser.ask('POST', '/api/session/who', { memberId, code: CODE })).status).toBe(200);
  }
});

test('a page that believes another member to be here does nothing in the wrong name', async () => {
  const browser = await browse('lead');
  const stale = { 'x-ebbline-member': practice.members.lead };
  expect((await browser.ask('GET', '/api/people', undefined, stale)).status).toBe(200);
  await browser.ask('POST', '/api/session/who', { memberId: practice.members.assistant, code: CODE });
  expect(await browser.ask('GET', '/api/people', undefined, stale)).toMatchObject({
    status: 423,
    body: { error: { code: 'MEMBER_CHANGED' } },
  });
});

test('everyone sets one code of 4 to 8 digits, his or her own, with the password; it stands in no log and no answer', async () => {
  const browser = await browse('assistant');
  const own = `/api/members/${practice.members.assistant}/code`;
  const set = (url: string, body: object) => browser.ask('PUT', url, body).then(({ status }) => status);
  for (const code of ['123', '123456789', 'abcd', '1111', '2345', '9876'])
    expect([code, await set(own, { password: PASSWORD, code })]).toEqual([code, 400]);
  expect(await set(own, { password: 'not this one', code: '7391' })).toBe(403);
  expect(await set(`/api/members/${practice.members.dentist}/code`, { password: PASSWORD, code: '7391' })).toBe(403);
  expect(await set(own, { password: PASSWORD, code: '73915' })).toBe(200);
  expect((await browser.ask('POST', '/api/session/who', { memberId: practice.members.assistant, code: '73915' })).status).toBe(200);
  const bodies = await practice.db.selectFrom('changeBody').select('body').execute();
  expect(bodies.filter(({ body }) => body.includes('73915') || body.includes('$argon2'))).toEqual([]);
});

test('a member who left comes back by no code, and the session ends', async () => {
  const browser = await browse('assistant');
  const member = await practice.db
    .selectFrom('member')
    .select('version')
    .where('id', '=', practice.members.assistant)
    .executeTakeFirstOrThrow();
  const change = { memberId: practice.members.assistant, roles: ['assistant'], trainedSwab: true } as const;
  const { version } = await changeMember(contextOf(practice.members.lead), { ...change, active: false, expectedVersion: member.version });
  expect((await browser.ask('GET', '/api/people')).status).toBe(401);
  const other = await browse('lead');
  expect((await other.ask('POST', '/api/session/who', { memberId: practice.members.assistant, code: CODE })).status).toBe(403);
  await changeMember(contextOf(practice.members.lead), { ...change, active: true, expectedVersion: version });
});

test('who has neither code nor password cannot hide the screen', async () => {
  const first = await practice.app.inject(`/sign-in/${practice.address.token}`);
  const cookies = { ebbline_session: first.cookies[0]?.value ?? '' };
  const { accountId } = await practice.db
    .selectFrom('member')
    .select('accountId')
    .where('id', '=', practice.members.lead)
    .executeTakeFirstOrThrow();
  await practice.db
    .deleteFrom('credential')
    .where('accountId', '=', accountId ?? '')
    .execute();
  const refused = await practice.app.inject({ method: 'POST', url: '/api/session/hide', cookies, payload: {} });
  expect([refused.statusCode, refused.json().error.code]).toEqual([400, 'INPUT_INVALID']);
  expect((await practice.app.inject({ url: '/api/people', cookies })).statusCode).toBe(200);
});
