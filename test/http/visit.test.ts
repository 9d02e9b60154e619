import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PersonRecord, VisitBundle } from '../../src/api/bundles.ts';
import { content } from '../../src/content/allContent.ts';
import { assessVisit } from '../../src/core/visit/assessVisit.ts';
import type { VisitAssessment } from '../../src/core/visit/types.ts';
import { listReadings } from '../../src/store/read/readings.ts';
import { verify } from '../../src/store/verify.ts';
import { sayRecomputed } from '../../src/web/screens/overtime/sayRecomputed.ts';
import { type Asks, NOW, openVisitFor, startPractice, type TestPractice, TODAY } from './practice.ts';

let practice: TestPractice;
let lead: Asks;
beforeAll(async () => {
  practice = await startPractice();
  lead = await practice.as('lead');
});
afterAll(() => practice.close());

const asked = (value: unknown) => ({ how: 'asked', value, askedOn: TODAY });
const usualSwab = {
  rlu: 5150,
  takenAt: NOW,
  lotId: 'lot-birch',
  operator: { name: 'Tomas Quill', trained: true },
  site: 'lower-front-tongue-side',
  beforeCleaning: true,
  minutesSinceEating: 180,
  minutesSinceBrushing: 180,
  minutesSinceRinsing: 180,
};
const put = (ask: Asks, visitId: string, path: string, value: unknown, version?: number) =>
  ask('PUT', `/api/visits/${visitId}/fields`, { path, value, ...(version === undefined ? {} : { version }) });

