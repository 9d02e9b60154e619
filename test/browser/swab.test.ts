import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { expectNoBarriersInState } from './expectNoBarriers.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';
import { type Hands, handsOn } from './visitKeys.ts';

const step = (page: Page, name: string) => page.locator(`[data-step="${name}"]`).waitFor();
const savedState = (page: Page) => page.locator('[data-saved]');
/** The count-down of the demonstration's meter, product.md. */
const COUNT_DOWN_MS = 25_000;

const isSaved = (page: Page) => expect.poll(() => savedState(page).textContent()).toMatch(/^saved/);

/** Moves the page's clock on, once nothing is on its way: a request would run out of time as well. */
async function passTime(page: Page, ms: number): Promise<void> {
  await isSaved(page);
  await page.clock.fastForward(ms);
}

/** Waits for each step before the key that answers it, as a person does. */
async function keyThrough(page: Page, hands: Hands, way: readonly (readonly [step: string, key: string])[]): Promise<void> {
  for (const [name, key] of way) {
    await step(page, name);
    await hands.press(key);
  }
}

const TO_START = [
  ['before-cleaning', 'y'],
  ['since', 'y'],
  ['taken-by', '1'],
  ['site', 'y'],
  ['start', 's'],
] as const;

async function openSwabOf(page: Page, server: RunningServer, name: string): Promise<string> {
  await signIn(page, server);
  await openVisitOf(page, name);
  const visit = page.url();
  await page.keyboard.press('2');
  await page.keyboard.press('t');
  await page.locator('[data-step]').waitFor();
  expect(page.url()).toBe(`${visit}/swab`);
  return visit;
}

/** Everything the count-down says to a screen reader from now on. */
async function recordCountDown(page: Page): Promise<() => Promise<readonly string[]>> {
  await page.locator('[data-count-down]').evaluate((element) => {
    const heard: string[] = [];
    new MutationObserver(() => heard.push(element.textContent ?? '')).observe(element, {
      childList: true,
      characterData: true,
      subtree: true,
    });
    Object.assign(window, { heard });
  });
  return () => page.evaluate(() => (window as unknown as { heard: string[] }).heard.filter(Boolean));
}

demoTest('a swab by keys alone, with the count-down of the meter, and the visit has it', async ({ page, server }) => {
  await page.clock.install();
  await openSwabOf(page, server, 'Henrik');
  const hands = handsOn(page);
  await keyThrough(page, hands, TO_START);
  await step(page, 'count-down');
  const heard = await recordCountDown(page);
  await passTime(page, COUNT_DOWN_MS - 9_500);
  await expect.poll(() => page.locator('.swab-seconds').innerText()).toMatch(/^(10|9)\s*s$/);
  expect(await page.getByRole('textbox').count()).toBe(0);
  await passTime(page, 9_500);
  await step(page, 'number');
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
  expect(await heard()).toEqual(['10 seconds left.', 'Done. Type the number on the meter.']);

  await hands.type('60001');
  await hands.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'above the highest reading of this meter, 60,000' }).waitFor();
  for (let n = 0; n < 5; n += 1) await hands.press('Backspace');
  const wrong = hands.keys();
  await hands.type('5150');
  await hands.press('Enter');
  await step(page, 'read');
  await page.getByText(/^5,150 RLU\. Too close to call\./).waitFor();
  expect(await page.locator('.swab-step').innerText()).toMatch(/Activated at \d\d:\d\d:\d\d, read at \d\d:\d\d:\d\d: \d+ seconds\./);
  await hands.press('v');
  await page.getByRole('region', { name: 'Swab' }).getByText('5,150 RLU. Too close to call.').waitFor();
  const keys = hands.keys() - wrong + TO_START.length;
  console.log(`keys from the first question to the visit with its reading: ${keys}`);
  // Five steps, four digits, Enter, and the way back.
  expect(keys).toBe(11);

  await page.reload();
  const region = page.getByRole('region', { name: 'Swab' });
  await region.getByText(/taken by Ines Marrow, Demo meter A, lot Birch, before cleaning, read \d+ seconds after activation/).waitFor();
  await region.getByRole('button', { name: 'why: this reading' }).click();
  await region.getByText(/^read \d+ seconds after activation$/).waitFor();
});

