import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { DEMO_CODE, DEMO_PASSWORD } from '../../src/content/demo/members.ts';
import { copyDemo, startDemo } from './demoTemplate.ts';
import { startWithMovedClock } from './movedClock.ts';
import { browserTest } from './openBrowser.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import { type RunningServer, startServer } from './startServer.ts';

// A server in trouble makes the browser log failed requests, so these take pages of their own: the usual page must end without any.

const savedState = (page: Page) => page.locator('[data-saved]');
const isSaved = (page: Page) => expect.poll(() => savedState(page).textContent(), { timeout: 30_000 }).toMatch(/^saved \d\d:\d\d:\d\d$/);
const snacks = (page: Page, answer: string) => page.getByRole('button', { name: new RegExp(`^Snacks and sweet drinks.*${answer}`) });

async function answerSnacks(page: Page, count: string): Promise<void> {
  await page.keyboard.press('3');
  await page.getByRole('button', { name: /^Snacks and sweet drinks/ }).click();
  await page.keyboard.press(count);
}

/** A disk of its own of a few megabytes, or why there is none. */
function mountSmallDisk(): { readonly folder: string; readonly unmount: () => void } | string {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return 'mounting a small disk takes Linux and root';
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-disk-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=64m', 'tmpfs', folder], { stdio: 'pipe' });
  } catch (error) {
    rmSync(folder, { recursive: true });
    return `no small disk could be mounted here: ${error instanceof Error ? error.message.split('\n')[0] : error}`;
  }
  const unmount = () => {
    execFileSync('umount', [folder]);
    rmSync(folder, { recursive: true });
  };
  return { folder, unmount };
}

/** Writes until nothing more fits. */
function fillDisk(folder: string): string {
  const file = join(folder, 'filler');
  for (const size of [1 << 20, 4096, 1])
    for (;;)
      try {
        writeFileSync(file, Buffer.alloc(size, 1), { flag: 'a' });
      } catch {
        break;
      }
  return file;
}

