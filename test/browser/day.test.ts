import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { DEMO_CODE } from '../../src/content/demo/members.ts';
import { readPdf } from '../leaflet/readPdf.ts';
import { demoTest } from './demo.ts';
import { expectNoBarriers } from './expectNoBarriers.ts';
import { signIn } from './pageSteps.ts';
import { answerQuestions, type Hands, handsOn, readFocus } from './visitKeys.ts';

// product.md, budgets. The walk-in is counted beside the letters of the name.
const MOST_KEYS = { visit: 60, walkIn: 10, finding: 6 };

const line = (page: Page, name: string) => page.locator('.day-line').filter({ hasText: name });

/** The three of the list that the practice's other program gave out this morning. */
const LIST = [
  'time,chart number,name,birthday',
  '13:00,TQ-9001,Ansgar Tillotson,1971-04-19',
  "13:20,TQ-9002,Saoirse O'Mallory,1996-11-02",
  '13:40,TQ-9003,Benedetta Quarshie,2009-06-30',
].join('\r\n');

interface Asked {
  /** Digits typed into the meter's box, or why there is no reading. */
  readonly swab: { readonly rlu: string } | 'declined' | 'no-site';
  readonly finding?: boolean;
  /** Axe looks at the page before it is closed: once for each state that the page can be in. */
  readonly looked?: boolean;
}

interface Done {
  readonly name: string;
  readonly keys: number;
  readonly findingKeys: number | null;
  readonly note: string;
}

/** One visit by keys alone, from the open page to the copied note of the closed visit. */
async function workVisit(page: Page, name: string, { swab, finding = false, looked = false }: Asked): Promise<Done> {
  await page.getByRole('heading', { level: 1, name: new RegExp(`^${name}`) }).waitFor();
  const hands = handsOn(page);
  await answerQuestions(page, hands, ['safety']);
  await takeSwab(page, hands, swab);
  await answerQuestions(page, hands, ['food', 'home', 'health', 'look']);
  const findingKeys = finding ? await noteFinding(page, hands) : null;
  await hands.press('5');
  await confirmLevel(page, hands, swab === 'no-site');
  await hands.press('7');
  if ((await page.getByRole('button', { name: /all agreed/ }).count()) > 0) await hands.press('=');
  if (looked) await expectNoBarriers(page, `${name}, before closing`);
  await hands.press('7');
  await hands.press('z');
  await page.getByText(/· closed/).waitFor();
  await hands.press('.');
  await page.getByText(/^Note copied/).waitFor();
  const note = await page.evaluate(() => navigator.clipboard.readText());
  return { name, keys: hands.keys(), findingKeys, note };
}

async function takeSwab(page: Page, hands: Hands, swab: Asked['swab']): Promise<void> {
  if (swab === 'no-site') return;
  await hands.press('2');
  if (swab === 'declined') {
    for (const key of ['w', '1']) await hands.press(key);
    await page.getByText(/No swab today: declined/).waitFor();
  } else {
    for (const key of ['r', ...swab.rlu, 'Enter', 'u']) await hands.press(key);
    await page.getByText(new RegExp(`^${Number(swab.rlu).toLocaleString('en')} RLU\\.`)).waitFor();
  }
  if ((await readFocus(page)).scope === 'swab') await hands.press('3');
}

async function noteFinding(page: Page, hands: Hands): Promise<number> {
  await hands.press('4');
  const before = hands.keys();
  for (const key of ['f', ...'13', '4', '1', '1']) await hands.press(key);
  await page.getByText('white spot, active').first().waitFor();
  return hands.keys() - before;
}

/** The dentist comes to the same page, signs line after line with one key each, and leaves it to the hygienist again. */
async function signAll(page: Page): Promise<void> {
  const queue = page.getByRole('region', { name: 'Waiting for a signature' });
  const rows = queue.locator('[data-signing]');
  await become(page, 'd');
  await queue
    .getByRole('button', { name: /^Sign / })
    .first()
    .waitFor();
  await expectNoBarriers(page, 'the signature queue');
  const waiting = await rows.count();
  expect(waiting).toBeGreaterThan(0);
  for (let left = waiting; left > 0; left -= 1) {
    await rows.first().locator('[data-row]').focus();
    await page.keyboard.press('s');
    await expect.poll(() => rows.count()).toBe(left - 1);
  }
  await become(page, 'i');
  console.log(`signed from the queue: ${waiting}`);
}

/** Change of member by keys, without leaving the page. */
async function become(page: Page, letter: string): Promise<void> {
  const asked = page.getByRole('dialog', { name: 'Who is here?' });
  await page.keyboard.press('Control+.');
  await asked.waitFor();
  await page.keyboard.press(letter);
  await page.keyboard.type(DEMO_CODE);
  await page.keyboard.press('Enter');
  await asked.waitFor({ state: 'detached' });
}

