import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { VisitBundle } from '../../src/api/bundles.ts';
import type { CheckedDay, DaySheet, DayView, FoundPerson, ReadDay, TakenDay } from '../../src/api/day.ts';
import { listDay } from '../../src/server/day/listDay.ts';
import { type Asks, NOW, openVisitFor, startPractice, type TestPractice, TODAY } from './practice.ts';

let practice: TestPractice;
let ask: Asks;
beforeAll(async () => {
  practice = await startPractice();
  ask = await practice.as('assistant');
});
afterAll(() => practice.close());

const dayOf = async (date: string) => (await ask('GET', `/api/days/${date}`)).body as DayView;
const read = async (date: string, text: string) => (await ask('POST', `/api/days/${date}/read`, { text })).body as ReadDay;

describe('a day', () => {
  test('who is expected, who is here without having been, and what of it is due', async () => {
    const child = await ask('POST', '/api/people', { name: 'Noor Haddad', birthDate: '2018-05-06' });
    const patientId = (child.body as { id: string }).id;
    await ask('POST', '/api/days/today/appointments', { patientId, atTime: '09:40', note: 'wants the window' });
    const { visitId } = await openVisitFor(ask, { name: 'Walk In', birthDate: '1980-03-04' });
    const day = await dayOf('today');
    expect(day).toMatchObject({ onDate: TODAY, today: TODAY, isAnyoneSeen: false, openElsewhere: [] });
    expect(day.lines).toMatchObject([
      {
        name: 'Noor Haddad',
        ageYears: 8,
        atTime: '09:40',
        state: 'not-here',
        visitId: null,
        appointment: { note: 'wants the window', reason: null },
        due: [{ says: 'first visit' }, { says: 'weight of the child: not known' }],
        confirmed: null,
        interpreter: null,
        guardians: null,
        swab: true,
      },
      { name: 'Walk In', appointment: null, state: 'open', visitId, waiting: [], outOfStock: [] },
    ]);
    expect((await dayOf('2026-11-26')).lines).toEqual([]);
  });

  test('cancelled with a reason, and the reason gone when it is taken back', async () => {
    const [line] = (await dayOf('today')).lines;
    const id = line?.appointment?.id;
    const put = (body: object) => ask('PUT', `/api/appointments/${id}`, body);
    expect(await put({ version: 1, state: 'cancelled' })).toMatchObject({ status: 400, body: { error: { code: 'REASON_REQUIRED' } } });
    expect((await put({ version: 1, state: 'cancelled', reason: 'ill' })).status).toBe(200);
    expect((await dayOf('today')).lines[0]).toMatchObject({ state: 'cancelled', appointment: { reason: 'ill' } });
    expect(await put({ version: 1, state: 'planned' })).toMatchObject({ status: 409 });
    await put({ version: 2, state: 'planned' });
    expect((await dayOf('today')).lines[0]).toMatchObject({ state: 'not-here', appointment: { reason: null } });
  });

  test('two appointments of one person: the visit belongs to the one that still stands, and the other keeps its own word', async () => {
    const { id: patientId } = (await ask('POST', '/api/people', { name: 'Twice Today', birthDate: '1970-01-02' })).body as { id: string };
    for (const atTime of ['08:00', '15:00']) await ask('POST', '/api/days/today/appointments', { patientId, atTime });
    const lines = async () => (await dayOf('today')).lines.filter((line) => line.patientId === patientId);
    const states = async () => (await lines()).map(({ atTime, state }) => [atTime, state]);
    const put = async (index: number, body: object) => {
      const appointment = (await lines())[index]?.appointment;
      return ask('PUT', `/api/appointments/${appointment?.id}`, { version: appointment?.version, ...body });
    };
    await put(0, { state: 'missed', reason: 'did not come' });
    const { visitId } = (await ask('POST', `/api/people/${patientId}/visits`, {})).body as { visitId: string };
    expect(await states()).toEqual([
      ['08:00', 'missed'],
      ['15:00', 'open'],
    ]);
    expect((await lines()).map((line) => line.visitId)).toEqual([null, visitId]);
    await put(0, { state: 'planned' });
    expect(await states()).toEqual([
      ['08:00', 'open'],
      ['15:00', 'not-here'],
    ]);
    // Whoever was seen did come, whatever was said of the appointments.
    for (const index of [0, 1]) await put(index, { state: 'cancelled', reason: 'ill' });
    expect(await states()).toEqual([
      ['08:00', 'cancelled'],
      ['15:00', 'open'],
    ]);
  });

  test('what is agreed and not in stock is said; so is what waits for a signature', async () => {
    const lead = await practice.as('lead');
    const { personId, visitId } = await openVisitFor(lead, { name: 'Ruben Sole', birthDate: '1961-07-08' });
    const asked = (value: unknown) => ({ how: 'asked', value, askedOn: TODAY });
    const put = (path: string, value: unknown) => lead('PUT', `/api/visits/${visitId}/fields`, { path, value });
    const safe = { medicines: [], allergies: [], conditions: [], private_conditions: [], household: [], appliance: [], dry_mouth: 'no' };
    for (const [id, value] of Object.entries({ ...safe, natural_teeth: 'has-teeth' })) await put(`answers.${id}`, asked(value));
    await put('findings', [{ tooth: '36', surface: 'occlusal', kind: 'cavity', activity: 'active', isNew: true }]);
    await lead('POST', `/api/visits/${visitId}/level`, { level: 'high' });
    const line = async () => (await dayOf('today')).lines.find((l) => l.patientId === personId);
    const waiting = (await line())?.waiting ?? [];
    expect(waiting.length).toBeGreaterThan(0);
    expect((await line())?.outOfStock).toEqual([]);
    expect((await line())?.confirmed).toMatchObject({ level: 'high', onDate: TODAY });

    const { input } = (await lead('GET', `/api/visits/${visitId}`)).body as VisitBundle;
    const item = input.practice.shelf.find(({ name }) => name === waiting[0]);
    const shelf = (await lead('GET', '/api/shelf')).body as { items: { item: { id: string }; version: number }[] };
    const version = shelf.items.find((entry) => entry.item.id === item?.id)?.version;
    await lead('POST', `/api/visits/${visitId}/close`, {});
    expect((await line())?.state).toBe('closed');
    expect((await line())?.waiting).toEqual(waiting);
    await lead('PUT', `/api/shelf/${item?.id}`, { item: { ...item, inStock: false }, version });
    expect((await line())?.outOfStock).toEqual([waiting[0]]);
  });

  test.each(['2026-02-30', 'soon', '26-11-2026'])('%s is no day', async (date) => {
    expect(await ask('GET', `/api/days/${date}`)).toMatchObject({ status: 400, body: { error: { code: 'INPUT_INVALID' } } });
  });

  test('nobody is told anything before signing in', async () => {
    const response = await practice.app.inject({ method: 'GET', url: '/api/days/today' });
    expect(response.statusCode).toBe(401);
  });
});