demoTest('a clock set back during the count-down: the time is not known, and the number is taken', async ({ page, server }) => {
  await page.clock.install();
  await openSwabOf(page, server, 'Soren');
  await keyThrough(page, handsOn(page), TO_START);
  await step(page, 'count-down');
  await isSaved(page);
  await page.clock.setSystemTime(Date.now() - 3_600_000);
  await passTime(page, COUNT_DOWN_MS);
  await step(page, 'number');
  await page.keyboard.type('<40');
  await page.keyboard.press('Enter');
  await step(page, 'read');
  await page.getByText('Time from activation to reading not known: the clock was set back.').waitFor();
  expect(await page.getByRole('main').innerText()).not.toMatch(/-\d+ (second|minute)/);
});

demoTest('no swab today: one key and the reason, undone by one, and the visit closes without a reading', async ({ page, server }) => {
  const visit = await openSwabOf(page, server, 'Petra');
  const hands = handsOn(page);
  await hands.press('w');
  await hands.press('1');
  await step(page, 'not-taken');
  expect(hands.keys()).toBe(2);
  expect(await page.locator('.swab-step').innerText()).toMatch(/Because: declined\.\s+The visit is complete without a reading\./);
  await hands.press('z');
  await step(page, 'choose-reason');
  await hands.press('0');
  await step(page, 'type-note');
  await hands.type('fell asleep');
  await hands.press('Enter');
  await step(page, 'not-taken');
  await hands.press('v');
  await page.getByText('No swab today: another reason.').waitFor();
  await page.getByText(/Noted: fell asleep\./).waitFor();
  for (const key of ['7', 'z']) await page.keyboard.press(key);
  await page.getByText(/· closed/).waitFor();

  await page.goto(`${visit}/swab`);
  await step(page, 'not-taken');
  await page.keyboard.press('z');
  expect(await page.getByRole('button', { name: /Undo/ }).count()).toBe(0);
  await step(page, 'not-taken');
});

demoTest('a second swab within 24 hours is not begun, and the page says so first', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Grete');
  for (const key of ['2', 'r', ...'900', 'Enter', 'u', '7', 'z']) await page.keyboard.press(key);
  await page.getByText(/· closed/).waitFor();
  await page.goto(server.url);
  await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
  await openVisitOf(page, 'Grete');
  await page.goto(`${page.url()}/swab`);
  await step(page, 'too-soon');
  const said = await page.locator('.swab-step').innerText();
  expect(said).toMatch(/The last swab was on .* at \d\d:\d\d\. At most one in 24 hours: not before/);
  for (const key of 'yy1ys') await page.keyboard.press(key);
  await step(page, 'too-soon');
  await page.keyboard.press('v');
  await page.getByRole('heading', { level: 1, name: /^Grete/ }).waitFor();
});

demoTest('cleaning has begun, or another site: no number is asked for', async ({ page, server }) => {
  await openSwabOf(page, server, 'Maud');
  await page.keyboard.press('n');
  await step(page, 'after-cleaning');
  for (const key of 'y1ys') await page.keyboard.press(key);
  await step(page, 'after-cleaning');
  await page.keyboard.press('z');
  await keyThrough(page, handsOn(page), [...TO_START.slice(0, 3), ['site', 'o']]);
  await step(page, 'other-site');
  expect(await page.getByRole('textbox').count()).toBe(0);
});

