import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { expectAccessible } from './expectAccessible.ts';
import { LEAD, ownPracticeTest } from './ownPractice.ts';
import type { RunningServer } from './startServer.ts';
import { answerQuestions, handsOn } from './visitKeys.ts';

const PASSWORD = 'quiet tide 12';
const toDos = (page: Page) => page.getByRole('region', { name: 'Before the first visit' }).getByRole('listitem');

async function signInByPassword(page: Page, server: RunningServer): Promise<void> {
  await page.goto(server.url);
  await page.getByRole('radio', { name: LEAD }).check();
  await page.getByLabel('Password').fill(PASSWORD);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
}

interface Typed {
  readonly kind: string;
  readonly percent: string;
  readonly often?: string;
  readonly amount: string;
}

/** From the shelf, by its key; the names stay as suggested, and the pack holds none of the things on the list. */
async function addItem(page: Page, { kind, percent, often, amount }: Typed): Promise<void> {
  await page.keyboard.press('a');
  await page.getByRole('heading', { name: 'Add an item' }).waitFor();
  await page.getByLabel('Kind').selectOption(kind);
  await page.getByLabel('Fluoride compound').selectOption('NaF');
  await page.getByLabel('Strength on the label').fill(percent);
  if (often) await page.getByLabel('How often').fill(often);
  await page.getByLabel('How much, in words').fill(amount);
  await page.getByLabel('Checked on the pack').check();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Shelf' }).waitFor();
}

ownPracticeTest(
  'a new practice says where it is, its lot, shelf and team, and then proposes from its own shelf',
  async ({ page, server }) => {
    await page.goto(server.signInUrl);
    await toDos(page).nth(3).waitFor();
    expect(await toDos(page).count()).toBe(4);

    await page.getByRole('link', { name: 'Say where you work' }).click();
    await page.getByRole('button', { name: 'Change these settings' }).click();
    // The focus is in the form: the keys alone choose and save.
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.getByRole('radio', { name: 'United Kingdom' }).isChecked()).toBe(true);
    await page.keyboard.press('Enter');
    await page.getByText('Saved.').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Change these settings');
    expect(await page.locator('#settings').innerText()).toContain('United Kingdom');

    await page.getByRole('link', { name: 'Open the page of the practice' }).click();
    await page.getByRole('button', { name: 'Add a lot' }).click();
    await page.keyboard.type('Box 7');
    await page.keyboard.press('Tab');
    await page.keyboard.type('20991301');
    await page.keyboard.press('Enter');
    await page.getByText('This is no day of the calendar').waitFor();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('20990131');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /Box 7 31 January 2099 in date/ }).waitFor();
    await page.getByRole('button', { name: 'Add a lot' }).click();
    await page.keyboard.type('Box 1');
    await page.keyboard.press('Tab');
    await page.keyboard.type('20200131');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /Box 1 31 January 2020 expired/ }).waitFor();
    // A lot that is changed keeps the focus in its line.
    await page.getByRole('button', { name: 'change Box 1' }).click();
    await page.getByLabel('Last day it may be used').fill('20200229');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /Box 1 29 February 2020 expired/ }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('change Box 1');

    await page.getByRole('button', { name: 'Add a member' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Bo Example');
    await page.getByLabel(/^dentist/).check();
    await page.getByLabel('First password').fill('1234567');
    await page.keyboard.press('Enter');
    await page.getByText('At least 8 characters are needed.').waitFor();
    await page.getByLabel('First password').fill('12345678');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /Bo Example dentist not trained set/ }).waitFor();

    await page.getByRole('button', { name: `set a password for ${LEAD}` }).click();
    await page.keyboard.type(PASSWORD);
    await page.keyboard.press('Tab');
    await page.keyboard.type(PASSWORD);
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: new RegExp(`${LEAD} lead, hygienist trained set`) }).waitFor();

    await page.goto(`${server.url}/shelf`);
    await page.getByText('Nothing is on the shelf yet').waitFor();
    await addItem(page, { kind: 'F_PASTE_STD', percent: '0.32', often: '2', amount: 'a ribbon' });
    await page.getByRole('row', { name: /Paste, sodium fluoride 0\.32 % \(1,448 ppm F\)/ }).waitFor();
    await addItem(page, { kind: 'F_VARNISH', percent: '5', amount: 'a thin coat' });
    await page.getByRole('row', { name: /Varnish, sodium fluoride 5 %/ }).waitFor();
    // The focus stands on the item that was saved.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/^change Varnish/);

    await page.goto(server.url);
    await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
    await expect.poll(() => toDos(page).count()).toBe(0);
    await page.getByRole('combobox', { name: 'Name, or time and name' }).fill('Cy Example');
    await page.keyboard.press('Enter');
    await page.keyboard.type('19800229');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^Cy Example/ }).waitFor();
    const hands = handsOn(page);
    await answerQuestions(page, hands, ['safety']);
    const plan = page.getByRole('region', { name: 'Plan' });
    await plan.getByText('Paste, sodium fluoride 0.32 % (1,448 ppm F), twice a day').waitFor();
  },
);

