import { afterAll, beforeAll, expect, test } from 'vitest';
import type { ChecksView } from '../../src/api/swabChecks.ts';
import { DEMO_LOTS, DEMO_METER } from '../../src/content/demo/practice.ts';
import type { Study } from '../../src/core/checks/study.ts';
import { MULTI_RULES } from '../../src/core/stats/multiRules.ts';
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

const view = async () => (await lead('GET', '/api/checks')).body as ChecksView;
const supplies = { meterId: DEMO_METER, lotId: DEMO_LOTS.inUse };
const plan = {
  meterId: DEMO_METER,
  every: { kind: 'daily' },
  rules: MULTI_RULES,
  solution: { name: 'ATP solution' },
  targets: [{ lotId: DEMO_LOTS.inUse, meanLn: Math.log(3000), sdLn: 0.1, count: 12, from: 'comparison' }],
};
const idOf = (answer: { body: unknown }) => (answer.body as { id: string }).id;

/** A file, which is no JSON. */
const table = async (url: string) => {
  const payload = { memberId: practice.members.lead, password: PASSWORD };
  const signedIn = await practice.app.inject({ method: 'POST', url: '/api/sign-in', payload });
  const cookies = Object.fromEntries(signedIn.cookies.map((cookie) => [cookie.name, cookie.value]));
  return practice.app.inject({ method: 'GET', url, cookies });
};

test('a plan, a control and its void: each by whoever may, and on the page at once', async () => {
  expect(await assistant('PUT', `/api/control-plans/${DEMO_METER}`, { plan, version: 0 })).toMatchObject({ status: 403 });
  expect(await lead('PUT', '/api/control-plans/another', { plan, version: 0 })).toMatchObject({ status: 400 });
  expect(await lead('PUT', `/api/control-plans/${DEMO_METER}`, { plan, version: 0 })).toMatchObject({ status: 200, body: { version: 1 } });
  expect(await lead('PUT', `/api/control-plans/${DEMO_METER}`, { plan, version: 0 })).toMatchObject({ status: 409 });

  const taken = await assistant('POST', '/api/controls', { ...supplies, rlu: 3050, note: { temperatureDegC: 21 } });
  expect(taken).toMatchObject({ status: 201 });
  expect(await assistant('POST', `/api/readings/${idOf(taken)}/void`, { version: 1, reason: 'a patient' })).toMatchObject({ status: 403 });
  expect(await lead('POST', `/api/readings/${idOf(taken)}/void`, { version: 1, reason: ' ' })).toMatchObject({ status: 400 });
  expect(await lead('POST', `/api/readings/${idOf(taken)}/void`, { version: 1, reason: 'a patient' })).toMatchObject({ status: 200 });
  expect(await view()).toMatchObject({
    today: '2026-11-25',
    plans: [{ plan, version: 1 }],
    controls: [{ id: idOf(taken), rlu: 3050, state: 'void', voidReason: 'a patient', operator: 'Tomas Quill' }],
  });
});

test.each([
  ['a word', { ...supplies, rlu: 'many' }, /rlu: must be a number/],
  ['nothing', { ...supplies, rlu: 0 }, /rlu: must be above 0/],
  ['more than the meter shows', { ...supplies, rlu: 70_000 }, /rlu: above the highest/],
  ['a field nobody knows', { ...supplies, rlu: 3000, mood: 'good' }, /mood/],
])('a control of %s is refused by name', async (_, body, message) => {
  const answer = await assistant('POST', '/api/controls', body);
  expect(answer).toMatchObject({ status: 400, body: { error: { message: expect.stringMatching(message) } } });
});

test('a control out of limits is overridden by a professional with a reason, for today', async () => {
  const out = idOf(await assistant('POST', '/api/controls', { ...supplies, rlu: 5000 }));
  const override = { controlId: out, reason: 'came from far' };
  expect(await assistant('POST', '/api/overrides', override)).toMatchObject({ status: 403 });
  expect(await lead('POST', '/api/overrides', override)).toMatchObject({ status: 200 });
  expect((await view()).overrides).toMatchObject([{ ...override, by: 'Ines Marrow', onDate: '2026-11-25' }]);
});

