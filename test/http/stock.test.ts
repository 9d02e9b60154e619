import { afterAll, beforeAll, expect, test } from 'vitest';
import type { ShelfTableView } from '../../src/api/shelfTable.ts';
import type { GivenView, MoveView, StockView } from '../../src/api/stock.ts';
import { type Asks, PASSWORD, startPractice, type TestPractice } from './practice.ts';

const ITEM = 'paste-naf-1450';
let practice: TestPractice;
let lead: Asks;
let assistant: Asks;
beforeAll(async () => {
  practice = await startPractice();
  lead = await practice.as('lead');
  assistant = await practice.as('assistant');
});
afterAll(() => practice.close());

const stock = async () => (await lead('GET', '/api/stock')).body as StockView;
const lots = async () => (await stock()).items.find(({ shelfItemId }) => shelfItemId === ITEM)?.lots;
const moves = async () => ((await assistant('GET', `/api/shelf/${ITEM}/moves`)).body as { moves: readonly MoveView[] }).moves;

const csv = async (url: string) => {
  const payload = { memberId: practice.members.lead, password: PASSWORD };
  const signedIn = await practice.app.inject({ method: 'POST', url: '/api/sign-in', payload });
  const cookies = Object.fromEntries(signedIn.cookies.map((cookie) => [cookie.name, cookie.value]));
  return (await practice.app.inject({ method: 'GET', url, cookies })).body;
};

test('packs come in, are put right with a reason, and an entry of the day is taken back in one step', async () => {
  expect(await lots()).toBeUndefined();
  const receipts = `/api/shelf/${ITEM}/receipts`;
  expect(await assistant('POST', receipts, { packs: 4, lot: 'A 1', expiry: '2099-01-31' })).toMatchObject({ status: 201 });
  expect(await assistant('POST', receipts, { packs: 4, lot: 'a  1', expiry: null })).toMatchObject({
    status: 400,
    body: { error: { code: 'INPUT_INVALID', message: expect.stringMatching(/^expiry: lot A 1 stands here with 2099-01-31/) } },
  });
  expect(await assistant('POST', receipts, { packs: 'four' })).toMatchObject({ status: 400, body: { error: { path: 'packs' } } });
  expect(await assistant('POST', '/api/shelf/none/receipts', { packs: 1 })).toMatchObject({ status: 404 });
  const right = { lot: { lot: 'A 1', expiry: '2099-01-31' }, as: 'corrected', packs: 3 };
  expect(await assistant('POST', `/api/shelf/${ITEM}/corrections`, { ...right, reason: 'r' })).toMatchObject({ status: 403 });
  expect(await lead('POST', `/api/shelf/${ITEM}/corrections`, right)).toMatchObject({ status: 400 });
  expect(await lead('POST', `/api/shelf/${ITEM}/corrections`, { ...right, reason: 'one fell' })).toMatchObject({ status: 200 });
  expect(await lots()).toEqual([{ lot: 'A 1', expiry: '2099-01-31', quantity: 3 }]);
  const [newest, first] = await moves();
  expect([newest?.isMineToday, newest?.note, first?.isMineToday]).toEqual([false, 'one fell', true]);
  expect(await assistant('POST', `/api/stock-moves/${newest?.id}/taken-back`, { reason: 'r' })).toMatchObject({ status: 403 });
  expect(await lead('POST', `/api/stock-moves/${newest?.id}/taken-back`, {})).toMatchObject({ status: 200 });
  expect(await lots()).toMatchObject([{ quantity: 4 }]);
});

test('at a visit nothing goes home that the plan does not hold and the safety check has not cleared', async () => {
  const added = (await lead('POST', '/api/people', { name: 'Ada Example', birthDate: '1980-01-01' })).body as { id: string };
  const { visitId } = (await lead('POST', `/api/people/${added.id}/visits`, {})).body as { visitId: string };
  const given = `/api/visits/${visitId}/given`;
  const dentist = await practice.as('dentist');
  expect(await dentist('POST', given, { shelfItemId: ITEM, reason: 'asked for it' })).toMatchObject({
    status: 422,
    body: { error: { code: 'ITEM_STOPPED', message: expect.stringContaining('not known yet') } },
  });
  expect(await dentist('POST', given, { shelfItemId: 'none' })).toMatchObject({ status: 404 });
  expect((await lead('GET', given)).body as GivenView).toMatchObject({ moves: [], counted: [{ shelfItemId: ITEM }] });
});

test('what is at its minimum is on the list to order, also as a table', async () => {
  const shelf = (await lead('GET', '/api/shelf')).body as { items: { item: { id: string; name: string }; version: number }[] };
  const entry = shelf.items.find(({ item }) => item.id === ITEM);
  const item = { ...entry?.item, minimumLevel: 4, flavour: 'mint', label: { value: 0.32, of: 'compound', per: 'w/w' } };
  expect(await lead('PUT', `/api/shelf/${ITEM}`, { item, version: entry?.version })).toMatchObject({ status: 200 });
  const body = await csv('/api/stock/reorder.csv');
  expect(body.trim().split('\r\n')[1]).toMatch(new RegExp(`"${ITEM}",4,0,4,0,1$`));
  expect((await lead('GET', '/api/shelf')).body).toMatchObject({ items: expect.arrayContaining([{ item, version: 2 }]) });
});

test('the shelf goes out as a table and comes back: looked at first, written once and whole, and not after the shelf has changed', async () => {
  const text = await csv('/api/shelf.csv');
  const look = async (table: string) => (await lead('POST', '/api/shelf/table/look', { text: table })).body as ShelfTableView;
  const same = await look(text);
  expect(same.problems).toEqual([]);
  expect(same.items.every(({ kind, lots: all }) => kind === 'same' && all.every((lot) => lot.there === lot.packs))).toBe(true);
  expect(await assistant('POST', '/api/shelf/table/look', { text })).toMatchObject({ status: 403 });

  const before = await lots();
  const half = `id;lot;packs;price\n${ITEM};T 1;4;3.10\n${ITEM};T 2;1.000;`;
  const asked = await look(half);
  expect(asked.problems).toMatchObject([{ line: 3, field: 'packs', says: expect.stringContaining('write 1000, or 1') }]);
  expect((await lead('POST', '/api/shelf/table', { text: half, seen: asked.seen })).body).toMatchObject({ problems: [{ line: 3 }] });
  expect(await lots()).toEqual(before);

  const right = half.replace('1.000', '1000');
  const { seen } = await look(right);
  await lead('POST', `/api/shelf/${ITEM}/receipts`, { packs: 1, lot: 'T 1' });
  expect(await lead('POST', '/api/shelf/table', { text: right, seen })).toMatchObject({ status: 409 });
  const again = await look(right);
  expect(again.items).toMatchObject([
    {
      kind: 'changed',
      lots: [
        { there: 1, packs: 4 },
        { there: null, packs: 1000 },
      ],
    },
  ]);
  expect(await lead('POST', '/api/shelf/table', { text: right, seen: again.seen })).toMatchObject({ status: 200, body: { problems: [] } });
  expect((await lots())?.filter(({ lot }) => lot?.startsWith('T'))).toEqual([
    { lot: 'T 1', expiry: null, quantity: 4 },
    { lot: 'T 2', expiry: null, quantity: 1000 },
  ]);
  expect(await lead('POST', '/api/shelf/table', { text: right, seen: again.seen })).toMatchObject({ status: 409 });
});
