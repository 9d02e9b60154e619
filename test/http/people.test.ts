import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LeafletBundle, PersonPage, PersonRecord, VisitBundle } from '../../src/api/bundles.ts';
import { type Asks, openVisitFor, startPractice, type TestPractice, TODAY } from './practice.ts';

let practice: TestPractice;
let lead: Asks;
beforeAll(async () => {
  practice = await startPractice();
  lead = await practice.as('lead');
});
afterAll(() => practice.close());

const add = async (name: string, birthDate = '2011-09-14') =>
  ((await lead('POST', '/api/people', { name, birthDate })).body as { id: string }).id;
const pageOf = async (id: string) => (await lead('GET', `/api/people/${id}/details`)).body as PersonPage;
const messageOf = ({ body }: { body: unknown }) => (body as { error: { code: string; message: string } }).error;

test('details are changed by version, and the page tells who changed what', async () => {
  const id = await add('Noor Castellane');
  const details = { name: 'Noor Castellane', birthDate: '2011-09-14', guardians: [{ name: "Siobhán O'Dwyer", mayConsent: true }] };
  expect(await lead('PUT', `/api/people/${id}/details`, { details, version: 1 })).toEqual({ status: 200, body: { version: 2 } });
  const clash = await lead('PUT', `/api/people/${id}/details`, { details, version: 1 });
  expect([clash.status, messageOf(clash).code]).toEqual([409, 'CONFLICT']);
  const page = await pageOf(id);
  expect(page.details).toEqual(details);
  expect(page.history).toMatchObject([
    { action: 'addPatient', by: 'Ines Marrow', details: { name: 'Noor Castellane' } },
    { action: 'changePatient', by: 'Ines Marrow', reason: null, details },
  ]);
});

test.each([
  ['birthDate', { birthDate: '2026-11-26' }, /birthDate: lies in the future/],
  [
    'a permission from tomorrow',
    { permissions: { care: { given: true, by: 'A', on: '2026-11-26' } } },
    /permissions\.care\.on: lies in the future/,
  ],
  ['a guardian without a name', { guardians: [{ name: ' ' }] }, /details\.guardians\.0\.name/],
  ['a language nobody prints', { language: 'de' }, /details\.language/],
  ['an unknown field', { weight: 4 }, /weight/],
])('%s is refused by name', async (_, part, message) => {
  const id = await add(`Person of ${message.source}`);
  const { details, version } = await pageOf(id);
  const refused = await lead('PUT', `/api/people/${id}/details`, { details: { ...details, ...part }, version, reason: 'r' });
  expect(refused.status).toBe(400);
  expect(messageOf(refused).message).toMatch(message);
  expect((await pageOf(id)).version).toBe(version);
});

test('somebody on record already is asked back, in words, and taken once it is another person', async () => {
  await add('Ada Lind', '1984-03-02');
  const again = { name: 'ada lind', birthDate: '1984-03-02' };
  const asked = await lead('POST', '/api/people', again);
  expect([asked.status, messageOf(asked)]).toMatchObject([
    422,
    { code: 'LIKELY_SAME_PERSON', message: 'Ada Lind, born 1984-03-02 is on record already. Is it the same person?' },
  ]);
  expect((await lead('POST', '/api/people', { ...again, isAnotherPerson: true })).status).toBe(201);
});

