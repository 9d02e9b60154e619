import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { VisitBundle } from '../../src/api/bundles.ts';
import { DEMO_CODE, DEMO_PASSWORD } from '../../src/content/demo/members.ts';
import { demoTest } from './demo.ts';
import { expectNoBarriersInState } from './expectNoBarriers.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';

const MINUTE = 60_000;
const hidden = (page: Page) => page.getByRole('dialog', { name: 'The screen is hidden' });
const whoDialog = (page: Page) => page.getByRole('dialog', { name: 'Who is here?' });

async function giveCode(page: Page, letter: string, code = DEMO_CODE): Promise<void> {
  if (letter !== '') await page.keyboard.press(letter);
  await page.keyboard.type(code);
  await page.keyboard.press('Enter');
}

/** What the server answers to this page's session. */
const ask = (page: Page, path: string) =>
  page.evaluate(async (at) => {
    const response = await fetch(at);
    return { status: response.status, body: await response.text() };
  }, path);

const whoAnswered = async (page: Page) => {
  const id = new URL(page.url()).pathname.split('/')[2];
  return (JSON.parse((await ask(page, `/api/visits/${id}`)).body) as VisitBundle).input.visit;
};

/** Everything a person or a screen reader could find of the page behind. */
const seen = async (page: Page, name: string) => ({
  inSight: await page.getByText(name).first().isVisible(),
  toScreenReaders: (await page.locator('body').ariaSnapshot()).includes(name),
});

async function openYusra(page: Page, server: RunningServer): Promise<void> {
  await signIn(page, server);
  await openVisitOf(page, 'Yusra');
}

demoTest(
  'change of member in the middle of an answer: nothing is lost, the page stays, and each name is right',
  async ({ page, server }) => {
    await openYusra(page, server);
    await page.keyboard.press('7');
    await page.keyboard.press('k');
    const keep = page.getByRole('textbox').first();
    await keep.waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('Brush after bre');
    await page.evaluate(() => scrollTo(0, 300));
    const scrolled = await page.evaluate(() => scrollY);
    await page.keyboard.press('Control+.');
    await whoDialog(page).waitFor();
    await giveCode(page, 't');
    await page.getByRole('button', { name: /^Tomas Quill/ }).waitFor();
    await whoDialog(page).waitFor({ state: 'detached' });
    expect(await page.evaluate(() => scrollY)).toBe(scrolled);
    // The hands go on where they were.
    await page.keyboard.type('akfast');
    await page.keyboard.press('Enter');
    await page
      .getByText(/^saved/)
      .first()
      .waitFor();
    await expect.poll(async () => (await whoAnswered(page)).agreed?.keep).toBe('Brush after breakfast');
  },
);

demoTest('what was typed before is saved under the member who typed it', async ({ page, server }) => {
  await openYusra(page, server);
  // The answer is on its way, slowly, while the member is changed.
  const bodies: { by: string | undefined; path: string }[] = [];
  await page.route('**/fields', async (route) => {
    bodies.push({ by: route.request().headers()['x-ebbline-member'], path: route.request().postDataJSON().path });
    await new Promise((resolve) => setTimeout(resolve, 700));
    await route.continue();
  });
  const ines = JSON.parse((await ask(page, '/api/session')).body).member.id;
  await page.keyboard.press('7');
  await page.keyboard.press('l');
  await page.keyboard.press('2');
  await page.keyboard.press('Control+.');
  await whoDialog(page).waitFor();
  await giveCode(page, 't');
  await page.getByRole('button', { name: /^Tomas Quill/ }).waitFor();
  expect(bodies).toEqual([{ by: ines, path: 'language' }]);
  expect((await whoAnswered(page)).language).toBe('es');
});

demoTest(
  'by key: nothing is in sight, for a screen reader or on paper; the server is silent; a reload changes nothing',
  async ({ page, server }) => {
    await openYusra(page, server);
    await page.keyboard.press('7');
    await page.keyboard.press('k');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('half a sen');
    await page.keyboard.press('Control+.');
    await whoDialog(page).waitFor();
    await page.keyboard.press('Control+.');
    await hidden(page).waitFor();
    await page.getByText('Everything that was entered is saved.').waitFor();
    expect(await seen(page, 'Yusra')).toEqual({ inSight: false, toScreenReaders: false });
    await page.emulateMedia({ media: 'print' });
    expect(await seen(page, 'Yusra')).toEqual({ inSight: false, toScreenReaders: false });
    await page.emulateMedia({ media: 'screen' });
    // Escape leads nowhere, not even twice.
    for (let i = 0; i < 3; i += 1) await page.keyboard.press('Escape');
    expect(await hidden(page).isVisible()).toBe(true);
    await giveCode(page, 'i');
    await hidden(page).waitFor({ state: 'detached' });
    await page.keyboard.type('tence');
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('half a sentence');
  },
);

