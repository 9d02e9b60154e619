import { afterAll, beforeAll, expect, test } from 'vitest';
import type { ChecksView } from '../../src/api/swabChecks.ts';
import { DEMO_METER } from '../../src/content/demo/practice.ts';
import { type Asks, PASSWORD, startPractice, type TestPractice } from './practice.ts';

let practice: TestPractice;
let lead: Asks;
let assistant: Asks;
beforeAll(async () => {
  practice = await startPractice();
  lead = await practice.as('lead');
  assistant = await practice.as('assistant');
});
afterAll(() => practice.close());

const url = `/api/meter-check-plans/${DEMO_METER}`;
const plan = { meterId: DEMO_METER, everyDays: 30, limits: { lowRlu: 900, highRlu: 1100 } };

test('how often a meter is checked is set by whoever may; a check is judged by the limits and comes back, also as a table', async () => {
  expect(await assistant('PUT', url, { plan, version: 0 })).toMatchObject({ status: 403 });
  expect(await lead('PUT', '/api/meter-check-plans/another', { plan, version: 0 })).toMatchObject({ status: 400 });
  expect(await lead('PUT', url, { plan, version: 0 })).toMatchObject({ status: 200, body: { version: 1 } });
  expect(await lead('PUT', url, { plan, version: 0 })).toMatchObject({ status: 409 });

  const check = { meterId: DEMO_METER, checkedBy: 'device', rlu: 850, words: '=1+1' };
  expect(await assistant('POST', '/api/meter-checks', check)).toMatchObject({ status: 201, body: { passed: false } });
  const { meterChecks, meterCheckPlans, controls } = (await lead('GET', '/api/checks')).body as ChecksView;
  expect(meterCheckPlans).toEqual([{ plan, version: 1 }]);
  expect(controls).toEqual([]);
  expect(meterChecks).toMatchObject([{ rlu: 850, operator: 'Tomas Quill', note: { passed: false, limits: plan.limits } }]);

  const signedIn = await practice.app.inject({
    method: 'POST',
    url: '/api/sign-in',
    payload: { memberId: practice.members.lead, password: PASSWORD },
  });
  const cookies = Object.fromEntries(signedIn.cookies.map((cookie) => [cookie.name, cookie.value]));
  const { body } = await practice.app.inject({ method: 'GET', url: '/api/meter-checks.csv', cookies });
  expect(body.trim().split('\r\n')[1]).toMatch(/,"Tomas Quill","device",850,"exact",900,1100,"no","valid",,,"'=1\+1"$/);
});

test.each([
  ['without an outcome', { meterId: DEMO_METER, checkedBy: 'solution' }, /passed: must be said/],
  ['by a guess', { meterId: DEMO_METER, checkedBy: 'guess', passed: true }, /checkedBy/],
  ['with a field nobody knows', { meterId: DEMO_METER, checkedBy: 'device', passed: true, mood: 'good' }, /mood/],
])('a check %s is refused by name', async (_, body, message) => {
  expect(await assistant('POST', '/api/meter-checks', body)).toMatchObject({
    status: 400,
    body: { error: { message: expect.stringMatching(message) } },
  });
});
