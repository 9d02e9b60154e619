import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { demoTest } from './demo.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';
import { answerQuestions, handsOn } from './visitKeys.ts';

async function signInAs(page: Page, server: RunningServer, name: string): Promise<void> {
  await page.goto(server.url);
  await page.getByRole('radio', { name: new RegExp(name) }).check();
  await page.getByLabel('Password').fill('demo');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
}

// The brief of the first page: a person is added in ten keys or fewer beyond the name.
demoTest('a new person: name, Enter, eight digits, Enter, and the visit is open', async ({ page, server }) => {
  await signIn(page, server);
  await page.keyboard.type('Nora Quist');
  const hands = handsOn(page);
  await hands.press('Enter');
  await hands.type('19840229');
  await hands.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Nora Quist, \d+/ }).waitFor();
  await page.getByText('first visit').waitFor();
  expect(hands.keys()).toBeLessThanOrEqual(10);
  // Nothing is known of a new person, and nothing reads as no.
  expect(await page.getByRole('button', { name: /^Snacks and sweet drinks/ }).innerText()).toContain('not asked');
  expect(await page.getByRole('region', { name: 'Level' }).innerText()).toMatch(/not excluded while \d+ things on this list are not known/);
});

demoTest('a birthday that is no day of the calendar is not taken', async ({ page, server }) => {
  await signIn(page, server);
  await page.keyboard.type('Nils Nobody');
  await page.keyboard.press('Enter');
  await page.keyboard.type('20230230');
  await page.keyboard.press('Enter');
  expect(await page.getByRole('alert').innerText()).toContain('no day of the calendar');
});

demoTest('lists: none with 0, else typed, ticked and left with Escape; the keys inside do not act outside', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Grete');
  const row = (name: RegExp) => page.getByRole('button', { name });
  await page.keyboard.press('a');
  await page.keyboard.press('Enter');
  await page.keyboard.type('diur');
  await page.getByRole('option', { name: 'Diuretic' }).waitFor();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect.poll(() => row(/^Medicines/).innerText()).toContain('Diuretic');
  // The next line that wants a key is open: allergies, answered by 0.
  await page.keyboard.press('0');
  await expect.poll(() => row(/^Allergies/).innerText()).toContain('none');
});

demoTest('a number beyond the meter is refused in its words, and a bound is taken', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Petra');
  for (const key of ['2', 'r']) await page.keyboard.press(key);
  await page.keyboard.type('60001');
  await page.keyboard.press('Enter');
  expect(await page.getByRole('alert').innerText()).toContain('above the highest reading of this meter, 60,000');
  await page.getByRole('textbox').fill('<40');
  await page.keyboard.press('Enter');
  await page
    .getByText(/^40 RLU or less\./)
    .first()
    .waitFor();
});

demoTest('a new finding, keyed step by step, moves the level; a changed level needs a reason', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Henrik');
  await answerQuestions(page, handsOn(page), ['safety', 'swab']);
  for (const key of ['4', '+', '1', '9']) await page.keyboard.press(key);
  expect(await page.getByRole('alert').innerText()).toContain('A tooth has two digits');
  for (const key of [...'13', '4', '1', '1']) await page.keyboard.press(key);
  await page.getByText('white spot, active').waitFor();
  await page.getByRole('img', { name: 'high, 3 of 4, proposed' }).waitFor();

  for (const key of ['5', 'g', '4', 'Enter']) await page.keyboard.press(key);
  expect(await page.getByRole('alert').innerText()).toBe('A reason is needed to change the level.');
  await page.keyboard.type('two new lesions in a year');
  await page.keyboard.press('Enter');
  await page.getByText(/^Extreme, confirmed by Ines Marrow, .*; changed from high, because two new lesions in a year\.$/).waitFor();
});

demoTest('private items are not on the page while the patient looks', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Inaya');
  await page.keyboard.press('=');
  await page.getByText('Pregnant or breast-feeding').waitFor();
  await page.getByRole('button', { name: 'Show patient' }).click();
  await page.getByRole('button', { name: 'Back to work' }).waitFor();
  // Names of rinses and varnishes say whether they hold alcohol.
  expect(await page.getByRole('main').innerText()).not.toMatch(
    /pregnan|breast|private matters|vomit|drug|(?<!no |and |with )alcohol|eating disorder/i,
  );
  await page.getByRole('button', { name: 'Back to work' }).click();
  await page.getByText('Pregnant or breast-feeding').waitFor();
});