browserTest('a full disk: nothing is called saved that is not, and what was saved before is there', async ({ browser, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const disk = mountSmallDisk();
  if (typeof disk === 'string') return skip(disk);
  let server: RunningServer | undefined;
  try {
    const data = join(disk.folder, 'data');
    // Made by another server: the log of the database is still small and has to grow with every answer.
    await copyDemo(data);
    server = await startServer(['--data', data]);
    const page = await browser.newPage();
    await signIn(page, server);
    await openVisitOf(page, 'Soren');
    await answerSnacks(page, '7');
    await isSaved(page);

    const filler = fillDisk(disk.folder);
    await answerSnacks(page, '4');
    const isFull = 'not saved yet, trying: the disk is full. Make room on it; what you typed stays on the page';
    await expect.poll(() => savedState(page).textContent(), { timeout: 15_000 }).toBe(isFull);
    await answerSnacks(page, '5');
    await page.waitForTimeout(1500);
    expect(await savedState(page).textContent()).toMatch(/^not saved yet, trying/);
    await snacks(page, '5 a day').waitFor();

    rmSync(filler);
    await isSaved(page);
    await page.reload();
    await snacks(page, '5 a day').waitFor();
    await page.close();
  } finally {
    await server?.stop();
    disk.unmount();
  }
});

browserTest('a server that hangs is not waited for in silence, and its answer is not doubled', async ({ browser, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const server = await startDemo();
  const page = await browser.newPage();
  await signIn(page, server);
  await openVisitOf(page, 'Soren');
  await answerSnacks(page, '3');
  await isSaved(page);
  server.signal('SIGSTOP');
  await answerSnacks(page, '6');
  await expect.poll(() => savedState(page).textContent(), { timeout: 15_000 }).toBe('not saved yet, trying');
  server.signal('SIGCONT');
  await isSaved(page);
  expect(await page.getByRole('alert').count()).toBe(0);
  await page.reload();
  await snacks(page, '6 a day').waitFor();
  await page.close();
  await server.stop();
});

const SECOND = 1_000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;

const clockStrip = (page: Page) => page.getByRole('alert').filter({ hasText: 'Set the clock before you open a visit.' });
const hidden = (page: Page) => page.getByRole('dialog', { name: 'The screen is hidden' });

async function comeBack(page: Page, secret: string): Promise<void> {
  await hidden(page).waitFor();
  await hidden(page).getByRole('textbox').focus();
  await page.keyboard.type(secret);
  await page.keyboard.press('Enter');
  await hidden(page).waitFor({ state: 'detached' });
}

async function typeHalfASentence(page: Page): Promise<void> {
  await page.keyboard.press('7');
  await page.keyboard.press('k');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('half a sen');
}

const typedSoFar = (page: Page) => page.evaluate(() => (document.activeElement as HTMLInputElement).value);

/** What the server has of this visit. */
const stored = (page: Page) =>
  page.evaluate(async () => {
    const response = await fetch(`/api/visits/${location.pathname.split('/')[2]}`);
    const { input } = await response.json();
    return { keep: input.visit.agreed?.keep, snacks: input.visit.answers.snacks_per_day?.value };
  });

/** Seconds between the time that the page calls saved and the page's own clock. */
const savedSecondsAgo = (page: Page) =>
  page.evaluate(() => {
    const [, hours, minutes, seconds] = /(\d+):(\d+):(\d+)/.exec(document.querySelector('[data-saved]')?.textContent ?? '') ?? [];
    const now = new Date();
    const ofDay = (h: number, m: number, s: number) => h * 3600 + m * 60 + s;
    const ago = ofDay(now.getHours(), now.getMinutes(), now.getSeconds()) - ofDay(Number(hours), Number(minutes), Number(seconds));
    return (ago + 86_400) % 86_400;
  });

browserTest(
  'a clock that stands a year behind: said on every page, no visit opens before somebody has looked',
  async ({ browser, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const server = await startWithMovedClock(-400 * 24 * HOUR);
    const page = await browser.newPage();
    await signIn(page, server);
    await clockStrip(page).waitFor();
    await page.goto(`${server.url}/shelf`);
    await clockStrip(page).waitFor();
    await page.goto(server.url);
    await page.getByRole('combobox', { name: 'Name, or time and name' }).fill('Soren');
    await page.keyboard.press('Enter');
    await page.getByText(/Set it right first/).waitFor();
    await page.getByRole('button', { name: 'The clock is right, go on' }).click();
    await expect.poll(() => clockStrip(page).count()).toBe(0);
    await openVisitOf(page, 'Soren');
    expect(await hidden(page).count()).toBe(0);
    await page.close();
  },
);

browserTest(
  'a clock set back in the middle of a visit: said at once, what is typed stays, what is saved is saved, and the screen still hides by time',
  async ({ browser, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const server = await startWithMovedClock();
    const page = await browser.newPage();
    await page.clock.install({ time: Date.now() });
    await signIn(page, server);
    await openVisitOf(page, 'Soren');
    await answerSnacks(page, '7');
    await isSaved(page);
    await typeHalfASentence(page);

    server.move(-3 * HOUR);
    await page.clock.setSystemTime(Date.now() - 3 * HOUR);
    await page.clock.runFor(2 * SECOND);
    expect(await hidden(page).count()).toBe(0);
    expect(await typedSoFar(page)).toBe('half a sen');
    await page.keyboard.type('tence');
    await page.keyboard.press('Enter');
    await clockStrip(page).getByText('What you enter now is kept, under the time this clock says.').waitFor({ timeout: 20_000 });
    await isSaved(page);
    expect(await savedSecondsAgo(page)).toBeLessThan(120);
    expect(await stored(page)).toEqual({ keep: 'half a sentence', snacks: 7 });

    server.signal('SIGSTOP');
    await answerSnacks(page, '4');
    await expect.poll(() => savedState(page).textContent(), { timeout: 15_000 }).toBe('not saved yet, trying');
    server.signal('SIGCONT');
    await isSaved(page);
    expect(await stored(page)).toEqual({ keep: 'half a sentence', snacks: 4 });

    // The member came, by the server, at a time that now lies ahead.
    await page.clock.runFor(6 * MINUTE);
    await comeBack(page, DEMO_CODE);

    server.move(0);
    await page.clock.setSystemTime(Date.now());
    await page.clock.runFor(2 * SECOND);
    await comeBack(page, DEMO_CODE);
    await expect.poll(() => clockStrip(page).count(), { timeout: 20_000 }).toBe(0);
    await page.reload();
    await snacks(page, '4 a day').waitFor();
    expect(await stored(page)).toEqual({ keep: 'half a sentence', snacks: 4 });
    await page.goto(server.url);
    await openVisitOf(page, 'Yusra');
    await page.close();
  },
);

browserTest(
  'a lid closed for hours, and over a night: hidden on waking, and what was typed goes on where it was',
  async ({ browser, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const server = await startWithMovedClock();
    const page = await browser.newPage();
    await page.clock.install({ time: Date.now() });
    await signIn(page, server);
    await openVisitOf(page, 'Soren');
    server.signal('SIGSTOP');
    await answerSnacks(page, '6');
    await typeHalfASentence(page);
    await expect.poll(() => savedState(page).textContent(), { timeout: 15_000 }).toBe('not saved yet, trying');

    // Asleep: hours pass, no timer runs, and nobody presses a key on waking.
    await page.clock.setSystemTime(Date.now() + 8 * HOUR);
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await hidden(page).getByText('Not saved yet: screen hidden, 1 field.').waitFor();
    expect((await page.locator('body').ariaSnapshot()).includes('Soren')).toBe(false);
    server.signal('SIGCONT');
    server.move(8 * HOUR);
    await comeBack(page, DEMO_CODE);
    await isSaved(page);
    expect(await typedSoFar(page)).toBe('half a sen');
    expect((await stored(page)).snacks).toBe(6);

    // A night: the sign-in itself has run out, and the page is still there.
    server.move(30 * HOUR);
    await page.clock.setSystemTime(Date.now() + 30 * HOUR);
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await hidden(page).getByText('The sign-in has run out, so the password is needed.').waitFor();
    expect((await page.locator('body').ariaSnapshot()).includes('Soren')).toBe(false);
    await comeBack(page, DEMO_PASSWORD);
    expect(await typedSoFar(page)).toBe('half a sen');
    await page.keyboard.type('tence');
    await page.keyboard.press('Enter');
    await isSaved(page);
    await expect.poll(() => stored(page)).toEqual({ keep: 'half a sentence', snacks: 6 });

    // Signing out leaves nothing behind.
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByText('Who is working?').waitFor();
    expect(await page.getByText('Soren').count()).toBe(0);
    await page.close();
  },
);
