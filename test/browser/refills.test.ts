import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { SigningView } from '../../src/api/signing.ts';
import type { RefillView, StockView } from '../../src/api/stock.ts';
import { expectNoBarriersInBothThemes } from './expectNoBarriers.ts';
import { startWithMovedClock } from './movedClock.ts';
import { browserTest } from './openBrowser.ts';
import { become, signIn } from './pageSteps.ts';

const DAY = 24 * 60 * 60 * 1000;
const STRONG = 'paste-naf-5000';
const onDay = (days: number) => new Date(Date.now() + days * DAY).toISOString().slice(0, 10);

/** What the page's own session reads or writes, without another page. */
const ask = <T>(page: Page, method: 'GET' | 'POST', path: string, body?: unknown): Promise<T> =>
  page.evaluate(
    async ([verb, url, sent]) => {
      const headers = sent === undefined ? {} : { 'content-type': 'application/json' };
      return (await fetch(url, { method: verb, headers, ...(sent !== undefined && { body: sent }) })).json();
    },
    [method, path, body === undefined ? undefined : JSON.stringify(body)] as const,
  );

const receive = (page: Page, lot: string, lastDay: number) =>
  ask(page, 'POST', `/api/shelf/${STRONG}/receipts`, { packs: 1, lot, expiry: onDay(lastDay) });
const packsLeft = async (page: Page) => {
  const { items } = await ask<StockView>(page, 'GET', '/api/stock');
  return items.find(({ shelfItemId }) => shelfItemId === STRONG)?.lots.map(({ lot, quantity }) => `${lot}: ${quantity}`);
};

/** Somebody whose last visit is closed, agreed to the strong paste and waits for its signature. */
async function findWaiting(page: Page) {
  const { lines } = await ask<SigningView>(page, 'GET', '/api/signing');
  for (const [row, line] of lines.entries()) {
    if (line.isOpen || line.shelfItemId !== STRONG) continue;
    const { notHere, lines: refills } = await ask<RefillView>(page, 'GET', `/api/visits/${line.visitId}/refills`);
    const isReady = refills.some(({ shelfItemId, state }) => shelfItemId === STRONG && state === 'waits');
    if (notHere === null && isReady) return { ...line, row };
  }
  throw new Error('nobody in the invented practice waits for a signature since an earlier visit');
}

async function openRefills(page: Page, address: string) {
  await page.goto(address);
  const refills = page.getByRole('region', { name: 'One more pack' });
  await refills.getByRole('button', { name: 'No, nothing new' }).focus();
  await page.keyboard.press('Enter');
  return refills.locator(`[data-refill="${STRONG}"]`);
}

browserTest(
  'signed on Today for packs and a last day, given at the counter pack by pack, first expiring first; used up, out of stock and past are said',
  async ({ browser, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const server = await startWithMovedClock();
    const page = await browser.newPage();
    await signIn(page, server);
    await receive(page, 'late', 400);
    await receive(page, 'soon', 90);
    const { visitId, person, row } = await findWaiting(page);
    const address = `${server.url}/visits/${visitId}`;

    await become(page, 'd');
    await page.locator(`[data-signing="${row}"] [data-row]`).filter({ hasText: person }).focus();
    await page.keyboard.press('p');
    const form = page.getByRole('form', { name: `for ${person}` });
    await form.getByText(/^Empty: one pack\./).waitFor();
    await form.getByText(/Empty: no last day\./).waitFor();
    await page.keyboard.type('0');
    await page.keyboard.press('Tab');
    await page.keyboard.type(onDay(-1));
    await page.keyboard.press('Enter');
    await form.getByText('A whole number from 1 to 100, or nothing for one pack.').waitFor();
    await form.getByText('This day is past.').waitFor();
    const [packs, until] = [form.getByLabel('Packs in all'), form.getByLabel('Last day')];
    expect([await packs.inputValue(), await until.inputValue()]).toEqual(['0', onDay(-1)]);
    await expect.poll(() => packs.evaluate((field) => field === document.activeElement)).toBe(true);
    // Too far off, which the server says under the same line.
    await page.keyboard.press('Control+a');
    await page.keyboard.type('3');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+a');
    await page.keyboard.type(onDay(800));
    await page.keyboard.press('Enter');
    await form.getByText(/no pack goes by the answers of this visit from/).waitFor();
    expect(await packs.inputValue()).toBe('3');
    await page.keyboard.press('Control+a');
    await page.keyboard.type(onDay(20));
    await page.keyboard.press('Enter');
    await page.getByText(/: signed\.$/).waitFor();

    await become(page, 't');
    const line = await openRefills(page, address);
    await line.getByText(/^Signed by Dr\. Ahlgren, .*, for 3 packs in all, to .*, 3 left\.$/).waitFor();
    await expectNoBarriersInBothThemes(page);
    await line.getByRole('button', { name: /^Given today: .*lot soon/ }).focus();
    await page.keyboard.press('Enter');
    await line.getByText(/, 2 left\.$/).waitFor();
    expect(await packsLeft(page)).toEqual(['late: 1']);
    await line.getByRole('button', { name: /lot late/ }).focus();
    await page.keyboard.press('Enter');
    await line.getByText('No pack that may be given is left.').waitFor();
    expect(await line.getByRole('button').count()).toBe(0);
    expect(await packsLeft(page)).toEqual([]);

    await receive(page, 'third', 300);
    await receive(page, 'fourth', 300);
    const again = await openRefills(page, address);
    await again.getByRole('button', { name: /lot (third|fourth)/ }).focus();
    await page.keyboard.press('Enter');
    await again.getByText('Waits for the dentist: Dr. Ahlgren signed for 3 packs, and they were given.').waitFor();
    expect(await again.getByRole('button').count()).toBe(0);
    await page.getByRole('region', { name: 'Plan' }).getByText('none left').waitFor();

    // A dentist at the counter signs anew; three weeks later that is past.
    await become(page, 'd');
    const anew = await openRefills(page, address);
    await anew.getByRole('button', { name: /^Sign anew/ }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('3');
    await page.keyboard.press('Tab');
    await page.keyboard.type(onDay(20));
    await page.keyboard.press('Enter');
    await anew.getByText('3 went already: more than 3 in all, so that another may go.').waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('4');
    await page.keyboard.press('Enter');
    await anew.getByText(/, for 4 packs in all, to .*, 1 left\.$/).waitFor();
    server.move(21 * DAY);
    await signIn(page, server);
    const late = await openRefills(page, address);
    await late.getByText(/^Waits for the dentist: the signature of Dr\. Ahlgren held to /).waitFor();
    expect(await late.getByRole('button', { name: /^Given/ }).count()).toBe(0);
    await page.close();
  },
);