test('a stop is resolved, and its readings are looked at and left, each by whoever may', async () => {
  const out = (await view()).controls.findLast(({ state }) => state === 'valid')?.id;
  const url = `/api/stops/${out}`;
  expect(await assistant('GET', `${url}/readings`)).toMatchObject({
    status: 200,
    body: { version: 0, readings: [], question: { outId: out } },
  });
  const left = { decision: 'left', reason: 'none was taken', version: 0 };
  expect(await assistant('POST', `${url}/readings`, left)).toMatchObject({ status: 403 });
  expect(await lead('POST', `${url}/readings`, { ...left, decision: 'maybe' })).toMatchObject({ status: 400 });
  expect(await lead('POST', `${url}/readings`, left)).toMatchObject({ status: 200, body: { version: 1, changed: 0 } });
  const did = { answer: 'meter-cleaned' };
  expect(await assistant('POST', `${url}/resolve`, { did })).toMatchObject({ status: 400 });
  const again = await assistant('POST', '/api/controls', { ...supplies, rlu: 3000, did });
  expect(again).toMatchObject({ status: 201, body: { resolved: [{ outIds: [out], answer: 'meter-cleaned' }] } });
  const { resolutions, questions } = await view();
  expect(resolutions).toHaveLength(1);
  expect(questions).toMatchObject([{ version: 1, question: { decisions: [{ decision: 'left' }] } }]);
});

test('a target is set by hand, and a lot used without a comparison, each with a reason', async () => {
  const url = `/api/control-plans/${DEMO_METER}/targets/${DEMO_LOTS.next}`;
  const target = { meanRlu: 2900, cv: 0.12, reason: 'from the bottle', version: 1 };
  expect(await assistant('PUT', url, target)).toMatchObject({ status: 403 });
  expect(await lead('PUT', url, { ...target, cv: 2 })).toMatchObject({
    status: 400,
    body: { error: { message: expect.stringMatching(/cv/) } },
  });
  expect(await lead('PUT', url, target)).toMatchObject({ status: 200, body: { version: 2 } });
  expect(await lead('PUT', url, target)).toMatchObject({ status: 409 });
  const use = `/api/lots/${DEMO_LOTS.next}/uncompared`;
  expect(await assistant('POST', use, { reason: ' ' })).toMatchObject({ status: 400 });
  expect(await assistant('POST', use, { reason: 'the old one is used up' })).toMatchObject({ status: 200 });
  expect((await view()).lots.find(({ id }) => id === DEMO_LOTS.next)).toMatchObject({ uncompared: { by: 'Tomas Quill' } });
});

test('all controls come as a table; nothing in it is taken for a formula', async () => {
  await assistant('POST', '/api/controls', { ...supplies, rlu: 3100, note: { solution: { name: '=1+1, "odd"' } } });
  const { headers, body } = await table('/api/controls.csv');
  expect(headers['content-type']).toContain('text/csv');
  const lines = body.trim().split('\r\n');
  expect(lines[0]).toMatch(/^\ufeff?"taken at \(UTC\)","meter","lot"/);
  expect(lines).toHaveLength(5);
  expect(lines.filter((line) => line.includes('"out","control rule 2 of 6: one far too high"'))).toHaveLength(1);
  expect(lines.filter((line) => line.includes('"\'=1+1, ""odd"""'))).toHaveLength(1);
});

test('a study is planned, taken and reported; its figures go to the meter', async () => {
  const runs = ['A', 'B'].flatMap((part, p) =>
    ['Ines', 'Tomas'].flatMap((operator, o) => [1, 2].map((replicate, r) => ({ index: 4 * p + 2 * o + r, part, operator, replicate }))),
  );
  const design = { medium: 'atp-solution', parts: 2, operators: ['Ines', 'Tomas'], replicates: 2, seed: 1 };
  const planned = await lead('POST', '/api/studies', { kind: 'hands', meterId: DEMO_METER, lotIds: [DEMO_LOTS.inUse], design, runs });
  expect(planned).toMatchObject({ status: 201 });
  const url = `/api/studies/${idOf(planned)}`;
  expect(await assistant('POST', `${url}/readings`, { run: 0, rlu: 3000 })).toMatchObject({ status: 201 });
  const few = await lead('POST', `${url}/report`, { version: 2 });
  expect(few).toMatchObject({ status: 400, body: { error: { message: expect.stringMatching(/two solutions/) } } });
  const text = ['run,rlu', ...[3300, 2900, 2700, 5100, 5600, 4700, 4900].map((rlu, i) => `${i + 2},${rlu}`)].join('\n');
  expect(await assistant('POST', `${url}/table`, { text })).toMatchObject({ status: 200, body: { taken: 7, problems: [] } });
  expect((await view()).studies).toMatchObject([{ kind: 'hands', state: 'running', swabs: 8, taken: 8 }]);
  expect(await lead('POST', `${url}/report`, { version: 2 })).toMatchObject({ status: 200 });
  const { study } = (await lead('GET', url)).body as { study: Study };
  expect(study.report?.sentences[0]).toMatch(/^Hands add \d+ %, swabs \d+ %/);
  const own = (await view()).meters[0]?.meter.own;
  expect(own?.map(({ component, studyId }) => [component, studyId])).toEqual([
    ['operator', study.id],
    ['repeatability', study.id],
  ]);
});

