// From an answer's key to the redrawn page, in Chromium on the built pages: a visit of an invented person, loopback only.
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChromium } from '../scripts/tools.mjs';
import { startDemo } from '../test/browser/demoTemplate.ts';
import { openVisitOf, signIn } from '../test/browser/pageSteps.ts';
import type { RunningServer } from '../test/browser/startServer.ts';
import { answerQuestions, handsOn } from '../test/browser/visitKeys.ts';
import { digits, median, quantile } from './measure.ts';

const WATCH = fileURLToPath(new URL('watchRedraws.mjs', import.meta.url));
const BUDGET_MS = 50;
const FIRST_PAGES = 7;
const FIRST_PAGE_BUDGET_MS = 1000;
const CHANGES = 60;
const BETWEEN_KEYS_MS = 150;

interface Redraw {
  readonly ms: number;
  /** Until the plan stood, which may come after the answer. */
  readonly lastMs: number;
  /** Level or plan read otherwise than before. */
  readonly isSummaryChanged: boolean;
}

const executablePath = findChromium();
if (!executablePath) {
  console.log('SKIPPED: the page, because Chromium is not installed.');
} else {
  // Chromium's sandbox refuses to run as root.
  const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const browser = await chromium.launch({ executablePath, args: [...args, '--disable-gpu', '--disable-background-networking'] });
  const server = await startDemo();
  try {
    await measureFirstPage(browser, server);
    const page = await browser.newPage();
    await page.addInitScript({ path: WATCH });
    await signIn(page, server);
    await openVisitOf(page, 'Henrik');
    await page.evaluate('window.redraws.length = 0');
    await answerQuestions(page, handsOn(page), ['safety']);
    await confirmLevel(page);
    await page.keyboard.press('3');
    await answerAgain(page);
    report((await page.evaluate('window.redraws')) as Redraw[]);
  } finally {
    await browser.close();
    await server.stop();
  }
}

/** With nothing kept from before, from asking for the page until its heading stands; the program is started, the browser is open. */
async function measureFirstPage(browser: Browser, server: RunningServer): Promise<void> {
  const ms: number[] = [];
  for (let time = 0; time < FIRST_PAGES; time += 1) {
    const context = await browser.newContext();
    const page = await context.newPage();
    const began = performance.now();
    await signIn(page, server);
    ms.push(performance.now() - began);
    await context.close();
  }
  console.log(`first page, signed in, nothing kept: median ${digits(median(ms))} ms (largest ${digits(Math.max(...ms))})`);
  console.log(`  budget ${digits(FIRST_PAGE_BUDGET_MS)} ms`);
}

/** With a confirmed level there is a plan, which takes longest. */
async function confirmLevel(page: Page): Promise<void> {
  for (const key of ['4', '+', ...'13', '4', '1', '1', '5', 'c']) await page.keyboard.press(key);
  await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
  await page.evaluate('window.redraws.length = 0');
}

/** The number of snacks, again and again: it stands on the list, so level, drivers and plan are worked out anew each time. */
async function answerAgain(page: Page): Promise<void> {
  for (let change = 0; change < CHANGES; change += 1) {
    for (const key of ['a', String([0, 6, 2, 8, 4][change % 5])]) {
      await page.keyboard.press(key);
      await page.waitForTimeout(BETWEEN_KEYS_MS);
    }
  }
}

function report(redraws: readonly Redraw[]): void {
  const say = (what: string, some: readonly Redraw[], msOf = (redraw: Redraw) => redraw.ms) => {
    const ms = some.map(msOf);
    if (ms.length === 0) throw new Error(`no key was measured: ${what}`);
    console.log(`  ${what}: ${ms.length}, median ${digits(median(ms))} ms, 95th percentile ${digits(quantile(ms, 0.95))} ms`);
  };
  console.log('from a key to the drawn page, Chromium, one visit:');
  say('keys that changed the page', redraws);
  say(
    'of these, answers that changed what level and plan say',
    redraws.filter(({ isSummaryChanged }) => isSummaryChanged),
  );
  say(
    'the same, until the plan stood too',
    redraws.filter(({ isSummaryChanged }) => isSummaryChanged),
    ({ lastMs }) => lastMs,
  );
  console.log(`  budget from an answer to the redrawn summary: ${BUDGET_MS} ms`);
}
