import { afterAll, beforeAll, expect, test } from 'vitest';
import type { VisitBundle } from '../../src/api/bundles.ts';
import type { PrescriptionsView, Releases, SigningView, StandingOrderView } from '../../src/api/signing.ts';
import { content } from '../../src/content/allContent.ts';
import { assessVisit } from '../../src/core/visit/assessVisit.ts';
import type { VisitAssessment } from '../../src/core/visit/types.ts';
import { verify } from '../../src/store/verify.ts';
import { type Asks, openVisitFor, startPractice, type TestPractice, TODAY } from './practice.ts';

let practice: TestPractice;
let lead: Asks;
let dentist: Asks;
let assistant: Asks;
beforeAll(async () => {
  practice = await startPractice();
  [lead, dentist, assistant] = [await practice.as('lead'), await practice.as('dentist'), await practice.as('assistant')];
});
afterAll(() => practice.close());

const asked = (value: unknown) => ({ how: 'asked', value, askedOn: TODAY });
const SAFE: Readonly<Record<string, unknown>> = {
  natural_teeth: 'has-teeth',
  medicines: [],
  allergies: [],
  conditions: [],
  private_conditions: [],
  household: [],
  appliance: [],
  dry_mouth: 'no',
};
const STRONG = 'paste-naf-5000';

/** A grown-up with a cavity at a confirmed high level: the strong paste waits. */
async function visitThatWaits(name: string, answers: Readonly<Record<string, unknown>> = {}): Promise<string> {
  const { visitId } = await openVisitFor(lead, { name, birthDate: '1961-07-08' });
  for (const [id, value] of Object.entries({ ...SAFE, ...answers }))
    await lead('PUT', `/api/visits/${visitId}/fields`, { path: `answers.${id}`, value: asked(value) });
  const finding = { tooth: '36', surface: 'occlusal', kind: 'cavity', activity: 'active', isNew: true };
  await lead('PUT', `/api/visits/${visitId}/fields`, { path: 'findings', value: [finding] });
  expect((await lead('POST', `/api/visits/${visitId}/level`, { level: 'high' })).status).toBe(200);
  return visitId;
}

