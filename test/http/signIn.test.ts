import { afterAll, beforeAll, expect, test } from 'vitest';
import { PASSWORD, startPractice, type TestPractice } from './practice.ts';

let practice: TestPractice;
beforeAll(async () => {
  practice = await startPractice();
});
afterAll(() => practice.close());

test.each([
  ['GET', '/api/people'],
  ['POST', '/api/people'],
  ['GET', '/api/shelf'],
  ['GET', '/api/rules'],
  ['GET', '/api/visits/0198a000-0000-7000-8000-000000000000'],
] as const)('signed out, %s %s tells nothing', async (method, url) => {
  const response = await practice.app.inject({
    method,
    url,
    ...(method === 'POST' ? { payload: { name: 'A B', birthDate: '1980-01-01' } } : {}),
  });
  expect(response.statusCode).toBe(401);
  expect(response.json()).toEqual({ error: { code: 'NOT_SIGNED_IN', message: 'Sign in first.' } });
});

test('signed out, the page for signing in says that the practice is invented', async () => {
  expect((await practice.app.inject('/api/members')).json().inventedPractice).toBe('Tern Quay Dental');
});

test('signed out, the session is an ordinary null and the page is served', async () => {
  expect((await practice.app.inject('/api/session')).json()).toBeNull();
  const page = await practice.app.inject('/visits/whatever');
  expect(page.statusCode).toBe(200);
  expect(page.headers['content-security-policy']).toContain("script-src 'self'");
  expect(page.headers['content-security-policy']).not.toContain('unsafe');
});

test('the printed address signs in once, with a cookie that no script and no other site can use', async () => {
  const wrong = await practice.app.inject('/sign-in/not-the-token');
  expect([wrong.headers.location, wrong.cookies]).toEqual(['/sign-in', []]);

  const first = await practice.app.inject(`/sign-in/${practice.address.token}`);
  expect(first.headers.location).toBe('/');
  expect(first.cookies[0]).toMatchObject({ name: 'ebbline_session', httpOnly: true, sameSite: 'Strict', path: '/' });
  const session = await practice.app.inject({ url: '/api/session', cookies: { ebbline_session: first.cookies[0]?.value ?? '' } });
  expect(session.json()).toMatchObject({
    practice: { name: 'Tern Quay Dental', invented: true },
    member: { name: 'Ines Marrow' },
    today: '2026-11-25',
  });

  // How long somebody is here is told by the server's clock alone, and never as less than nothing.
  for (const [came, hereForMs] of [
    ['2026-11-25T10:40:37.000Z', 90_000],
    ['2026-11-25T11:42:07.000Z', 0],
  ] as const) {
    await practice.db.updateTable('session').set({ createdAt: came }).execute();
    const read = await practice.app.inject({ url: '/api/session', cookies: { ebbline_session: first.cookies[0]?.value ?? '' } });
    expect(read.json()).toMatchObject({ since: came, hereForMs });
  }

  const again = await practice.app.inject(`/sign-in/${practice.address.token}`);
  expect([again.headers.location, again.cookies]).toEqual(['/sign-in', []]);
});

test('a wrong password is refused in one sentence; the token itself is not in the store', async () => {
  const payload = { memberId: practice.members.dentist, password: `${PASSWORD}x` };
  const refused = await practice.app.inject({ method: 'POST', url: '/api/sign-in', payload });
  expect([refused.statusCode, refused.json().error.code, refused.cookies]).toEqual([401, 'NOT_SIGNED_IN', []]);

  const accepted = await practice.app.inject({ method: 'POST', url: '/api/sign-in', payload: { ...payload, password: PASSWORD } });
  const token = accepted.cookies[0]?.value ?? '';
  const sessions = await practice.db.selectFrom('session').selectAll().execute();
  expect(JSON.stringify(sessions)).not.toContain(token);

  const cookies = { ebbline_session: token };
  await practice.app.inject({ method: 'POST', url: '/api/sign-out', cookies });
  expect((await practice.app.inject({ url: '/api/session', cookies })).json()).toBeNull();
});

test('signed in, answers about people are kept by no cache', async () => {
  const ask = await practice.as('lead');
  expect((await ask('GET', '/api/people')).status).toBe(200);
  const response = await practice.app.inject('/api/session');
  expect(response.headers['cache-control']).toBe('no-store');
});