// A conflict makes the browser log a failed request, so these pages are the test's own.
demoTest('swab and visit open in two tabs: both readings stand there in words until one is chosen', async ({ browser, server, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const context = await browser.newContext();
  const [chair, tray] = [await context.newPage(), await context.newPage()];
  await signIn(chair, server);
  await openVisitOf(chair, 'Yusra');
  await tray.goto(`${chair.url()}/swab`);
  await keyThrough(tray, handsOn(tray), TO_START.slice(0, 4));
  await step(tray, 'start');
  await isSaved(tray);

  for (const key of ['2', 'r', ...'900', 'Enter']) await chair.keyboard.press(key);
  const conflict = chair.getByRole('alert').filter({ hasText: 'was saved elsewhere' });
  await conflict.waitFor();
  expect(await conflict.innerText()).toMatch(
    /The reading was saved elsewhere while you worked\. Yours: 900 RLU, lot Birch, taken by Ines Marrow, read at/,
  );
  expect(await conflict.innerText()).toContain(
    'Theirs: no number yet, before cleaning, 60 minutes or more since eating, brushing and rinsing, lot Birch, taken by Ines Marrow, lower front teeth, tongue side.',
  );
  await conflict.getByRole('button', { name: 'Keep yours' }).click();
  await isSaved(chair);

  await tray.keyboard.press('s');
  const other = tray.getByRole('alert').filter({ hasText: 'was saved elsewhere' });
  await other.waitFor();
  expect(await other.innerText()).toMatch(/Yours: no number yet, .*activated at .* Theirs: 900 RLU/s);
  await other.getByRole('button', { name: 'Keep theirs' }).click();
  await step(tray, 'read');
  await tray.getByText(/^900 RLU\. Below the cut-off\./).waitFor();
  await context.close();
});

demoTest('on paper there is the card for the wall, one page, and nobody is named', async ({ page, server }) => {
  await openSwabOf(page, server, 'Birgit');
  for (const format of ['A4', 'Letter'] as const) {
    const pdf = await page.pdf({ preferCSSPageSize: true, format });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  }
  await page.emulateMedia({ media: 'print' });
  await page.getByRole('heading', { name: 'How a swab is taken here' }).waitFor();
  const printed = await page.locator('body').innerText();
  expect(printed).toContain('Demo meter A: shows 40 to 60,000 RLU, counts down 25 s');
  expect(printed).toContain('Read within 3 minutes after the meter');
  expect(printed).not.toMatch(/Birgit/);
  await page.emulateMedia({ media: 'screen' });
  expect(await page.getByRole('heading', { name: 'How a swab is taken here' }).isVisible()).toBe(false);
});

/** Every kind of step, one after another. */
const WALK: readonly (readonly [step: string, key: string | null])[] = [
  ['before-cleaning', 'y'],
  ['since', 'n'],
  ['since-eating', '1'],
  ['since-brushing', 'd'],
  ['since-rinsing', '3'],
  ['taken-by', '1'],
  ['site', 'y'],
  ['start', 'w'],
  ['choose-reason', 'z'],
  ['start', 's'],
  ['count-down', null],
  ['number', null],
  ['read', '?'],
];

async function walk(page: Page, look: (step: string) => Promise<void>): Promise<void> {
  for (const [name, key] of WALK) {
    await step(page, name);
    await look(name);
    if (name === 'count-down') await passTime(page, COUNT_DOWN_MS);
    if (name === 'number') {
      await page.keyboard.type('5150');
      await page.keyboard.press('Enter');
    }
    if (key) await page.keyboard.press(key);
  }
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  await look('keys');
}

demoTest(
  'every step: axe finds nothing in light and dark, targets are large, and nothing scrolls sideways at 320 px',
  async ({ page, server }) => {
    await page.clock.install();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await openSwabOf(page, server, 'Alonso');
    await walk(page, async (step) => {
      await page.setViewportSize({ width: 1024, height: 768 });
      await expectNoBarriersInState(page, step);
      await page.setViewportSize({ width: 320, height: 640 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('.swab-step button:not(.why)')]
          .filter((b) => b.getBoundingClientRect().height < 56)
          .map((b) => b.outerHTML),
      );
      expect(small).toEqual([]);
    });
  },
);