describe('one visit, from the first answer to the record', () => {
  test('what the page computes, what the server stores and what is read back later are the same', async () => {
    const { personId, visitId } = await openVisitFor(lead, { name: 'Odile Brandt', birthDate: '1980-03-04' });
    expect((await put(lead, visitId, 'answers.paste_times_per_day', asked(2))).body).toEqual({
      path: 'answers.paste_times_per_day',
      version: 1,
      savedAt: NOW,
    });
    await put(lead, visitId, 'answers.natural_teeth', asked('has-teeth'));
    await put(lead, visitId, 'reading', usualSwab);
    await put(lead, visitId, 'findings', [{ tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: true }]);
    await put(lead, visitId, 'allExamined', true);

    const bundle = (await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle;
    const onPage = assessVisit(bundle.input, content);
    expect(onPage.proposed?.level).toBe('high');
    expect(onPage.reading.verdict).toBe('too-close');
    expect(bundle.fieldVersions.reading).toBe(1);

    const confirmed = await lead('POST', `/api/visits/${visitId}/level`, { level: 'high' });
    expect(confirmed.body).toEqual({
      confirmed: { level: 'high', protocol: 'four_level_6plus_2019', edition: onPage.proposed?.edition, by: 'Ines Marrow', at: NOW },
    });
    const beforeClosing = ((await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle).input;
    const closed = await lead('POST', `/api/visits/${visitId}/close`, {});
    expect(closed.status).toBe(200);
    const stored = ((await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle).stored as VisitAssessment;
    const expected = JSON.parse(JSON.stringify(assessVisit(beforeClosing, content)));
    expect(stored).toEqual(expected);

    const record = (await lead('GET', `/api/people/${personId}`)).body as PersonRecord;
    expect(record.visits).toMatchObject([{ state: 'closed', level: 'high', findings: [{ tooth: '13', kind: 'white-spot' }] }]);
    expect(record.readings).toMatchObject([{ rlu: 5150, state: 'valid', meterName: 'Demo meter A', cutoffRlu: 4200 }]);
    expect((await lead('GET', `/api/visits/${visitId}/leaflet`)).body).toEqual({
      ...{ patientId: personId, leaflets: [expected.leaflet], past: [] },
      ...{ asks: 'en', kept: { language: null, largePrint: null } },
    });
    expect(record.nextOn).not.toBeNull();
    expect(await verify(practice.db)).toMatchObject({ ok: true, problems: [] });
  });

  test('a study reported later is used over time, and what was told at the visit stays', async () => {
    const { personId, visitId } = await openVisitFor(lead, { name: 'Edda Holm', birthDate: '1975-01-02' });
    await put(lead, visitId, 'reading', usualSwab);
    await lead('POST', `/api/visits/${visitId}/close`, {});
    const meters = practice.db.selectFrom('catalog').select('body').where('kind', '=', 'meter');
    const { body: before } = await meters.executeTakeFirstOrThrow();
    const found = {
      component: 'repeatability',
      variance: 0.003,
      degreesOfFreedom: 96,
      studyId: 's1',
      reportedOn: '2026-12-01',
      kind: 'hands',
    };
    const setBody = (body: string) => practice.db.updateTable('catalog').set({ body }).where('kind', '=', 'meter').execute();
    await setBody(JSON.stringify({ ...JSON.parse(before), own: [found] }));
    const { readings } = (await lead('GET', `/api/people/${personId}`)).body as PersonRecord;
    await setBody(before);
    expect(readings).toMatchObject([
      { own: [found], operator: 'Tomas Quill', lotId: 'lot-birch', onDate: TODAY, told: { rlu: 5150, verdict: 'too-close' } },
    ]);
    expect(sayRecomputed(readings).map(({ sentence }) => sentence)).toEqual([
      "Then: too close to call. With this practice's own noise, measured since: above the cut-off.",
    ]);
  });

  test('the next visit carries answers, dated, and knows the earlier reading; a closed visit takes no more', async () => {
    const { personId, visitId } = await openVisitFor(lead, { name: 'Ruben Sole', birthDate: '1990-05-06' });
    await put(lead, visitId, 'answers.snacks_per_day', asked(2));
    await put(lead, visitId, 'answers.sugars_at_meals', { how: 'does-not-know' });
    await put(lead, visitId, 'reading', usualSwab);
    await lead('POST', `/api/visits/${visitId}/close`, {});
    expect(await put(lead, visitId, 'answers.snacks_per_day', asked(3))).toMatchObject({
      status: 409,
      body: { error: { code: 'VISIT_CLOSED' } },
    });

    const next = await lead('POST', `/api/people/${personId}/visits`, {});
    const { input, carried } = (await lead('GET', `/api/visits/${(next.body as { visitId: string }).visitId}`)).body as VisitBundle;
    expect(input.visit.answers).toEqual({ snacks_per_day: { how: 'carried', value: 2, askedOn: TODAY } });
    expect(carried).toEqual(input.visit.answers);
    expect(input.visit.pastReadings).toMatchObject([{ rlu: 5150, state: 'valid' }]);
    expect(input.person.newPatient).toBe(false);
  });

  test('activation is kept with the reading; questions asked before a swab alone leave none', async () => {
    const activatedAt = '2026-11-25T11:41:29+01:00';
    const taken = await openVisitFor(lead, { name: 'Ada Swift', birthDate: '1980-03-04' });
    expect((await put(lead, taken.visitId, 'reading', { ...usualSwab, activatedAt })).status).toBe(200);
    await lead('POST', `/api/visits/${taken.visitId}/close`, {});
    const stored = await listReadings(practice.db, practice.scope, taken.personId);
    expect(stored).toMatchObject([
      { activatedAt: '2026-11-25T10:41:29.000Z', takenAt: NOW, state: 'valid', reasons: [], swab: { activatedAt } },
    ]);

    const asked = await openVisitFor(lead, { name: 'Ben Swift', birthDate: '1980-03-04' });
    await put(lead, asked.visitId, 'reading', { beforeCleaning: true, lotId: 'lot-birch' });
    expect((await lead('POST', `/api/visits/${asked.visitId}/close`, {})).status).toBe(200);
    expect(await listReadings(practice.db, practice.scope, asked.personId)).toEqual([]);

    const none = await openVisitFor(lead, { name: 'Cem Swift', birthDate: '1980-03-04' });
    await put(lead, none.visitId, 'reading', { notTaken: 'other', notTakenNote: 'fell asleep' });
    await lead('POST', `/api/visits/${none.visitId}/close`, {});
    expect(await listReadings(practice.db, practice.scope, none.personId)).toMatchObject([
      { state: 'not-taken', reasons: ['other'], activatedAt: null, swab: { notTakenNote: 'fell asleep' } },
    ]);
  });

  test('a conflict returns both values and overwrites nothing', async () => {
    const { visitId } = await openVisitFor(lead, { name: 'Two Tabs', birthDate: '1970-01-01' });
    await put(lead, visitId, 'answers.snacks_per_day', asked(2));
    const late = await put(lead, visitId, 'answers.snacks_per_day', asked(4));
    expect(late).toMatchObject({ status: 409, body: { error: { code: 'CONFLICT' }, theirs: asked(2), yours: asked(4), version: 1 } });
    expect((await put(lead, visitId, 'answers.snacks_per_day', asked(4), 1)).body).toMatchObject({ version: 2 });
  });
});

describe('who may do what', () => {
  test('an assistant records but does not decide; nobody but a dentist signs; the leaflet shows the item only then', async () => {
    const { visitId } = await openVisitFor(lead, { name: 'Nadia Ferris', birthDate: '1961-07-08' });
    const assistant = await practice.as('assistant');
    const dentist = await practice.as('dentist');
    expect((await put(assistant, visitId, 'answers.natural_teeth', asked('has-teeth'))).status).toBe(200);
    const safe: Record<string, unknown> = {
      medicines: [],
      allergies: [],
      conditions: [],
      private_conditions: [],
      household: [],
      appliance: [],
      dry_mouth: 'no',
    };
    for (const [id, value] of Object.entries(safe)) await put(assistant, visitId, `answers.${id}`, asked(value));
    await put(assistant, visitId, 'findings', [{ tooth: '36', surface: 'occlusal', kind: 'cavity', activity: 'active', isNew: true }]);
    expect(await assistant('POST', `/api/visits/${visitId}/level`, { level: 'high' })).toMatchObject({ status: 403 });
    expect((await lead('POST', `/api/visits/${visitId}/level`, { level: 'high' })).status).toBe(200);

    const { input } = (await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle;
    const waiting = assessVisit(input, content).plan.lines.filter((line) => line.state === 'waiting-for-signature');
    expect(waiting.length).toBeGreaterThan(0);
    const shelfItemId = waiting[0]?.shelfItemId ?? '';
    const nameOnLeaflet = input.practice.shelf.find((item) => item.id === shelfItemId)?.leafletName.en ?? 'none';
    for (const ask of [assistant, lead]) {
      expect(await ask('POST', `/api/visits/${visitId}/signatures`, { shelfItemId })).toMatchObject({
        status: 403,
        body: { error: { code: 'NOT_ALLOWED' } },
      });
    }
    const before = JSON.stringify((await lead('GET', `/api/visits/${visitId}/leaflet`)).body);
    expect(before.toLowerCase()).not.toContain(nameOnLeaflet.toLowerCase());
    expect(await dentist('POST', `/api/visits/${visitId}/signatures`, { shelfItemId })).toMatchObject({
      status: 200,
      body: { signed: [{ shelfItemId, by: 'Dr. Ahlgren' }] },
    });
    const after = JSON.stringify((await lead('GET', `/api/visits/${visitId}/leaflet`)).body);
    expect(after.toLowerCase()).toContain(nameOnLeaflet.toLowerCase());
    expect(after).toContain('Dr. Ahlgren');
  });

  test('an ordinary item with a caution waits too, and a dentist can sign it', async () => {
    const { visitId } = await openVisitFor(lead, { name: 'Ida Thorn', birthDate: '1995-02-03' });
    const safe: Record<string, unknown> = {
      medicines: [],
      allergies: [],
      conditions: ['kidney-disease-4-5'],
      private_conditions: [],
      pregnant: 'no',
      household: [],
      appliance: [],
      dry_mouth: 'no',
      natural_teeth: 'has-teeth',
    };
    for (const [id, value] of Object.entries(safe)) await put(lead, visitId, `answers.${id}`, asked(value));
    await put(lead, visitId, 'findings', [{ tooth: '36', surface: 'occlusal', kind: 'cavity', activity: 'active', isNew: true }]);
    await lead('POST', `/api/visits/${visitId}/level`, { level: 'high' });
    const planOf = async () => assessVisit(((await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle).input, content).plan;
    const { input } = (await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle;
    const isOrdinary = (id: string) => input.practice.shelf.find((item) => item.id === id)?.release === 'anyone';
    const waiting = (await planOf()).lines.find((line) => line.state === 'waiting-for-signature' && isOrdinary(line.shelfItemId));
    if (!waiting) throw new Error('no ordinary item waits for this person');
    const shelfItemId = waiting.shelfItemId;
    expect(await lead('POST', `/api/visits/${visitId}/signatures`, { shelfItemId })).toMatchObject({ status: 403 });
    const dentist = await practice.as('dentist');
    expect(await dentist('POST', `/api/visits/${visitId}/signatures`, { shelfItemId })).toMatchObject({ status: 200 });
    expect((await planOf()).lines.find((line) => line.shelfItemId === shelfItemId)?.state).toBe('signed');
  });

  test('a level other than the proposed one needs a reason', async () => {
    const { visitId } = await openVisitFor(lead, { name: 'Lars Wick', birthDate: '1985-09-10' });
    await put(lead, visitId, 'findings', [{ tooth: '11', surface: 'facial', kind: 'white-spot', isNew: true }]);
    expect(await lead('POST', `/api/visits/${visitId}/level`, { level: 'moderate' })).toMatchObject({
      status: 400,
      body: { error: { code: 'REASON_REQUIRED' } },
    });
    const changed = await lead('POST', `/api/visits/${visitId}/level`, {
      level: 'moderate',
      reason: 'The spot is old, seen on a photograph.',
    });
    expect(changed.body).toMatchObject({ confirmed: { level: 'moderate', changedFrom: 'high' } });
  });
});

describe('bad input is named and changes nothing', () => {
  test.each([
    ['reading', { ...usualSwab, rlu: 'abc' }, /^reading\.rlu: must be a number/],
    ['reading', { ...usualSwab, rlu: -5 }, /^reading\.rlu: a reading cannot be below 0/],
    ['reading', { ...usualSwab, rlu: 60_001 }, /^reading\.rlu: 60001 is outside what Demo meter A can show/],
    ['reading', { ...usualSwab, activatedAt: '10:41' }, /^reading\.activatedAt: must be a time/],
    ['reading', { ...usualSwab, activatedAt: '2026-11-20T10:41:00Z' }, /^reading\.activatedAt: is not on the day of the visit/],
    ['reading', { notTakenNote: 'asleep' }, /^reading\.notTakenNote: is given without the reason/],
    ['reading', { ...usualSwab, lotId: 'lot-nowhere' }, /^reading\.lotId: "lot-nowhere" is not one of/],
    ['answers.snacks_per_day', asked(true), /^answers\.snacks_per_day\.value: must be a whole number/],
    ['answers.snacks_per_day', asked(-1), /^answers\.snacks_per_day\.value: must be a whole number/],
    ['answers.medicines', asked(['no-such-class']), /^answers\.medicines\.value: "no-such-class" is not one of/],
    ['answers.no_such_question', asked(1), /^answers\.no_such_question: there is no such question/],
    ['findings', [{ tooth: '19', kind: 'cavity', isNew: true }], /^findings\.0\.tooth: must be a two-digit tooth number/],
    ['nextOn', '2026-11-24', /^nextOn: 2026-11-24 is before the visit/],
    ['language', 'de', /^language: /],
  ])('%s', async (path, value, message) => {
    const { visitId } = await openVisitFor(lead, { name: 'Bad Input', birthDate: '1980-01-01' });
    const refused = await put(lead, visitId, path, value);
    expect(refused.status).toBe(400);
    expect((refused.body as { error: { message: string } }).error.message).toMatch(message);
    const bundle = (await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle;
    expect(bundle.fieldVersions).toEqual({});
  });

  test.each([
    [{ name: 'Born Tomorrow', birthDate: '2026-11-26' }, /birthDate: lies in the future/],
    [{ name: '', birthDate: '1980-01-01' }, /name/],
    [{ name: 'No Date', birthDate: '1980-02-30' }, /birthDate/],
    [{ name: 'Extra', birthDate: '1980-01-01', colour: 'red' }, /colour/],
  ])('a new person %j', async (person, message) => {
    const before = ((await lead('GET', '/api/people')).body as { people: unknown[] }).people.length;
    const refused = await lead('POST', '/api/people', person);
    expect(refused.status).toBe(400);
    expect(JSON.stringify(refused.body)).toMatch(message);
    expect(((await lead('GET', '/api/people')).body as { people: unknown[] }).people).toHaveLength(before);
  });

  test('broken JSON and an unknown visit', async () => {
    const broken = await practice.app.inject({
      method: 'POST',
      url: '/api/sign-in',
      headers: { 'content-type': 'application/json' },
      payload: '{"memberId":',
    });
    expect([broken.statusCode, broken.json().error.code]).toEqual([400, 'INPUT_INVALID']);
    expect(await lead('GET', '/api/visits/0198a000-0000-7000-8000-000000000000')).toMatchObject({
      status: 404,
      body: { error: { code: 'VISIT_NOT_FOUND' } },
    });
  });
});