demoTest(
  'only a dentist sees Sign; what is signed says by whom, and then stands on the leaflet',
  async ({ page, browser, server, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    await signIn(page, server);
    await openVisitOf(page, 'Maud');
    const hands = handsOn(page);
    await answerQuestions(page, hands, ['safety']);
    for (const key of ['4', '+', ...'13', '4', '1', '1', '5', 'c']) await page.keyboard.press(key);
    await page.getByText("waiting for Dr. Ahlgren's signature").first().waitFor();
    expect(await page.getByRole('button', { name: /^Sign for/ }).count()).toBe(0);
    const visit = page.url();
    await page.goto(`${visit}/leaflet`);
    const strong = /strong fluoride paste/i;
    expect(await page.getByRole('article').innerText()).not.toMatch(strong);

    const dentist = await (await browser.newContext()).newPage();
    await signInAs(dentist, server, 'Ahlgren');
    await dentist.goto(visit);
    await dentist
      .getByRole('button', { name: /^Sign for/ })
      .first()
      .waitFor();
    await dentist.keyboard.press('s');
    await dentist.getByText(/^signed by Dr. Ahlgren/).waitFor();
    await dentist.goto(`${visit}/leaflet`);
    await expect.poll(() => dentist.getByRole('article').innerText()).toMatch(strong);
    await dentist.context().close();
  },
);

demoTest('keys held with Ctrl do nothing, and single keys can be turned off', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Soren');
  await page.keyboard.press('Control+b');
  expect(await page.locator('.line.open').count()).toBe(0);
  await page.keyboard.press('b');
  await expect.poll(() => page.locator('.line.open').count()).toBe(1);
  await page.keyboard.press('Escape');
  await page.keyboard.press('?');
  await page.getByRole('checkbox', { name: /^Single keys/ }).uncheck();
  await page.getByRole('button', { name: 'Back to the visit' }).click();
  await page.keyboard.press('b');
  expect(await page.locator('.line.open').count()).toBe(0);
});

// product.md, budgets: from an answer to the redrawn summary under 50 ms. The median of ten, since other work shares the machine.
// The time is only told: the figure beside its budget is in docs/bench.md. What must hold is that the answer is drawn with its key.
demoTest('an answer is drawn with the key that gives it', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Birgit');
  await answerQuestions(page, handsOn(page), ['safety']);
  const { times, drawn } = await page.evaluate(async () => {
    const press = async (key: string) => {
      const began = performance.now();
      dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      await new Promise((resolve) => setTimeout(resolve));
      return performance.now() - began;
    };
    const pause = () => new Promise((resolve) => setTimeout(resolve, 30));
    const taken: number[] = [];
    const drawn: string[] = [];
    for (let i = 0; i < 10; i += 1) {
      await press('3');
      while (!document.querySelector('[data-scope="food"] .group-head h3:focus, [data-scope="food"] :focus')) await press('3');
      await press('a');
      taken.push(await press(i % 2 === 0 ? '6' : '1'));
      drawn.push(document.querySelector('[data-line="snacks_per_day"] .line-text')?.textContent ?? '');
      await pause();
    }
    return { times: taken.sort((a, b) => a - b), drawn };
  });
  console.log(`answer to redrawn summary: median ${times[5]?.toFixed(1)} ms, longest ${times[9]?.toFixed(1)} ms`);
  expect(drawn).toEqual(Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? '6 a day' : '1 a day')));
});

// product.md, budgets: at most 350 kB gzip of script before the first picture. The page names what it needs for that; every other screen
// is fetched after it.
test('the script before the first picture stays within its budget', () => {
  const page = readFileSync('dist/web/index.html', 'utf8');
  const scripts = [...page.matchAll(/(?:src|href)="(\/assets\/[^"]+\.js)"/g)].map(([, path]) => path ?? '');
  expect(scripts.length).toBeGreaterThan(0);
  const bytes = scripts.reduce((sum, path) => sum + gzipSync(readFileSync(`dist/web${path}`)).length, 0);
  console.log(`script before the first picture: ${Math.round(bytes / 1024)} kB gzip, ${scripts.length} files`);
  expect(bytes).toBeLessThanOrEqual(350 * 1024);
});