// Chromium logs every refused request as an error, so these pages are not the watched one.
demoTest(
  'hidden, the session is answered nothing, a reload stays hidden, and five wrong codes shut the code',
  async ({ browser, server, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const page = await browser.newPage();
    await openYusra(page, server);
    const visit = new URL(page.url()).pathname;
    await page.getByRole('button', { name: 'hide the screen' }).click();
    await hidden(page).waitFor();
    await expect.poll(async () => (await ask(page, '/api/people')).status).toBe(423);
    expect((await ask(page, '/api/session')).body).not.toContain('Ines');
    expect((await ask(page, `/api${visit}`)).body).toContain('SESSION_HIDDEN');
    await page.reload();
    await hidden(page).waitFor();
    expect(await seen(page, 'Yusra')).toEqual({ inSight: false, toScreenReaders: false });
    for (let i = 0; i < 5; i += 1) {
      await giveCode(page, '', '9999');
      await expect.poll(() => page.getByLabel('Code', { exact: true }).inputValue()).toBe('');
      await page.getByText('do not go together').waitFor();
    }
    await giveCode(page, '');
    await page.getByText('do not go together').waitFor();
    expect(await hidden(page).isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Use the password' }).click();
    await page.keyboard.type(DEMO_PASSWORD);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^Yusra/ }).waitFor();
    await page.close();
  },
);

demoTest('by time, also when it was slept through: nothing behind gets the first key', async ({ browser, server, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.clock.install({ time: Date.now() });
  await openYusra(page, server);
  await page.clock.runFor(3 * MINUTE);
  await page.keyboard.press('7');
  await page.clock.runFor(4 * MINUTE);
  expect(await hidden(page).isVisible()).toBe(false);
  await page.clock.runFor(1.1 * MINUTE);
  await hidden(page).waitFor();
  await giveCode(page, '');
  await hidden(page).waitFor({ state: 'detached' });
  // A closed lid: time passes, no timer runs, and a key is the first thing that happens.
  await page.clock.setSystemTime(Date.now() + 60 * MINUTE);
  await page.keyboard.press('z');
  await hidden(page).waitFor();
  await page.clock.runFor(3_500);
  await giveCode(page, '');
  await hidden(page).waitFor({ state: 'detached' });
  expect((await page.getByRole('heading', { level: 1 }).textContent()) ?? '').toMatch(/^Yusra/);
  await expect.poll(async () => JSON.parse((await ask(page, `/api${new URL(page.url()).pathname}`)).body).state).toBe('open');
  await context.close();
});

demoTest(
  'typed while the server was away: hidden, it says so, and the fields wait for the member who typed them',
  async ({ browser, server, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const page = await browser.newPage();
    await openYusra(page, server);
    await page.route('**/fields', (route) => route.abort());
    await page.keyboard.press('7');
    await page.keyboard.press('l');
    await page.keyboard.press('1');
    await page.keyboard.press('Control+.');
    await page.keyboard.press('Control+.');
    await hidden(page).waitFor();
    await page.getByText('Not saved yet: screen hidden, 1 field.').waitFor();
    await expect.poll(async () => (await ask(page, '/api/people')).status, { timeout: 20_000 }).toBe(423);
    await page.unroute('**/fields');
    await giveCode(page, 't');
    await page.getByText('not saved yet: 1 field typed by another member').first().waitFor();
    await page.keyboard.press('Control+.');
    await giveCode(page, 'i');
    await page
      .getByText(/^saved/)
      .first()
      .waitFor();
    await expect.poll(async () => (await whoAnswered(page)).language).toBe('en');
    await page.close();
  },
);

demoTest('two tabs share the member: the other one follows, and nothing is done in the wrong name', async ({ browser, server, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const context = await browser.newContext();
  const [one, two] = [await context.newPage(), await context.newPage()];
  await openYusra(one, server);
  await two.goto(server.url);
  await two.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
  await one.keyboard.press('Control+.');
  await whoDialog(one).waitFor();
  await giveCode(one, 't');
  await two.getByRole('button', { name: /^Tomas Quill/ }).waitFor();
  await two.getByRole('button', { name: 'hide the screen' }).click();
  await hidden(one).waitFor();
  await context.close();
});

demoTest(
  'Who is here and the hidden screen: axe finds nothing in light and dark, nothing to scroll sideways at 320 px',
  async ({ page, server }) => {
    await openYusra(page, server);
    await page.keyboard.press('Control+.');
    await whoDialog(page).getByLabel('Code', { exact: true }).waitFor();
    await expectNoBarriersInState(page, 'who is here');
    await page.keyboard.press('Control+.');
    await hidden(page).getByLabel('Code', { exact: true }).waitFor();
    await expectNoBarriersInState(page, 'hidden');
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  },
);