test('two charts are read as one by every address, and apart again; an assistant may do neither', async () => {
  const [kept, merged] = [await add('Bea Marsh'), await add('Beatrice Marsh')];
  const versions = async () =>
    [
      await pageOf(kept),
      (await practice.db.selectFrom('patient').select('version').where('id', '=', merged).executeTakeFirstOrThrow()).version,
    ] as const;
  const body = { version: 1, merged: { id: merged, version: 1 }, reason: 'entered twice' };
  const assistant = await practice.as('assistant');
  expect((await assistant('POST', `/api/people/${kept}/merge`, body)).status).toBe(403);
  expect((await lead('POST', `/api/people/${kept}/merge`, { ...body, reason: '' })).status).toBe(400);
  expect((await lead('POST', `/api/people/${kept}/merge`, body)).status).toBe(200);
  expect((await pageOf(merged)).id).toBe(kept);
  expect(((await lead('GET', `/api/people/${merged}`)).body as PersonRecord).id).toBe(kept);
  const [page, mergedVersion] = await versions();
  expect(page.mergedCharts).toMatchObject([{ id: merged, name: 'Beatrice Marsh', merged: { by: 'Ines Marrow', reason: 'entered twice' } }]);
  const people = ((await lead('GET', '/api/people')).body as { people: { id: string; searchKey: string }[] }).people;
  expect(people.filter(({ id }) => id === kept || id === merged)).toMatchObject([{ id: kept, searchKey: 'bea marsh beatrice marsh' }]);
  expect((await lead('POST', `/api/people/${merged}/unmerge`, { version: mergedVersion, reason: 'twins' })).status).toBe(200);
  expect((await pageOf(merged)).id).toBe(merged);
});

test('language and large print kept of a person are what their page begins with', async () => {
  const { personId, visitId } = await openVisitFor(lead, { name: 'Ilse Rowan', birthDate: '1961-02-03' });
  const printed = async () => (await lead('GET', `/api/visits/${visitId}/leaflet`)).body as LeafletBundle;
  expect(await printed()).toMatchObject({ kept: { language: null, largePrint: null }, asks: 'en' });
  const { details, version } = await pageOf(personId);
  await lead('PUT', `/api/people/${personId}/details`, { details: { ...details, language: 'es', largePrint: true }, version });
  expect(await printed()).toMatchObject({ kept: { language: 'es', largePrint: true }, asks: 'es', leaflets: [{ language: 'es' }] });
  expect((await pageOf(personId)).details).toMatchObject({ language: 'es', largePrint: true });
});

test('each home has its leaflet in its language; who spoke and what was released stand on the record', async () => {
  const { personId, visitId } = await openVisitFor(lead, { name: 'محمد العبد', birthDate: '2011-09-14' });
  const { details, version } = await pageOf(personId);
  const homes = [
    { name: 'con su padre', language: 'es' },
    { name: 'with his mother', language: 'en' },
  ];
  await lead('PUT', `/api/people/${personId}/details`, { details: { ...details, homes }, version });
  const put = (path: string, value: unknown) => lead('PUT', `/api/visits/${visitId}/fields`, { path, value });
  await put('speaker', { who: 'patient' });
  await put('answers.private_conditions', { how: 'asked', value: ['recreational-drugs'], askedOn: TODAY, alone: true });
  const release = { question: 'private_conditions', isReleased: true, heard: 'patient' };
  expect((await (await practice.as('assistant'))('POST', `/api/visits/${visitId}/releases`, release)).status).toBe(403);
  expect((await lead('POST', `/api/visits/${visitId}/releases`, { ...release, question: 'medicines' })).status).toBe(400);
  expect((await put('released.private_conditions', { by: 'Somebody', at: `${TODAY}T10:00:00Z` })).status).toBe(400);
  const leaflets = async () => ((await lead('GET', `/api/visits/${visitId}/leaflet`)).body as LeafletBundle).leaflets;
  expect((await leaflets()).map(({ released }) => released)).toEqual([undefined, undefined]);
  expect((await lead('POST', `/api/visits/${visitId}/releases`, release)).body).toMatchObject({
    released: { by: 'Ines Marrow', heard: 'patient' },
  });
  await lead('POST', `/api/visits/${visitId}/close`, {});
  expect((await leaflets()).map(({ language, home, released, personName }) => [language, home, released, personName])).toEqual([
    ['es', 'Para la casa con su padre', ['drogas'], 'محمد العبد'],
    ['en', 'For the home with his mother', ['drugs'], 'محمد العبد'],
  ]);
  const { input } = (await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle;
  expect(input.visit).toMatchObject({ speaker: { who: 'patient' }, released: { private_conditions: { by: 'Ines Marrow' } } });
  expect(input.visit.answers['private_conditions']).toMatchObject({ alone: true });
});
