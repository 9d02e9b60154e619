import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LeafletBundle, PersonRecord } from '../../src/api/bundles.ts';
import type { PrescriptionsView } from '../../src/api/signing.ts';
import type { GivenView, RefillView } from '../../src/api/stock.ts';
import { listTasksOfPatient } from '../../src/store/read/tasks.ts';
import { type Asks, openVisitFor, startPractice, type TestPractice, TODAY } from './practice.ts';

const PASTE = 'paste-naf-1450';
const STRONG = 'paste-naf-5000';
const LATER = '2027-01-15T09:00:00.000Z';
const asked = (value: unknown) => ({ how: 'asked', value, askedOn: TODAY });
const NO = asked([]);

let practice: TestPractice;
let lead: Asks;
let dentist: Asks;
let assistant: Asks;

/** Visits that closed on the first day, each with what was told and agreed there; then everybody signs in on a later one. */
const VISITS = {
  plain: {},
  other: {},
  stopped: {},
  strong: { items: [STRONG], sign: { packs: 2, until: '2027-02-01' } },
  once: { items: [STRONG] },
  anew: { items: [STRONG] },
  ended: { items: [STRONG], sign: { packs: 5, until: '2027-01-14' } },
  forbidden: { items: [STRONG] },
} as const satisfies Readonly<Record<string, Told>>;
const closed = {} as Record<keyof typeof VISITS, { readonly personId: string; readonly visitId: string }>;

beforeAll(async () => {
  practice = await startPractice();
  lead = await practice.as('lead');
  dentist = await practice.as('dentist');
  for (const id of [PASTE, STRONG]) {
    await lead('POST', `/api/shelf/${id}/receipts`, { packs: 3, lot: 'late', expiry: '2028-12-31' });
    await lead('POST', `/api/shelf/${id}/receipts`, { packs: 3, lot: 'soon', expiry: '2027-06-30' });
  }
  for (const [name, told] of Object.entries(VISITS)) closed[name as keyof typeof VISITS] = await closeVisit(name, told);
  practice.clock.now = LATER;
  [lead, dentist, assistant] = [await practice.as('lead'), await practice.as('dentist'), await practice.as('assistant')];
});
afterAll(() => practice.close());

async function closeVisit(name: string, { items = [PASTE], sign = {} }: Told) {
  const { personId, visitId } = await openVisitFor(lead, { name: `Somebody ${name}`, birthDate: '1980-03-04' });
  const put = (path: string, value: unknown) => lead('PUT', `/api/visits/${visitId}/fields`, { path, value });
  const told = {
    medicines: NO,
    allergies: NO,
    conditions: NO,
    private_conditions: NO,
    pregnant: asked('no'),
    natural_teeth: asked('has-teeth'),
  };
  for (const [id, answer] of Object.entries({ ...told, can_spit: asked(true) })) await put(`answers.${id}`, answer);
  await put('findings', [{ tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: true }]);
  await lead('POST', `/api/visits/${visitId}/level`, { level: 'high' });
  if (items.includes(STRONG)) {
    expect(await dentist('POST', `/api/visits/${visitId}/signatures`, { shelfItemId: STRONG, ...sign })).toMatchObject({ status: 200 });
  }
  await put('agreed', { items: Object.fromEntries(items.map((id) => [id, 'agreed'])) });
  const ended = await lead('POST', `/api/visits/${visitId}/close`, {});
  expect([name, ended.status, ended.body]).toEqual([name, 200, expect.anything()]);
  return { personId, visitId };
}
interface Told {
  readonly items?: readonly string[];
  readonly sign?: { readonly packs?: number; readonly until?: string };
}

const refillsOf = async (ask: Asks, visitId: string) => (await ask('GET', `/api/visits/${visitId}/refills`)).body as RefillView;
const give = (ask: Asks, visitId: string, shelfItemId: string, rest: object = {}) =>
  ask('POST', `/api/visits/${visitId}/refills`, { shelfItemId, nothingNew: true, ...rest });

