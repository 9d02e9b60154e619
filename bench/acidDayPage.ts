// A snack dragged along the day, in Chromium on the built pages: from the move of the hand to the new picture, an invented person, loopback only.
import { chromium, type Page } from 'playwright-core';
import { findChromium } from '../scripts/tools.mjs';
import { startDemo } from '../test/browser/demoTemplate.ts';
import { openVisitOf, signIn } from '../test/browser/pageSteps.ts';
import { digits, median, quantile } from './measure.ts';

const BUDGET_MS = 33;
const DRAGS = 6;
const MOVES = 25;
const STEP_PX = 5;
const BETWEEN_MOVES_MS = 50;
const WARM_AFTER_DRAGS = 2;

const executablePath = findChromium();
if (!executablePath) {
  console.log('SKIPPED: the acid day, because Chromium is not installed.');
} else {
  // Chromium's sandbox refuses to run as root.
  const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const browser = await chromium.launch({ executablePath, args: [...args, '--disable-gpu', '--disable-background-networking'] });
  const server = await startDemo();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
    await signIn(page, server);
    await openVisitOf(page, 'Maud');
    await page.keyboard.press('-');
    await page.getByText('No day is told yet').waitFor();
    await page.keyboard.press('3');
    await page.getByText('on the acid side').first().waitFor();
    for (let i = 0; i < WARM_AFTER_DRAGS; i += 1) await drag(page, i);
    await page.evaluate(() => performance.clearMeasures());
    for (let i = 0; i < DRAGS; i += 1) await drag(page, i);
    const ms = await page.evaluate(() => performance.getEntriesByName('acid-day redraw').map(({ duration }) => duration));
    const p95 = quantile(ms, 0.95);
    console.log(
      `a snack dragged, ${ms.length} pictures: median ${digits(median(ms))} ms, 95th percentile ${digits(p95)} (budget ${BUDGET_MS}: ${p95 < BUDGET_MS ? 'met' : 'missed'})`,
    );
  } finally {
    await browser.close();
    await server.stop();
  }
}

/** There and back, so that every drag begins where the one before it ended. */
async function drag(page: Page, round: number): Promise<void> {
  const marks = page.locator('[data-event] .event-mark');
  const box = await marks.nth(Math.floor((await marks.count()) / 2)).boundingBox();
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