test('a sheet for the waiting room holds what is to be asked and what was said last time, and no private answer', async () => {
  const lead = await practice.as('lead');
  const { personId, visitId } = await openVisitFor(lead, { name: 'Sheet Reader', birthDate: '1990-05-06' });
  const asked = (value: unknown) => ({ how: 'asked', value, askedOn: TODAY });
  const said = { medicines: ['opioid'], private_conditions: ['eating-disorder'], pregnant: 'pregnant', snacks_per_day: 4 };
  for (const [id, value] of Object.entries(said))
    await lead('PUT', `/api/visits/${visitId}/fields`, { path: `answers.${id}`, value: asked(value) });
  await lead('POST', `/api/visits/${visitId}/close`, {});
  await lead('POST', '/api/days/2027-06-01/appointments', { patientId: personId, atTime: '08:00' });
  const { body } = await lead('GET', '/api/days/2027-06-01/sheets');
  const [sheet] = (body as { sheets: DaySheet[] }).sheets;
  expect(sheet).toMatchObject({ name: 'Sheet Reader', atTime: '08:00', language: null });
  expect(Object.keys(sheet?.answers ?? {}).sort()).toEqual(['snacks_per_day']);
  expect(JSON.stringify(body)).not.toMatch(/eating-disorder|"pregnant":/);
  expect(sheet?.unknown).toContainEqual({ question: 'private_conditions', kind: 'out-of-date' });
});