const planOf = async (visitId: string) => {
  const { input } = (await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle;
  return assessVisit(input, content).plan;
};
const stored = async (visitId: string) => ((await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle).stored as VisitAssessment;
const signing = async (ask: Asks) => (await ask('GET', '/api/signing')).body as SigningView;
const leaflet = async (visitId: string) => JSON.stringify((await lead('GET', `/api/visits/${visitId}/leaflet`)).body);
const prescriptions = async (visitId: string) => (await lead('GET', `/api/visits/${visitId}/prescriptions`)).body as PrescriptionsView;

test('the queue: what waits in an open visit, with why and who; to an assistant only how many and who could sign', async () => {
  const visitId = await visitThatWaits('Nadia Ferris');
  const view = await signing(dentist);
  const line = view.lines.find((l) => l.visitId === visitId && l.shelfItemId === STRONG);
  expect(line).toMatchObject({
    person: 'Nadia Ferris',
    ageYears: 65,
    isOpen: true,
    item: 'Paste, sodium fluoride 1.1 % (5,000 ppm F)',
    level: 'high, confirmed by Ines Marrow',
    askedBy: 'Ines Marrow',
    orders: [],
  });
  expect(line?.directions).toMatch(/a day: /);
  expect(line?.because.length).toBeGreaterThan(0);
  expect(view.signers).toEqual(['Dr. Ahlgren']);
  expect(await signing(assistant)).toEqual({ count: view.count, signers: ['Dr. Ahlgren'], lines: [] });
  // Declined by the person: nobody is asked to sign it.
  await lead('PUT', `/api/visits/${visitId}/fields`, { path: 'agreed', value: { items: { [STRONG]: 'declined' } } });
  expect((await signing(dentist)).lines.filter((l) => l.visitId === visitId && l.shelfItemId === STRONG)).toEqual([]);
});

test('refused: on the plan with the reason, not proposed again, on no leaflet and no prescription; taken back it waits again', async () => {
  const visitId = await visitThatWaits('Rui Falk');
  const body = { shelfItemId: STRONG, reason: 'kidneys first' };
  for (const ask of [lead, assistant]) expect((await ask('POST', `/api/visits/${visitId}/refusals`, body)).status).toBe(403);
  expect(await dentist('POST', `/api/visits/${visitId}/refusals`, { ...body, reason: ' ' })).toMatchObject({ status: 400 });
  const refused = await dentist('POST', `/api/visits/${visitId}/refusals`, body);
  expect(refused.body as Releases).toMatchObject({
    signed: [],
    refused: [{ shelfItemId: STRONG, by: 'Dr. Ahlgren', reason: 'kidneys first' }],
  });
  const plan = await planOf(visitId);
  expect(plan.lines.map((l) => l.shelfItemId)).not.toContain(STRONG);
  expect(plan.refused).toMatchObject([{ shelfItemId: STRONG, reason: 'kidneys first' }]);
  expect(await leaflet(visitId)).not.toMatch(/very strong fluoride paste/i);
  expect((await dentist('POST', `/api/visits/${visitId}/withdrawals`, { shelfItemId: STRONG })).body).toMatchObject({ refused: [] });
  expect((await planOf(visitId)).lines.find((l) => l.shelfItemId === STRONG)?.state).toBe('waiting-for-signature');
});

test('signed after the visit was closed: plan, leaflet and prescription say so; taken back with a reason, they no longer do', async () => {
  const visitId = await visitThatWaits('Ida Thorn');
  await lead('POST', `/api/visits/${visitId}/close`, {});
  expect((await prescriptions(visitId)).items).toEqual([]);
  expect(await leaflet(visitId)).not.toMatch(/very strong fluoride paste/i);
  expect((await signing(dentist)).lines.some((l) => l.visitId === visitId && !l.isOpen)).toBe(true);
  await dentist('POST', `/api/visits/${visitId}/signatures`, { shelfItemId: STRONG });
  expect((await stored(visitId)).plan.lines.find((l) => l.shelfItemId === STRONG)).toMatchObject({
    state: 'signed',
    signedBy: { name: 'Dr. Ahlgren' },
  });
  expect(await leaflet(visitId)).toMatch(/very strong fluoride paste: signed by Dr. Ahlgren/i);
  expect(await prescriptions(visitId)).toMatchObject({
    person: 'Ida Thorn',
    birthDate: '1961-07-08',
    items: [
      {
        form: 'paste',
        strength: '1.1 % sodium fluoride',
        quantity: '1 pack of 51 g',
        signedBy: { name: 'Dr. Ahlgren' },
      },
    ],
  });
  const withdrawal = { shelfItemId: STRONG };
  expect(await dentist('POST', `/api/visits/${visitId}/withdrawals`, withdrawal)).toMatchObject({
    status: 400,
    body: { error: { code: 'REASON_REQUIRED' } },
  });
  await dentist('POST', `/api/visits/${visitId}/withdrawals`, { ...withdrawal, reason: 'new medicine' });
  expect((await stored(visitId)).plan.lines.find((l) => l.shelfItemId === STRONG)?.state).toBe('waiting-for-signature');
  expect(await leaflet(visitId)).not.toMatch(/very strong fluoride paste/i);
  expect((await prescriptions(visitId)).items).toEqual([]);
  expect(await verify(practice.db)).toMatchObject({ ok: true, problems: [] });
});

test('once printed, a signature is taken back only with a reason', async () => {
  const visitId = await visitThatWaits('Per Quist');
  await dentist('POST', `/api/visits/${visitId}/signatures`, { shelfItemId: STRONG });
  expect((await lead('POST', `/api/visits/${visitId}/printed`, { what: 'leaflet' })).status).toBe(200);
  expect((await dentist('POST', `/api/visits/${visitId}/withdrawals`, { shelfItemId: STRONG })).status).toBe(400);
  expect((await dentist('POST', `/api/visits/${visitId}/withdrawals`, { shelfItemId: STRONG, reason: 'r' })).status).toBe(200);
});

test('a standing order lets a hygienist sign what waits, and nothing that a rule stops or holds back', async () => {
  const order = { name: 'Strong paste', date: TODAY, shelfItemIds: [STRONG] };
  expect((await lead('POST', '/api/standing-orders', order)).status).toBe(403);
  const { id } = (await dentist('POST', '/api/standing-orders', order)).body as { id: string };
  const waits = await visitThatWaits('Una Voss');
  expect((await signing(lead)).lines.find((l) => l.visitId === waits)?.orders).toMatchObject([
    { id, name: 'Strong paste', by: 'Dr. Ahlgren' },
  ]);
  const signed = await lead('POST', `/api/visits/${waits}/signatures`, { shelfItemId: STRONG, standingOrderId: id });
  expect(signed.body).toMatchObject({
    signed: [{ by: 'Ines Marrow', standingOrder: { name: 'Strong paste', date: TODAY, by: 'Dr. Ahlgren' } }],
  });
  expect(await leaflet(waits)).toContain('signed by Ines Marrow on the standing order');

  const { visitId: unasked } = await openVisitFor(lead, { name: 'Nothing Asked', birthDate: '1961-07-08' });
  const stopped = await visitThatWaits('Sodium Allergy', { allergies: ['fluoride'] });
  for (const visitId of [unasked, stopped]) {
    const refused = await lead('POST', `/api/visits/${visitId}/signatures`, { shelfItemId: STRONG, standingOrderId: id });
    expect([403, 422]).toContain(refused.status);
    expect((await planOf(visitId)).lines.filter((l) => l.shelfItemId === STRONG && l.state === 'signed')).toEqual([]);
  }

  const { orders } = (await lead('GET', '/api/standing-orders')).body as { orders: StandingOrderView[] };
  expect(orders).toMatchObject([{ id, holds: true, signedBy: 'Dr. Ahlgren', withdrawnBy: null }]);
  expect((await lead('POST', `/api/standing-orders/${id}/withdrawal`, { version: 1 })).status).toBe(403);
  expect((await dentist('POST', `/api/standing-orders/${id}/withdrawal`, { version: 1 })).status).toBe(200);
  const later = await visitThatWaits('Wim Later');
  expect(await lead('POST', `/api/visits/${later}/signatures`, { shelfItemId: STRONG, standingOrderId: id })).toMatchObject({
    status: 404,
  });
});

test('a standing order says for how many packs; a signature on it stays within its packs and its last day, and a pack beyond waits', async () => {
  const order = { name: 'Two packs', date: TODAY, until: '2026-12-31', shelfItemIds: [STRONG], packs: 2 };
  expect(await dentist('POST', '/api/standing-orders', { ...order, packs: 0 })).toMatchObject({ status: 400 });
  const { id: standingOrderId } = (await dentist('POST', '/api/standing-orders', order)).body as { id: string };
  await lead('POST', `/api/shelf/${STRONG}/receipts`, { packs: 5, lot: 'a', expiry: '2028-12-31' });
  const visitId = await visitThatWaits('Ester Dahl');
  expect((await signing(lead)).lines.find((l) => l.visitId === visitId)).toMatchObject({
    isForHome: true,
    orders: expect.arrayContaining([expect.objectContaining({ name: 'Two packs', packs: 2, until: '2026-12-31' })]),
  });
  const sign = (rest: object) => lead('POST', `/api/visits/${visitId}/signatures`, { shelfItemId: STRONG, standingOrderId, ...rest });
  expect(await sign({ packs: 3 })).toMatchObject({
    status: 400,
    body: { error: { message: 'packs: the standing order Two packs covers at most 2.' } },
  });
  expect(await sign({ until: '2027-01-01' })).toMatchObject({
    status: 400,
    body: { error: { message: 'until: the standing order Two packs ends on 2026-12-31.' } },
  });
  expect(await sign({ packs: 2, until: '2026-12-01' })).toMatchObject({
    status: 200,
    body: { signed: [{ packs: 2, until: '2026-12-01' }] },
  });
  expect((await planOf(visitId)).lines.find((l) => l.shelfItemId === STRONG)?.signedBy).toMatchObject({ packs: 2, until: '2026-12-01' });
  const give = (ask: Asks, rest: object) => ask('POST', `/api/visits/${visitId}/given`, { shelfItemId: STRONG, ...rest });
  expect(await give(lead, { packs: 3 })).toMatchObject({
    status: 422,
    body: { error: { code: 'SIGNATURE_MISSING', message: expect.stringContaining('signed for 2 packs in all, to 1 December 2026') } },
  });
  expect(await give(lead, { packs: 2 })).toMatchObject({ status: 201 });
  expect(await give(lead, {})).toMatchObject({ status: 422 });
  expect(await sign({ packs: 2 })).toMatchObject({ status: 403 });
  expect(await give(dentist, {})).toMatchObject({ status: 400, body: { error: { code: 'REASON_REQUIRED' } } });
  expect(await give(dentist, { reason: 'going abroad' })).toMatchObject({ status: 201 });
});

test('a dentist signs against the one rule that stops an item, with a reason that stands on plan and record; nobody else, and no other rule', async () => {
  const visitId = await visitThatWaits('Otto Lind', { allergies: ['colophony'] });
  const before = await planOf(visitId);
  const stops = (id: string) => before.notOffered.filter((e) => e.shelfItemId === id && e.level === 'stop');
  const stop = before.notOffered.find((e) => e.overridable === true && stops(e.shelfItemId).length === 1);
  expect(stop).toBeDefined();
  const { shelfItemId, ruleId } = stop ?? { shelfItemId: '', ruleId: '' };
  const body = { shelfItemId, override: { ruleId, reason: 'patch test negative' } };
  expect(await dentist('POST', `/api/visits/${visitId}/signatures`, { shelfItemId })).toMatchObject({ status: 422 });
  expect(await lead('POST', `/api/visits/${visitId}/signatures`, body)).toMatchObject({ status: 403 });
  const other = { ...body, override: { ...body.override, ruleId: 'C01' } };
  expect(await dentist('POST', `/api/visits/${visitId}/signatures`, other)).toMatchObject({ status: 422 });
  expect(await dentist('POST', `/api/visits/${visitId}/signatures`, body)).toMatchObject({ status: 200 });
  expect((await planOf(visitId)).lines.find((l) => l.shelfItemId === shelfItemId)).toMatchObject({
    state: 'signed',
    signedBy: { name: 'Dr. Ahlgren', override: { ruleId, reason: 'patch test negative' } },
  });
  expect(await leaflet(visitId)).not.toContain('patch test');
});