test('an agreed pack goes again at the counter once the person was asked, from the lot that expires first, and is taken back', async () => {
  const { visitId } = closed.plain;
  expect(await refillsOf(assistant, visitId)).toMatchObject({
    notHere: null,
    lines: [{ shelfItemId: PASTE, state: 'may-be-given', lastGivenOn: null }],
  });
  expect(await give(assistant, visitId, PASTE, { nothingNew: false })).toMatchObject({ status: 400 });
  expect(await give(assistant, visitId, PASTE)).toMatchObject({ status: 201, body: { lots: [{ lot: 'soon', quantity: 1 }] } });
  const { moves } = (await assistant('GET', `/api/visits/${visitId}/given`)).body as GivenView;
  expect(moves).toMatchObject([{ onDate: '2027-01-15', by: 'Tomas Quill', note: expect.stringContaining('asked, nothing new') }]);
  expect(await assistant('POST', `/api/stock-moves/${moves[0]?.id}/taken-back`, {})).toMatchObject({ status: 200 });
  expect((await refillsOf(assistant, visitId)).lines[0]?.lastGivenOn).toBeNull();
});

test('what was not agreed is not given at the counter, and on a later day the door of the visit itself takes a professional', async () => {
  const { visitId } = closed.other;
  expect(await give(assistant, visitId, 'rinse-naf-005')).toMatchObject({ status: 422, body: { error: { code: 'ITEM_STOPPED' } } });
  expect(await assistant('POST', `/api/visits/${visitId}/given`, { shelfItemId: PASTE })).toMatchObject({ status: 403 });
});

test('a yes gives nothing, leaves a check for today without a word of what is new, and holds until a visit', async () => {
  const { personId, visitId } = closed.stopped;
  expect(await assistant('POST', `/api/visits/${visitId}/refill-stops`, {})).toMatchObject({ status: 201 });
  expect(await assistant('POST', `/api/visits/${visitId}/refill-stops`, {})).toMatchObject({ status: 201 });
  const tasks = (await listTasksOfPatient(practice.db, practice.scope, personId)).filter(({ note }) => note?.startsWith('Something new'));
  expect(tasks).toMatchObject([{ kind: 'check', due: '2027-01-15', state: 'open' }]);
  expect((await refillsOf(assistant, visitId)).notHere).toContain('Something new was told');
  expect(await give(assistant, visitId, PASTE)).toMatchObject({ status: 422 });
});

test('a prescription pack goes as far as its signature, then waits for the dentist, who may give it', async () => {
  const { visitId } = closed.strong;
  expect(await give(assistant, visitId, STRONG)).toMatchObject({ status: 201 });
  expect(await give(assistant, visitId, STRONG)).toMatchObject({ status: 201 });
  expect((await refillsOf(assistant, visitId)).lines).toMatchObject([
    {
      state: 'waits',
      given: 2,
      over: 'packs',
      signedBy: { name: 'Dr. Ahlgren', packs: 2, until: '2027-02-01' },
      says: 'Waits for the dentist: Dr. Ahlgren signed for 2 packs, and they were given.',
    },
  ]);
  expect(await give(assistant, visitId, STRONG)).toMatchObject({
    status: 422,
    body: { error: { code: 'SIGNATURE_MISSING', message: expect.stringContaining('signed for 2 packs, and they were given') } },
  });
  expect(await give(dentist, visitId, STRONG)).toMatchObject({ status: 201 });
});

test.each([
  ['one pack where it says nothing of more', 'once', 1],
  ['none after its last day', 'ended', 0],
] as const)('a signature covers %s', async (_, name, packs) => {
  const { visitId } = closed[name];
  const found: number[] = [];
  for (let i = 0; i < 2; i += 1)
    found.push((await give(assistant, visitId, STRONG, { lot: { lot: 'late', expiry: '2028-12-31' } })).status);
  expect(found.filter((status) => status === 201)).toHaveLength(packs);
});