interface Screen {
  readonly name: string;
  readonly open: (page: Page, server: RunningServer) => Promise<void>;
}

/** Every new page with its forms open, and once with what is missing said. */
const screens: readonly Screen[] = [
  {
    name: 'Practice, all forms open',
    open: async (page, server) => {
      await page.goto(`${server.url}/practice`);
      await page.getByRole('button', { name: 'Change Meter of the test' }).click();
      await page.getByRole('button', { name: 'Add a meter' }).click();
      await page.getByRole('button', { name: 'Add a lot' }).click();
      await page.getByRole('button', { name: `new password for ${LEAD}` }).click();
      await page.getByRole('button', { name: 'Add a member' }).click();
      await page.getByRole('button', { name: 'Add to the team' }).click();
      await page.getByText('Not saved yet: 3 lines need a look.').waitFor();
    },
  },
  {
    name: 'Practice',
    open: async (page, server) => {
      await page.goto(`${server.url}/practice`);
      await page.getByRole('heading', { name: 'Team' }).waitFor();
    },
  },
  {
    name: 'Add an item',
    open: async (page, server) => {
      await page.goto(`${server.url}/shelf/new`);
      await page.getByLabel('Kind').selectOption('CHX_RINSE');
      await page.getByLabel('Checked on the pack').check();
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      await page.getByText(/^Not saved yet/).waitFor();
    },
  },
  {
    name: 'Change an item',
    open: async (page, server) => {
      await page.goto(`${server.url}/shelf`);
      await page.getByRole('link', { name: /^change Paste/ }).click();
      await page.getByRole('heading', { name: /^Change: Paste/ }).waitFor();
      await page.getByLabel('Our name for it').fill('Another name');
    },
  },
  {
    name: 'Settings, being changed',
    open: async (page, server) => {
      await page.goto(`${server.url}/rules`);
      await page.getByRole('button', { name: 'Change these settings' }).click();
      for (const why of await page.getByRole('button', { name: /^sources:/ }).all()) await why.click();
    },
  },
];

for (const { name, open } of screens) {
  // One sign-in each: the server takes ten a minute. The page fixture fails the test on any policy violation or error.
  ownPracticeTest(`${name}: axe finds nothing in light and dark, and nothing to scroll sideways at 320 px`, async ({ page, server }) => {
    await signInByPassword(page, server);
    await open(page, server);
    await expectAccessible(page);
  });
}

// Chromium logs every refused request as an error, so these two pages are not the watched one.
ownPracticeTest(
  'what somebody else saved in between is shown beside what was typed, and neither is lost',
  async ({ browser, server, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const context = await browser.newContext();
    const [mine, theirs] = [await context.newPage(), await context.newPage()];
    await signInByPassword(mine, server);
    for (const page of [mine, theirs]) {
      await page.goto(`${server.url}/shelf`);
      await page.getByRole('link', { name: /^change Paste/ }).click();
      await page.getByRole('heading', { name: /^Change: Paste/ }).waitFor();
    }
    await theirs.getByLabel('Price of one pack').fill('3.10');
    await theirs.getByRole('button', { name: 'Save', exact: true }).click();
    await theirs.getByRole('heading', { name: 'Shelf' }).waitFor();
    await mine.getByLabel('Price of one pack').fill('3.20');
    await mine.getByRole('button', { name: 'Save', exact: true }).click();
    await mine.getByRole('row', { name: 'Price 3.10 3.20' }).waitFor();
    await mine.getByRole('button', { name: 'Save mine in its place' }).click();
    await mine.getByRole('heading', { name: 'Shelf' }).waitFor();
    await expect.poll(() => mine.getByLabel(/^Price of Paste/).inputValue()).toBe('3.20');
    await context.close();
  },
);

ownPracticeTest(
  "freeing an item from signature is a dentist's: the server's sentence is shown, and the form stays",
  async ({ browser, server, skip }) => {
    if (!browser) return skip('Chromium is not installed');
    const page = await browser.newPage();
    await signInByPassword(page, server);
    const release = async (to: string) => {
      await page.goto(`${server.url}/shelf`);
      await page.getByRole('link', { name: /^change Varnish/ }).click();
      await page.getByLabel('Released by').selectOption(to);
      await page.getByRole('button', { name: 'Save', exact: true }).click();
    };
    await release('dentist');
    await page.getByRole('row', { name: /Varnish.*dentist only/ }).waitFor();
    await release('anyone');
    await page.getByText(/^Not saved\. Only a dentist may release Varnish/).waitFor();
    expect(await page.getByLabel('Released by').inputValue()).toBe('anyone');
    await page.close();
  },
);
