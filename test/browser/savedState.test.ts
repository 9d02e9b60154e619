import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { copyDemo } from './demoTemplate.ts';
import { browserTest } from './openBrowser.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import { startServer } from './startServer.ts';

const savedState = (page: Page) => page.locator('[data-saved]');

/** Everything the saved state said, in order, from now on. */
async function recordSavedState(page: Page): Promise<() => Promise<string[]>> {
  await savedState(page).evaluate((element) => {
    const said = [element.textContent ?? ''];
    new MutationObserver(() => said.push(element.textContent ?? '')).observe(element, {
      childList: true,
      characterData: true,
      subtree: true,
    });
    Object.assign(window, { said });
  });
  return () => page.evaluate(() => (window as unknown as { said: string[] }).said);
}

// These two make the browser log a failed request, so they take pages of their own: the usual page must end without any.
browserTest('a server that is gone: not saved yet, trying; and never saved before it is back', async ({ browser, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-browser-'));
  await copyDemo(folder);
  const first = await startServer(['--data', folder]);
  const page = await browser.newPage();
  await signIn(page, first);
  await openVisitOf(page, 'Henrik');
  await page.keyboard.press('=');
  await expect.poll(() => savedState(page).textContent()).toMatch(/^saved/);
  await first.stop();

  const said = await recordSavedState(page);
  await page.keyboard.press('3');
  await page.keyboard.press('=');
  await expect.poll(() => savedState(page).textContent()).toBe('not saved yet, trying');
  await page.keyboard.press('2');
  await page.keyboard.press('r');
  await page.keyboard.type('5150');
  await page.keyboard.press('Enter');
  await page.getByText(/^5,150 RLU\./).waitFor();
  await page.waitForTimeout(1500);
  // The first is what stood there before the server went.
  expect((await said()).slice(1).filter((text) => /\bsaved \d/.test(text))).toEqual([]);

  const again = await startServer(['--data', folder, '--port', new URL(first.url).port]);
  await expect.poll(() => savedState(page).textContent(), { timeout: 30_000 }).toMatch(/^saved \d\d:\d\d:\d\d$/);
  await page.reload();
  await page.getByText(/^5,150 RLU\./).waitFor();
  await page.getByText('asked today', { exact: true }).waitFor();
  await page.close();
  await again.stop();
  rmSync(folder, { recursive: true, force: true });
});

demoTest(
  'the same answer in two tabs: both values are shown, and nothing is overwritten before a choice',
  async ({ browser, server, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const context = await browser.newContext();
    const [mine, theirs] = [await context.newPage(), await context.newPage()];
    await signIn(mine, server);
    await openVisitOf(mine, 'Soren');
    await theirs.goto(mine.url());
    await theirs.getByRole('heading', { level: 1, name: /^Soren/ }).waitFor();

    const answerSnacks = async (page: Page, count: string) => {
      await page.keyboard.press('3');
      await page.getByRole('button', { name: /^Snacks and sweet drinks/ }).click();
      await page.keyboard.press(count);
    };
    await answerSnacks(theirs, '7');
    await expect.poll(() => savedState(theirs).textContent()).toMatch(/^saved/);
    await answerSnacks(mine, '4');

    const conflict = mine.getByRole('alert').filter({ hasText: 'was saved elsewhere' });
    await conflict.waitFor();
    expect(await conflict.innerText()).toContain('Yours: 4 a day. Theirs: 7 a day.');
    expect(await savedState(mine).textContent()).toBe('not saved yet: needs a look');

    await conflict.getByRole('button', { name: 'Keep yours' }).click();
    await expect.poll(() => savedState(mine).textContent()).toMatch(/^saved/);
    await theirs.reload();
    await theirs.getByRole('button', { name: /^Snacks and sweet drinks.*4 a day/ }).waitFor();

    await answerSnacks(mine, '5');
    await expect.poll(() => savedState(mine).textContent()).toMatch(/^saved/);
    await answerSnacks(theirs, '1');
    await theirs.getByRole('button', { name: 'Keep theirs' }).click();
    await theirs.getByRole('button', { name: /^Snacks and sweet drinks.*5 a day/ }).waitFor();
    await context.close();
  },
);

demoTest('while an answer is on its way, nothing says saved', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Petra');
  await page.keyboard.press('=');
  await expect.poll(() => savedState(page).textContent()).toMatch(/^saved/);
  let letGo = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route('**/fields', async (route) => {
    await held;
    await route.continue();
  });
  await page.keyboard.press('3');
  await page.keyboard.press('=');
  await expect.poll(() => savedState(page).textContent()).toBe('sending');
  letGo();
  await expect.poll(() => savedState(page).textContent()).toMatch(/^saved/);
});
