import { afterAll, beforeAll, expect, test } from 'vitest';
import type { PracticeView } from '../../src/api/bundles.ts';
import { listLatestChanges } from '../../src/store/read/changes.ts';
import { type Asks, NOW, startPractice, type TestPractice } from './practice.ts';

let practice: TestPractice;
let lead: Asks;
let assistant: Asks;
beforeAll(async () => {
  practice = await startPractice();
  lead = await practice.as('lead');
  assistant = await practice.as('assistant');
});
afterAll(() => practice.close());

const view = async () => (await lead('GET', '/api/practice')).body as PracticeView;

test('a lot is added, changed on the version that was seen, and refused on an older one', async () => {
  const lot = { id: 'lot-elm', name: 'Elm', expiresOn: '2027-08-31' };
  expect(await assistant('PUT', '/api/lots/lot-elm', { lot, version: 0 })).toMatchObject({ status: 200, body: { version: 1 } });
  expect(await assistant('PUT', '/api/lots/lot-elm', { lot: { ...lot, expiresOn: '2027-09-30' }, version: 1 })).toMatchObject({
    status: 200,
  });
  expect(await assistant('PUT', '/api/lots/lot-elm', { lot, version: 1 })).toMatchObject({ status: 409 });
  expect((await view()).lots.find((entry) => entry.lot.id === 'lot-elm')?.lot.expiresOn).toBe('2027-09-30');
  expect(await assistant('PUT', '/api/lots/lot-elm', { lot: { ...lot, expiresOn: 'soon' }, version: 2 })).toMatchObject({ status: 400 });
});

test("a meter's cut-off lies inside its range; an assistant may not change it", async () => {
  const [entry] = (await view()).meters;
  if (!entry) throw new Error('the practice has a meter');
  const body = (cutoffRlu: number) => ({ meter: { ...entry.meter, cutoffRlu }, version: entry.version });
  expect(await lead('PUT', `/api/meters/${entry.meter.id}`, body(70_000))).toMatchObject({ status: 400 });
  expect(await assistant('PUT', `/api/meters/${entry.meter.id}`, body(4_300))).toMatchObject({ status: 403 });
  expect(await lead('PUT', `/api/meters/${entry.meter.id}`, body(4_300))).toMatchObject({ status: 200 });
  expect(await lead('PUT', '/api/meters/another', body(4_300))).toMatchObject({ status: 400 });
});

test('a lead adds a member who then signs in with the password; nobody else can', async () => {
  const member = { name: 'Rosa Tamm', roles: ['hygienist'], trainedSwab: true, password: 'eight letters' };
  expect(await assistant('POST', '/api/members', member)).toMatchObject({ status: 403 });
  expect(await lead('POST', '/api/members', { ...member, password: 'short' })).toMatchObject({ status: 400 });
  const added = await lead('POST', '/api/members', member);
  const memberId = (added.body as { id: string }).id;
  const signIn = (password: string) => practice.app.inject({ method: 'POST', url: '/api/sign-in', payload: { memberId, password } });
  expect((await signIn('eight letters')).statusCode).toBe(200);

  expect(await assistant('PUT', `/api/members/${memberId}/password`, { password: 'another one' })).toMatchObject({ status: 403 });
  expect(await lead('PUT', `/api/members/${memberId}/password`, { password: 'another one' })).toMatchObject({ status: 200 });
  expect([(await signIn('eight letters')).statusCode, (await signIn('another one')).statusCode]).toEqual([401, 200]);
  expect((await view()).members.find((m) => m.id === memberId)).toMatchObject({ name: 'Rosa Tamm', hasPassword: true, active: true });
});

test('the settings are the practice’s own: place, methods, saliva limit', async () => {
  const { settings, version } = (await lead('GET', '/api/rules')).body as { settings: Record<string, unknown>; version: number };
  const changed = { ...settings, jurisdiction: 'US', stimulatedFlowLowAtMostMlPerMin: 0.5 };
  expect(await assistant('PUT', '/api/settings', { settings: changed, version })).toMatchObject({ status: 403 });
  expect(await lead('PUT', '/api/settings', { settings: { ...changed, jurisdiction: 'Mars' }, version })).toMatchObject({ status: 400 });
  expect(await lead('PUT', '/api/settings', { settings: changed, version })).toMatchObject({ status: 200 });
  expect((await lead('GET', '/api/rules')).body).toMatchObject({ settings: { jurisdiction: 'US', stimulatedFlowLowAtMostMlPerMin: 0.5 } });
});

test('what decides between regimens is kept, with who changed it and when; only a lead may', async () => {
  const { settings, version } = (await lead('GET', '/api/rules')).body as { settings: Record<string, unknown>; version: number };
  const changed = { ...settings, regimenOrder: ['cost', 'tasks', 'items'] };
  expect(await assistant('PUT', '/api/settings', { settings: changed, version })).toMatchObject({ status: 403 });
  expect(await lead('PUT', '/api/settings', { settings: { ...settings, regimenOrder: ['luck'] }, version })).toMatchObject({ status: 400 });
  expect(await lead('PUT', '/api/settings', { settings: changed, version })).toMatchObject({ status: 200 });
  expect((await lead('GET', '/api/rules')).body).toMatchObject({ settings: { regimenOrder: ['cost', 'tasks', 'items'] } });
  const changes = await listLatestChanges(practice.db, practice.scope, 'record', 1);
  expect(changes[0]).toMatchObject({ action: 'saveSettings', memberId: practice.members.lead, at: NOW });
});

test('where sources disagree a lead chooses a position that there is, and takes the choice back', async () => {
  type Rules = { settings: Record<string, unknown>; version: number };
  const rules = async () => (await lead('GET', '/api/rules')).body as Rules;
  const choose = async (asks: Asks, disagreements: Record<string, string>) => {
    const { settings, version } = await rules();
    return asks('PUT', '/api/settings', { settings: { ...settings, disagreements }, version });
  };
  expect(await choose(assistant, { 'rinse-age': 'from-6' })).toMatchObject({ status: 403 });
  const wrong = await choose(lead, { 'rinse-age': 'from-5' });
  expect([wrong.status, JSON.stringify(wrong.body)]).toEqual([
    400,
    expect.stringContaining('settings.disagreements.rinse-age: must be one of'),
  ]);
  expect(await choose(lead, { roots: 'silver' })).toMatchObject({ status: 400 });
  expect(await choose(lead, { 'rinse-age': 'from-6' })).toMatchObject({ status: 200 });
  expect((await rules()).settings).toMatchObject({ disagreements: { 'rinse-age': 'from-6' } });
  expect(await choose(lead, {})).toMatchObject({ status: 200 });
  expect((await rules()).settings).toMatchObject({ disagreements: {} });
});

test('an item is added to the shelf, and only a dentist may free one from signature', async () => {
  const { items } = (await lead('GET', '/api/shelf')).body as { items: { item: { id: string; release: string }; version: number }[] };
  const strong = items.find(({ item }) => item.release === 'prescription');
  if (!strong) throw new Error('the shelf holds a prescription item');
  const freed = { item: { ...strong.item, release: 'anyone' }, version: strong.version };
  expect(await lead('PUT', `/api/shelf/${strong.item.id}`, freed)).toMatchObject({ status: 403 });
  const fresh = { ...strong.item, id: 'own-item', release: 'prescription' };
  expect(await lead('PUT', '/api/shelf/own-item', { item: fresh, version: 0 })).toMatchObject({ status: 200, body: { version: 1 } });
});
