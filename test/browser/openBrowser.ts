import { type Browser, type Page, chromium as program } from 'playwright-core';
import { test as base, expect } from 'vitest';
import { findChromium } from '../../scripts/tools.mjs';
import { startDemo } from './demoTemplate.ts';
import type { RunningServer } from './startServer.ts';

const QUIET = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A headless Chromium, or undefined where none is installed. */
export async function openBrowser(): Promise<Browser | undefined> {
  const executablePath = findChromium();
  if (!executablePath) return undefined;
  // Chromium's sandbox refuses to run as root.
  const isRoot = process.getuid?.() === 0;
  return program.launch({ executablePath, headless: true, args: [...(isRoot ? ['--no-sandbox'] : []), ...QUIET] });
}

/** Everything the page complains about from now on: policy violations, console errors, uncaught errors. Fills as it happens. */
export async function watchProblems(page: Page): Promise<string[]> {
  const problems: string[] = [];
  await page.exposeFunction('reportViolation', (text: string) => problems.push(`content security policy: ${text}`));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const report = (window as unknown as { reportViolation: (text: string) => void }).reportViolation;
      report(`${event.violatedDirective} refused ${event.blockedURI} ${event.sample} (${event.sourceFile}:${event.lineNumber})`);
    });
  });
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => problems.push(`uncaught: ${error.message}`));
  return problems;
}

interface BrowserFixtures {
  /** One per worker, for all its files. */
  readonly chromium: Browser | undefined;
  /** The same; what a file leaves open in it is closed behind the file. */
  readonly browser: Browser | undefined;
  /** One per file. */
  readonly server: RunningServer;
  /** A fresh page in a fresh context. The test fails if it ends with a policy violation, a console error or an uncaught error. */
  readonly page: Page;
}

/** `test` with a page on the built server; skipped, with the reason, where Chromium is not installed. */
export const browserTest = base.extend<BrowserFixtures>({
  chromium: [
    // biome-ignore lint/correctness/noEmptyPattern: vitest reads the fixtures a fixture needs from its first argument's pattern
    async ({}, use) => {
      const browser = await openBrowser();
      await use(browser);
      await browser?.close();
    },
    { scope: 'worker' },
  ],
  browser: [
    async ({ chromium }, use) => {
      await use(chromium);
      for (const context of chromium?.contexts() ?? []) await context.close();
    },
    { scope: 'file' },
  ],
  server: [
    // biome-ignore lint/correctness/noEmptyPattern: as above
    async ({}, use) => {
      const server = await startDemo();
      await use(server);
      await server.stop();
    },
    { scope: 'file' },
  ],
  page: async ({ browser, skip }, use) => {
    if (!browser) return skip('Chromium is not installed');
    const context = await browser.newContext();
    const page = await context.newPage();
    const problems = await watchProblems(page);
    await use(page);
    await context.close();
    expect(problems).toEqual([]);
  },
});
