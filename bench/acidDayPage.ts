// A snack dragged along the day, in Chromium on the built pages: from the move of the hand to the new picture, an invented person, loopback only.
import { loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChromium } from '../scripts/tools.mjs';
import { startDemo } from '../test/browser/demoTemplate.ts';
import { openVisitOf, signIn } from '../test/browser/pageSteps.ts';
import { digits, median, quantile } from './measure.ts';
import { threadTimes } from './threadTimes.ts';

const WATCH = fileURLToPath(new URL('watchDrag.mjs', import.meta.url));
const BUDGET_MS = 33;
const DRAGS = 6;
const MOVES = 25;
const STEP_PX = 5;
const BETWEEN_MOVES_MS = 50;
const WARM_AFTER_DRAGS = 2;
/** Who tells which ready-made day, by its key, and which of its events is dragged. */
const DAYS = [
  { says: 'many small snacks', person: 'Maud', key: '3', event: 'crisps' },
  { says: 'a night shift', person: 'Petra', key: '4', event: 'biscuits' },
] as const;

type Told = (typeof DAYS)[number];

const executablePath = findChromium();
if (!executablePath) {
  console.log('SKIPPED: the acid day, because Chromium is not installed.');
} else {
  // Chromium's sandbox refuses to run as root.
  const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const browser = await chromium.launch({ executablePath, args: [...args, '--disable-gpu', '--disable-background-networking'] });
  const server = await startDemo();
  try {
    for (const told of DAYS) {
      const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
      await page.addInitScript({ path: WATCH });
      await signIn(page, server);
      await openVisitOf(page, told.person);
      await page.keyboard.press('-');
      await page.getByText('No day is told yet').waitFor();
      await page.keyboard.press(told.key);
      await page.getByText('on the acid side').first().waitFor();
      await measureDrags(browser, page, told);
      await page.close();
    }
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function measureDrags(browser: Browser, page: Page, { says, event }: Told): Promise<void> {
  const dragAll = async (count: number) => {
    for (let i = 0; i < count; i += 1) await drag(page, event, i);
  };
  await dragAll(WARM_AFTER_DRAGS);
  await forget(page);
  await dragAll(DRAGS);
  const { stands, painted } = await read(page);
  const load = digits(loadavg()[0] ?? 0);
  console.log(`${says}: ${event} dragged, ${stands.length} pictures at a load of ${load}`);
  console.log(`  until the picture stands in the page: ${spread(stands)}`);
  console.log(`  until its frame is painted: ${spread(painted)}`);
  await forget(page);
  const times = await threadTimes(browser, () => dragAll(2));
  const { length } = (await read(page)).stands;
  const each = Object.entries(times).map(([thread, ms]) => `${thread} ${digits(ms / length)}`);
  console.log(`  processor time of a picture by thread, ms: ${each.join(', ')}`);
}

function spread(ms: readonly number[]): string {
  const p95 = quantile(ms, 0.95);
  return `median ${digits(median(ms))} ms, 95th percentile ${digits(p95)} (budget ${BUDGET_MS}: ${p95 < BUDGET_MS ? 'met' : 'missed'})`;
}

function forget(page: Page): Promise<unknown> {
  return page.evaluate('performance.clearMeasures(); window.painted.length = 0');
}

async function read(page: Page): Promise<{ readonly stands: readonly number[]; readonly painted: readonly number[] }> {
  const stands = await page.evaluate(() => performance.getEntriesByName('acid-day redraw').map(({ duration }) => duration));
  return { stands, painted: await page.evaluate<number[]>('window.painted') };
}

/** There and back, so that every drag begins where the one before it ended. */
async function drag(page: Page, event: string, round: number): Promise<void> {
  const box = await page.locator(`[data-event="${event}"] .event-mark`).boundingBox();
  if (!box) throw new Error('no mark on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= MOVES; i += 1) {
    await page.mouse.move(x + (round % 2 === 0 ? 1 : -1) * i * STEP_PX, y);
    await page.waitForTimeout(BETWEEN_MOVES_MS);
  }
  await page.mouse.up();
}