describe('a list', () => {
  const TEXT = "time;chart;name;birthday\n9:00;1;Una O'Neil;04/03/1980\n9:30;2;سارة الحداد;03/04/1991\n10:99;3;Ben Ode;05/05/2001";

  test('is read, waits for the order of its dates, and is written only when it is taken', async () => {
    const list = await read('2026-12-01', TEXT);
    expect(list).toMatchObject({ separator: 'semicolon', hasHeader: true, dateOrder: null, dates: { isNeeded: true } });
    expect(list.verdicts.map(({ kind }) => kind)).toEqual(['wrong', 'wrong', 'wrong']);
    const body = { rows: list.rows, dateOrder: 'day-first' };
    const checked = (await ask('POST', '/api/days/2026-12-01/check', body)).body as CheckedDay;
    expect(checked.verdicts.map(({ kind }) => kind)).toEqual(['new', 'new', 'wrong']);
    expect((await dayOf('2026-12-01')).lines).toEqual([]);
    expect((await ask('POST', '/api/days/2026-12-01/import', body)).body as TakenDay).toMatchObject({ taken: 2, added: 2 });
    expect((await dayOf('2026-12-01')).lines.map(({ name, chartNumber }) => [name, chartNumber])).toEqual([
      ["Una O'Neil", '1'],
      ['سارة الحداد', '2'],
    ]);
    expect(((await ask('POST', '/api/days/2026-12-01/import', body)).body as TakenDay).taken).toBe(0);
  });

  test('people are found by chart number, by birthday and in any script', async () => {
    const found = async (text: string) =>
      ((await ask('GET', `/api/people/found?text=${encodeURIComponent(text)}`)).body as { people: FoundPerson[] }).people.map(
        (p) => p.name,
      );
    expect(await found('1980-03')).toContain("Una O'Neil");
    expect(await found('o’neil')).toEqual(["Una O'Neil"]);
    expect(await found('2')).toContain('سارة الحداد');
    expect(await found('سارة')).toEqual(['سارة الحداد']);
    expect(await found('%')).not.toEqual([]);
  });

  test('a field of a row that is not text is named', async () => {
    const rows = [{ row: 1, time: 900, chartNumber: '', name: 'A', birthday: '' }];
    expect(await ask('POST', '/api/days/today/check', { rows })).toMatchObject({
      status: 400,
      body: { error: { message: expect.stringContaining('rows.0.time') } },
    });
  });
});

test('the day is as quick with two thousand people on file as with a few', async () => {
  const rows = Array.from({ length: 1900 }, (_, i) => ({
    row: i + 1,
    time: '',
    chartNumber: `Q${i}`,
    name: `Person ${i}`,
    birthday: `19${String(10 + (i % 90)).padStart(2, '0')}-0${1 + (i % 9)}-11`,
  }));
  const began = performance.now();
  await ask('POST', '/api/days/2027-03-01/import', { rows });
  const importMs = performance.now() - began;
  const context = { db: practice.db, scope: practice.scope, now: () => NOW };
  await listDay(context, '2026-12-01');
  const started = performance.now();
  await listDay(context, '2026-12-01');
  const dayMs = performance.now() - started;
  const startedBusy = performance.now();
  await listDay(context, '2027-03-01');
  const busyMs = performance.now() - startedBusy;
  console.log(
    `1,900 rows taken in ${Math.round(importMs)} ms; a day of 2 read in ${Math.round(dayMs)} ms, one of 1,900 in ${Math.round(busyMs)} ms`,
  );
  expect(dayMs).toBeLessThan(250);
});