test('training is noted; only a lead says that somebody is qualified', async () => {
  const url = `/api/members/${practice.members.dentist}/training`;
  expect(await assistant('POST', url, { step: { kind: 'watched' }, onDate: '2026-11-25' })).toMatchObject({ status: 200 });
  const qualified = { step: { kind: 'qualified-by-lead', reason: 'three swabs' }, onDate: '2026-11-25', dueOn: '2027-11-25' };
  expect(await assistant('POST', url, qualified)).toMatchObject({ status: 403 });
  expect(await lead('POST', url, qualified)).toMatchObject({ status: 200 });
  const { training, members } = await view();
  expect(training).toMatchObject([
    { memberId: practice.members.dentist, dueOn: '2027-11-25', events: [{}, { kind: 'qualified-by-lead' }] },
  ]);
  expect(members.find(({ id }) => id === practice.members.dentist)).toMatchObject({ trainedSwab: true });
});

test('readings against new lesions: counts and caution always, never a figure from too few', async () => {
  const url = `/api/cutoff-study?meterId=${DEMO_METER}&withinMonths=`;
  const { status, body } = await assistant('GET', `${url}12`);
  expect(status).toBe(200);
  expect(body).toMatchObject({ result: null, notEnough: 'too-few-with-lesion', caution: expect.stringContaining('thin') });
  expect(await assistant('GET', `${url}0`)).toMatchObject({ status: 400 });
  expect(await assistant('GET', '/api/cutoff-study?meterId=none&withinMonths=12')).toMatchObject({ status: 404 });
});

test('a person of a study is linked to a chart: too soon after its own swab a number is refused, and no name leaves the page', async () => {
  const runs = ['Person 1', 'Person 2', 'Person 1', 'Person 2'].map((part, index) => ({ index, part, replicate: 1 }));
  const design = { medium: 'people', parts: 2, operators: [], replicates: 2, seed: 1 };
  const planned = await lead('POST', '/api/studies', { kind: 'paired-days', meterId: DEMO_METER, lotIds: [DEMO_LOTS.inUse], design, runs });
  const url = `/api/studies/${idOf(planned)}`;
  const patientId = idOf(await assistant('POST', '/api/people', { name: 'Odile Fenn', birthDate: '1984-03-07' }));
  const link = { part: 'Person 1', patientId, version: 0 };
  expect(await assistant('PUT', `${url}/people`, { ...link, mood: 'good' })).toMatchObject({ status: 400 });
  expect(await assistant('PUT', `${url}/people`, link)).toMatchObject({ status: 200, body: { version: 1 } });
  expect(await assistant('PUT', `${url}/people`, link)).toMatchObject({ status: 400 });
  expect(await assistant('PUT', `${url}/people`, { ...link, patientId: null })).toMatchObject({ status: 409 });
  expect(await assistant('GET', url)).toMatchObject({ body: { people: [{ part: 'Person 1', name: 'Odile Fenn', version: 1 }] } });

  const read = (run: number, takenAt: string) => assistant('POST', `${url}/readings`, { run, rlu: 3000, takenAt });
  expect(await read(0, '2026-11-24T09:00:00Z')).toMatchObject({ status: 201 });
  expect(await read(2, '2026-11-25T08:59:00Z')).toMatchObject({
    status: 422,
    body: { error: { code: 'SWAB_TOO_SOON', message: expect.stringMatching(/^Person 1 was swabbed for a study on 24 November 2026/) } },
  });
  const { visitId } = (await assistant('POST', `/api/people/${patientId}/visits`, {})).body as { visitId: string };
  expect(await assistant('GET', `/api/visits/${visitId}`)).toMatchObject({
    body: { input: { visit: { studySwabs: [{ takenAt: '2026-11-24T09:00:00.000Z' }] } } },
  });
  const csv = await table(`${url}/readings.csv`);
  expect(csv.body).toContain('"Person 1"');
  for (const secret of ['Odile', patientId]) expect(csv.body).not.toContain(secret);
});
