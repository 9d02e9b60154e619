import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { browserTest } from './openBrowser.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import { startServer } from './startServer.ts';

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
  const data = join(disk.folder, 'data');
  // Made by one server and opened by another, whose log of the database is still small and has to grow with every answer.
  await (await startServer(['--data', data])).stop();
  const server = await startServer(['--data', data]);
  try {
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
    await server.stop();
    disk.unmount();
  }
});

browserTest('a server that hangs is not waited for in silence, and its answer is not doubled', async ({ browser, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const server = await startServer();
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