test('a used-up or past signature is renewed by a dentist in person, for more than was given, and the record says for how much', async () => {
  const { personId, visitId } = closed.anew;
  const sign = (ask: Asks, rest: object = {}) => ask('POST', `/api/visits/${visitId}/signatures`, { shelfItemId: STRONG, ...rest });
  expect(await give(assistant, visitId, STRONG)).toMatchObject({ status: 201 });
  expect(await sign(lead, { packs: 3 })).toMatchObject({ status: 403 });
  for (const [rest, words] of [
    [{}, 'packs: 1 went already'],
    [{ packs: 1 }, 'packs: 1 went already'],
    [{ packs: 0 }, 'packs:'],
    [{ packs: 3, until: '2027-01-14' }, 'until: 2027-01-14 lies before today'],
    [{ packs: 3, until: '2027-11-26' }, 'until: no pack goes by the answers of this visit from 2027-11-25 on'],
    [{ packs: 3, until: '2027-02-30' }, 'until:'],
  ] as const)
    expect(await sign(dentist, rest)).toMatchObject({ status: 400, body: { error: { message: expect.stringContaining(words) } } });
  expect((await refillsOf(assistant, visitId)).lines).toMatchObject([{ state: 'waits', over: 'packs' }]);
  expect(await sign(dentist, { packs: 2, until: '2027-02-01' })).toMatchObject({
    status: 200,
    body: { signed: [{ packs: 2, until: '2027-02-01' }] },
  });
  expect((await refillsOf(assistant, visitId)).lines).toMatchObject([{ state: 'may-be-given', given: 1, over: null }]);
  const { courses } = (await lead('GET', `/api/people/${personId}`)).body as PersonRecord;
  expect(courses.find(({ shelfItemId }) => shelfItemId === STRONG)).toMatchObject({
    signedBy: 'Dr. Ahlgren',
    covers: { packs: 2, until: '2027-02-01', left: 1 },
  });

  practice.clock.now = '2027-02-02T09:00:00.000Z';
  [lead, dentist, assistant] = [await practice.as('lead'), await practice.as('dentist'), await practice.as('assistant')];
  expect((await refillsOf(assistant, visitId)).lines).toMatchObject([
    { state: 'waits', over: 'until', says: 'Waits for the dentist: the signature of Dr. Ahlgren held to 1 February 2027.' },
  ]);
  const leaflet = (await assistant('GET', `/api/visits/${visitId}/leaflet`)).body as LeafletBundle;
  expect(leaflet.past).toMatchObject([{ shelfItemId: STRONG, signedBy: { until: '2027-02-01' } }]);
  expect(JSON.stringify(leaflet.leaflets)).not.toMatch(/very strong fluoride paste/i);
  expect(((await assistant('GET', `/api/visits/${visitId}/prescriptions`)).body as PrescriptionsView).items).toEqual([]);
  expect(await sign(dentist, { packs: 3 })).toMatchObject({ status: 200 });
  expect((await refillsOf(assistant, visitId)).lines).toMatchObject([{ state: 'may-be-given', signedBy: { packs: 3 } }]);
  expect(JSON.stringify((await assistant('GET', `/api/visits/${visitId}/leaflet`)).body)).toMatch(/very strong fluoride paste/i);
});

test('safety is looked at again: what may not be given here any more, an old visit, a later one', async () => {
  const { personId, visitId } = closed.forbidden;
  expect((await refillsOf(assistant, visitId)).lines).toMatchObject([{ shelfItemId: STRONG, state: 'may-be-given' }]);
  const { settings, version } = (await lead('GET', '/api/rules')).body as { settings: object; version: number };
  const forbidden = { settings: { ...settings, legal: { F_PASTE_5000: 'not-sold' } }, version };
  expect(await lead('PUT', '/api/settings', forbidden)).toMatchObject({ status: 200 });
  expect((await refillsOf(assistant, visitId)).lines).toMatchObject([{ state: 'stopped', says: expect.stringContaining('not sold') }]);
  expect(await give(dentist, visitId, STRONG)).toMatchObject({ status: 422, body: { error: { code: 'ITEM_STOPPED' } } });
  await lead('POST', `/api/people/${personId}/visits`, {});
  expect((await refillsOf(lead, visitId)).notHere).toContain('Another visit is open');
  practice.clock.now = '2027-11-25T09:00:00.000Z';
  expect((await refillsOf(await practice.as('assistant'), closed.plain.visitId)).notHere).toContain('12 months old');
});
