import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { readPdf } from '../leaflet/readPdf.ts';
import { demoTest } from './demo.ts';
import { expectNoBarriersInState } from './expectNoBarriers.ts';
import { signIn } from './pageSteps.ts';
import { handsOn } from './visitKeys.ts';

const entry = (page: Page) => page.getByRole('combobox', { name: 'Name, or time and name' });
const line = (page: Page, name: string) => page.locator('.day-line').filter({ hasText: name });

async function putDown(page: Page, typed: string): Promise<void> {
  await entry(page).fill(typed);
  await page.keyboard.press('Enter');
  await page.getByRole('status').filter({ hasText: 'is on the list' }).waitFor();
  await expect.poll(() => entry(page).inputValue()).toBe('');
}

/** A day of its own for each test, so that they share the server and nothing else. */
async function openDay(page: Page, url: string, date: string): Promise<void> {
  await page.goto(`${url}/day/${date}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
}

demoTest('a walk-in takes ten keys beside the letters of the name; somebody on file takes one', async ({ page, server }) => {
  await signIn(page, server);
  const hands = handsOn(page);
  await hands.type('Zora Quist');
  const before = hands.keys();
  await hands.press('Enter');
  await hands.type('19840302');
  await hands.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Zora Quist/ }).waitFor();
  expect(hands.keys() - before).toBe(10);

  await signIn(page, server);
  await line(page, 'Zora Quist').getByText('visit open, not planned').waitFor();
  await hands.type('zora');
  const known = hands.keys();
  await hands.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Zora Quist/ }).waitFor();
  expect(hands.keys() - known).toBe(1);

  // Another person of the same name: still ten.
  await signIn(page, server);
  await hands.type('Zora Quist');
  const namesake = hands.keys();
  await hands.press('Shift+Enter');
  await hands.type('20150607');
  await hands.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Zora Quist/ }).waitFor();
  expect(hands.keys() - namesake).toBe(10);
});

demoTest('a day by keyboard: put down, walk along the lines, cancelled, missed, taken back, swab, visit', async ({ page, server }) => {
  await signIn(page, server);
  for (const typed of ['9:40 henrik', '0900 maud', '1:30 pm soren']) await putDown(page, typed);
  const times = page.locator('.day-line .day-time');
  expect((await times.allInnerTexts()).filter((t) => ['09:00', '09:40', '13:30'].includes(t))).toEqual(['09:00', '09:40', '13:30']);

  await line(page, 'Henrik').getByRole('button', { name: 'Henrik' }).first().focus();
  await page.keyboard.press('c');
  await page.keyboard.press('1');
  await line(page, 'Henrik').getByText('cancelled: ill').waitFor();
  await page.keyboard.press('u');
  await line(page, 'Henrik').getByText('not here yet').waitFor();
  await page.keyboard.press('m');
  await page.keyboard.type('bus did not come');
  await page.keyboard.press('Enter');
  await line(page, 'Henrik').getByText('missed: bus did not come').waitFor();
  await page.reload();
  await line(page, 'Henrik').getByText('missed: bus did not come').waitFor();

  await line(page, 'Maud').getByRole('button', { name: 'Maud' }).first().focus();
  await page.keyboard.press('s');
  await expect.poll(() => page.url()).toMatch(/\/visits\/[^/]+\/swab$/);
  await page.goto(server.url);
  await line(page, 'Maud').getByText('visit open').waitFor();
  await line(page, 'Maud').getByRole('button', { name: 'Maud' }).first().focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Maud/ }).waitFor();
});

demoTest(
  'another time by one key: what is no time stays in the field, the focus goes with the line, one key takes it back',
  async ({ page, server }) => {
    await signIn(page, server);
    await openDay(page, server.url, '2027-01-19');
    for (const typed of ['9:00 maud', '9:40 petra', '10:20 soren']) await putDown(page, typed);
    const names = () => page.locator('.day-line .name-button').allInnerTexts();
    const focused = () =>
      page.evaluate(() => document.activeElement?.closest('.day-line')?.querySelector('.name-button')?.textContent ?? '');
    const field = page.getByLabel(/^At what time/);
    await page.keyboard.press('Escape');
    expect(await focused()).toMatch(/^Maud/);
    await page.keyboard.press('n');
    await field.waitFor();
    expect(await field.inputValue()).toBe('09:00');
    await page.keyboard.type('25:10');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').filter({ hasText: '“25:10” is no time of day' }).waitFor();
    expect(await field.inputValue()).toBe('25:10');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('1130');
    await page.keyboard.press('Enter');
    await page.getByRole('status').filter({ hasText: 'at 11:30, was 09:00' }).waitFor();
    expect((await names()).map((name) => name.split(' ')[0])).toEqual(['Petra', 'Soren', 'Maud']);
    await expect.poll(focused).toMatch(/^Maud/);
    await page.keyboard.press('u');
    await page.getByRole('status').filter({ hasText: 'at 09:00 again' }).waitFor();
    expect((await names())[0]).toMatch(/^Maud/);
    await expect.poll(focused).toMatch(/^Maud/);
    await page.reload();
    await line(page, 'Maud').getByText('09:00').waitFor();

    // Without a time, and left as it is. The field has the focus once the page is whole again.
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('day-entry');
    await page.keyboard.press('Escape');
    await page.keyboard.press('ArrowDown');
    await expect.poll(focused).toMatch(/^Petra/);
    await page.keyboard.press('n');
    await page.keyboard.press('Delete');
    await page.keyboard.press('Enter');
    await line(page, 'Petra').getByText('no time', { exact: true }).waitFor();
    await expect.poll(focused).toMatch(/^Petra/);
    await page.keyboard.press('n');
    await page.keyboard.type('12');
    await page.keyboard.press('Escape');
    await expect.poll(focused).toMatch(/^Petra/);
    await line(page, 'Petra').getByText('no time', { exact: true }).waitFor();
  },
);

demoTest(
  'missed, taken back and missed again as fast as the keys go; two appointments of one person are two lines',
  async ({ page, server }) => {
    await signIn(page, server);
    for (const typed of ['8:05 yusra', '16:05 yusra']) await putDown(page, typed);
    const at = (time: string) => page.locator('.day-line').filter({ hasText: 'Yusra' }).filter({ hasText: time });
    const nameOf = (time: string) => at(time).locator('.name-button');
    // The list answers late: what a key builds on is the server's last word on this appointment.
    await page.route('**/api/days/**', async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 1_500));
      await route.continue();
    });
    await nameOf('08:05').focus();
    for (const [key, reason, says] of [
      ['m', '1', 'missed: did not come'],
      ['u', '', 'not here yet'],
      ['m', '2', 'missed: came too late'],
      ['u', '', 'not here yet'],
      ['m', '1', 'missed: did not come'],
    ] as const) {
      await page.keyboard.press(key);
      if (reason) await page.keyboard.press(reason);
      await at('08:05').getByText(says).waitFor({ timeout: 1_400 });
    }
    for (const key of ['u', 'u']) await page.keyboard.press(key);
    await at('08:05').getByText('not here yet').waitFor();
    await page.keyboard.press('m');
    await page.keyboard.press('1');
    await at('08:05').getByText('missed: did not come').waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
    await page.unrouteAll({ behavior: 'ignoreErrors' });
    await page.reload();
    await at('08:05').getByText('missed: did not come').waitFor();
    await at('16:05').getByText('not here yet').waitFor();

    await nameOf('16:05').focus();
    await page.keyboard.press('s');
    await expect.poll(() => page.url()).toMatch(/\/visits\/[^/]+\/swab$/);
    const visit = page.url().replace(/\/swab$/, '');
    await page.goto(server.url);
    await at('16:05').getByText('visit open').waitFor();
    await at('08:05').getByText('missed: did not come').waitFor();
    await nameOf('16:05').click();
    await expect.poll(() => page.url()).toBe(visit);
  },
);

demoTest('other days by key; there a name alone opens nothing', async ({ page, server }) => {
  await signIn(page, server);
  await page.keyboard.press('ArrowRight');
  await page.getByRole('heading', { level: 1, name: /^Tomorrow, / }).waitFor();
  await putDown(page, 'yusra');
  await line(page, 'Yusra').getByText('no time').waitFor();
  await page.keyboard.press('Escape');
  await page.keyboard.press('t');
  await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
  await page.keyboard.press('ArrowLeft');
  await page.getByRole('heading', { level: 1, name: /^Yesterday, / }).waitFor();
  await page.keyboard.press('Escape');
  await page.locator('h1').click();
  await page.getByRole('link', { name: 'all people' }).focus();
  await page.keyboard.press('p');
  await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
});

const PASTED = [
  'time;chart number;name;birthday',
  "9:00;1001;Una O'Neil;04/03/1980",
  '9:30;1002;سارة الحداد;25/12/1970',
  '10:99;1003;Ben Ode;01/02/2015',
  '11:00;1004;Ita Moss;31/02/1980',
  '9:00;1001;Una O’Neil;04/03/1980',
].join('\n');

demoTest('a pasted list: dates told by the list, wrong rows mended in place, right ones taken, twice is once', async ({ page, server }) => {
  await signIn(page, server);
  await page.goto(`${server.url}/day/2027-01-11/fill`);
  await page.getByLabel('Rows').fill(PASTED);
  await page.getByRole('button', { name: 'Look at the rows' }).click();
  await page.getByText('2 of 5 rows can be taken, 2 to mend, 1 with nothing to do.').waitFor();
  await page.getByText('Read so because of 25/12/1970 in this list.').waitFor();
  await page.getByText('row 5, birthday “31/02/1980”: no such day in the calendar').waitFor();
  // The focus stands in the first field that is wrong; mending it goes on to the next.
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('row-4-time');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('10:00');
  await page.keyboard.press('Enter');
  await page.getByText('3 of 5 rows can be taken, 1 to mend').waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('row-5-birthday');
  await page.getByRole('button', { name: 'Put 3 people down' }).click();
  await page.getByText('3 people put down, 3 of them new on file. 2 rows stay here.').waitFor();

  await openDay(page, server.url, '2027-01-11');
  await line(page, "Una O'Neil").getByText('09:00').waitFor();
  expect(await line(page, 'سارة الحداد').locator('bdi').first().innerText()).toBe('سارة الحداد');

  await page.goto(`${server.url}/day/2027-01-11/fill`);
  const again = page.getByLabel('Rows');
  await again.waitFor();
  await again.fill(PASTED);
  await page.getByRole('button', { name: 'Look at the rows' }).click();
  await page.getByText('0 of 5 rows can be taken, 2 to mend, 3 with nothing to do.').waitFor();
});

demoTest('dates that can be read in two ways wait for a choice; the same name is asked back', async ({ page, server }) => {
  await signIn(page, server);
  await page.goto(`${server.url}/day/2027-01-12/fill`);
  await page.getByLabel('Rows').fill('8:00, Rosa Lindqvist, 04/03/1980\n8:30, Rosa Lindqvist, 05/05/1991');
  await page.getByRole('button', { name: 'Look at the rows' }).click();
  await page.getByText('These dates can be read in two ways. Which number is the day?').waitFor();
  await page.getByText('04/03/1980 is 3 April 1980').waitFor();
  await page.getByRole('radio', { name: /^Day first/ }).check();
  await page.getByText('2 of 2 rows can be taken.').waitFor();
  await page.getByRole('button', { name: 'Put 2 people down' }).click();
  await page.getByText('2 people put down, 2 of them new on file.').waitFor();

  await page.getByLabel('Rows').fill('9:00, Rosa Lindqvist, 06/06/2001');
  await page.getByRole('button', { name: 'Look at the rows' }).click();
  await page.getByText(/is on file; another birthday. Is this the same person\?/).waitFor();
  await page.getByRole('button', { name: 'another person: add a new one' }).click();
  await page.getByRole('button', { name: 'Put 1 person down' }).click();
  await page.getByText('1 person put down, 1 of them new on file.').waitFor();
});

demoTest('a file of 300 rows with wrong dates: everything is kept, and named by row', async ({ page, server }) => {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-list-'));
  const file = join(folder, 'day.csv');
  const rows = Array.from(
    { length: 300 },
    (_, i) =>
      `${8 + (i % 10)}:${String(10 + (i % 50))},P${5000 + i},Person ${String.fromCharCode(65 + (i % 26))}${i},${i % 2 === 0 ? '31/02/1980' : `19${30 + (i % 60)}-05-06`}`,
  );
  writeFileSync(file, ['time,chart,name,birthday', ...rows].join('\r\n'));
  await signIn(page, server);
  await page.goto(`${server.url}/day/2027-01-13/fill`);
  const started = Date.now();
  await page.getByLabel('Choose a file').setInputFiles(file);
  await page.getByText('150 of 300 rows can be taken, 150 to mend.').waitFor();
  const readMs = Date.now() - started;
  await page.getByRole('button', { name: 'Put 150 people down' }).click();
  const taking = Date.now();
  await page.getByText('150 people put down, 150 of them new on file. 150 rows stay here.').waitFor();
  const takenMs = Date.now() - taking;
  await page.getByText('row 300, birthday “31/02/1980”: no such day in the calendar').waitFor();
  console.log(`300 rows: preview ${readMs} ms, taken ${takenMs} ms`);
  rmSync(folder, { recursive: true, force: true });
});

demoTest('the Tomorrow sheet is printed black on white, page n of m, without what only a screen needs', async ({ page, server }) => {
  await signIn(page, server);
  const tomorrow = await page.getByRole('link', { name: 'Tomorrow sheet' }).getAttribute('href');
  await openDay(page, server.url, tomorrow?.slice('/day/'.length) ?? '');
  for (const typed of ['9:00 maud', '9:40 petra', '10:20 soren']) await putDown(page, typed);
  await page.emulateMedia({ media: 'print' });
  const text = await page.locator('main').innerText();
  for (const words of ['Tomorrow, ', '09:00', 'Maud', 'safety check: out of date', 'recall', 'Swabs for up to'])
    expect(text).toContain(words);
  for (const words of ['cancelled', 'Name, or time and name', 'all people', 'Print']) expect(text).not.toContain(words);
  expect(await page.evaluate(() => getComputedStyle(document.body).color)).toBe('rgb(0, 0, 0)');
  for (const [format, widthPt] of [
    ['A4', 595],
    ['Letter', 612],
  ] as const) {
    const { pages, sizePt } = readPdf(await page.pdf({ format }));
    expect(pages).toBe(1);
    expect(Math.abs(sizePt[0] - widthPt)).toBeLessThan(1);
  }
});

demoTest(
  'a sheet for the waiting room: one page each, in the order of the keys, private questions without words or answers',
  async ({ page, server }) => {
    await signIn(page, server);
    await openDay(page, server.url, '2027-01-18');
    for (const typed of ['9:00 maud', '9:40 petra']) await putDown(page, typed);
    await page.keyboard.press('Escape');
    await page.keyboard.press('w');
    const sheet = page.getByRole('article', { name: 'Sheet of Maud' });
    await sheet.waitFor();
    const letters = await sheet.getByRole('listitem').evaluateAll((items) => items.map((item) => item.textContent?.trim().slice(0, 1)));
    const text = await sheet.innerText();
    expect(letters[0]).toBe('a');
    expect(text).toMatch(/Last time: /);
    expect(text).not.toMatch(/pregnan|between us|vomit|alcohol|drugs/i);
    const pdf = readPdf(await page.pdf({ format: 'A4' }));
    expect(pdf.pages).toBe(2);
    await page.getByLabel('Whose sheets').selectOption({ index: 1 });
    expect(readPdf(await page.pdf({ format: 'Letter' })).pages).toBe(1);

    // The letters are the keys of the Visit page.
    await page.goto(server.url);
    await entry(page).fill('maud');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^Maud/ }).waitFor();
    await page.keyboard.press('a');
    await page.locator('.line.open').getByText('Medicines').first().waitFor();
  },
);

demoTest('Today and the filling of a day: axe finds nothing in light and dark', async ({ page, server }) => {
  await signIn(page, server);
  await openDay(page, server.url, '2027-01-14');
  await putDown(page, '9:00 maud');
  await entry(page).fill('9:20 al');
  await page.getByRole('option').first().waitFor();
  await expectNoBarriersInState(page, 'a name being typed');
  await entry(page).fill('');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Tab');
  await page.keyboard.press('c');
  await page.getByText(/^Why cancelled/).waitFor();
  await expectNoBarriersInState(page, 'a visit being cancelled');
  await page.keyboard.press('Escape');
  await page.keyboard.press('n');
  await page.keyboard.type('99');
  await page.keyboard.press('Enter');
  await page.getByText(/is no time of day/).waitFor();
  await expectNoBarriersInState(page, 'a time that is none');
  await page.keyboard.press('Escape');
  await page.goto(`${server.url}/day/2027-01-14/fill`);
  await page.getByLabel('Rows').fill(`${PASTED}\n12:00;;Maud Szymborski;1990-01-01`);
  await page.getByRole('button', { name: 'Look at the rows' }).click();
  await page.getByText(/can be taken/).waitFor();
  await expectNoBarriersInState(page, 'rows of a list');
});

demoTest('nothing to scroll sideways at 320 px', async ({ page, server }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await signIn(page, server);
  await openDay(page, server.url, '2027-01-15');
  await putDown(page, '9:00 maud');
  const isWide = () => page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
  expect(await isWide()).toBe(false);
  await page.goto(`${server.url}/day/2027-01-15/fill`);
  await page.getByLabel('Rows').fill(PASTED);
  await page.getByRole('button', { name: 'Look at the rows' }).click();
  await page.getByText(/can be taken/).waitFor();
  expect(await isWide()).toBe(false);
});