/** As proposed; where the list proposes none and a level applies, the one a professional takes from the list with a reason. */
async function confirmLevel(page: Page, hands: Hands, applies: boolean): Promise<void> {
  if (applies) {
    await page
      .getByText(/caries level does not apply/)
      .first()
      .waitFor();
    expect(await page.getByRole('button', { name: /^Confirm/ }).count()).toBe(0);
    return;
  }
  await page.getByRole('button', { name: /^Confirm/ }).waitFor();
  await hands.press('c');
  await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
}

demoTest(
  'a day of ten: list, walk-in, declined swab, child, no teeth, signatures; sheets printed, notes copied, keys counted',
  { timeout: 300_000 },
  async ({ page, server, browser, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write'], { origin: server.url });
    await page.setViewportSize({ width: 1440, height: 1000 });
    await signIn(page, server);
    await expectNoBarriers(page, 'Today');

    // Three come from a file.
    const folder = mkdtempSync(join(tmpdir(), 'ebbline-day-'));
    const file = join(folder, 'morning.csv');
    writeFileSync(file, LIST);
    await page.getByRole('link', { name: 'fill from a list' }).click();
    await page.getByLabel('Choose a file').setInputFiles(file);
    await page.getByText('3 of 3 rows can be taken.').waitFor();
    await expectNoBarriers(page, 'filling the day');
    await page.getByRole('button', { name: 'Put 3 people down' }).click();
    await page.getByText('3 people put down, 3 of them new on file.').waitFor();
    rmSync(folder, { recursive: true, force: true });

    const done: Done[] = [];
    const openFromToday = async (name: string) => {
      await page.goto(server.url);
      await line(page, name).getByRole('button', { name }).first().focus();
      await page.keyboard.press('Enter');
    };
    const people: readonly (readonly [string, Asked])[] = [
      ['Ansgar Tillotson', { swab: { rlu: '2950' }, looked: true }],
      ["Saoirse O'Mallory", { swab: { rlu: '8400' }, finding: true, looked: true }],
      ['Benedetta Quarshie', { swab: { rlu: '4300' }, looked: true }],
      ['Leonie Achebe-Hart', { swab: 'declined', looked: true }],
      ['Kezia Dunmorrow', { swab: { rlu: '3100' } }],
      ['Hedda Marlowe-Ito', { swab: 'no-site', looked: true }],
      ['Delphine Marchbanks', { swab: { rlu: '9150' }, finding: true }],
      ['Petra Kowhai', { swab: { rlu: '5150' } }],
      ['Birgit Ramanujan', { swab: { rlu: '12400' } }],
    ];
    for (const [name, asked] of people) {
      await openFromToday(name);
      done.push(await workVisit(page, name, asked));
    }

    // One walks in.
    await page.goto(server.url);
    await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
    await page.keyboard.type('Zebedee Amsel');
    const hands = handsOn(page);
    await hands.press('Enter');
    await hands.type('19880817');
    await hands.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^Zebedee Amsel/ }).waitFor();
    const walkInKeys = hands.keys();
    done.push(await workVisit(page, 'Zebedee Amsel', { swab: { rlu: '4100' } }));

    console.log(`keys: walk-in ${walkInKeys}, visits ${done.map(({ name, keys }) => `${name} ${keys}`).join(', ')}`);
    expect(walkInKeys).toBeLessThanOrEqual(MOST_KEYS.walkIn);
    expect(done.filter(({ keys }) => keys > MOST_KEYS.visit)).toEqual([]);
    expect(done.flatMap(({ findingKeys }) => findingKeys ?? []).filter((keys) => keys > MOST_KEYS.finding)).toEqual([]);
    expect(done).toHaveLength(10);
    for (const { name, note } of done) expect(note).toContain(name);
    expect(done.find(({ name }) => name.startsWith('Leonie'))?.note).toMatch(/declined/);
    expect(done.find(({ name }) => name.startsWith('Hedda'))?.note).toMatch(/does not apply/);

    // All ten are done on the list.
    await page.goto(server.url);
    for (const { name } of done) await line(page, name).getByText('closed').waitFor();
    await expectNoBarriers(page, 'Today, at the end');

    await signAll(page);

    // Papers: tomorrow's sheet, the sheets for the waiting room, and a leaflet.
    for (const format of ['A4', 'Letter'] as const) {
      await page.getByRole('link', { name: 'Tomorrow sheet' }).click();
      await page.getByRole('heading', { level: 1, name: /^Tomorrow, / }).waitFor();
      expect(readPdf(await page.pdf({ format })).pages).toBe(1);
      await page.goto(server.url);
    }
    await openFromToday('Petra Kowhai');
    await page.getByText(/· closed/).waitFor();
    await page.keyboard.press('7');
    await page.keyboard.press('p');
    await page.getByRole('article').waitFor();
    for (const format of ['A4', 'Letter'] as const) expect(readPdf(await page.pdf({ format })).pages).toBe(1);
    await expectNoBarriers(page, 'leaflet');
  },
);
