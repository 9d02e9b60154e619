import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { expectNoBarriersInState } from './expectNoBarriers.ts';
import { watchProblems } from './openBrowser.ts';
import { signIn } from './pageSteps.ts';

/** The browser logs a request that the server refuses, and two are refused on purpose here. Anything else fails the test as ever. */
const refusalTest = demoTest.extend<{ readonly refusedPage: Page }>({
  refusedPage: async ({ browser, skip }, use) => {
    if (!browser) return skip('Chromium is not installed');
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 860 } })).newPage();
    const problems = await watchProblems(page);
    await use(page);
    await page.context().close();
    expect(problems.filter((problem) => !/Failed to load resource: .* status of (409|422)/.test(problem))).toEqual([]);
  },
});

/** By keys alone: Tab until the control with this name has the focus. */
async function tabTo(page: Page, name: RegExp, most = 80): Promise<void> {
  for (let i = 0; i < most; i += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const e = document.activeElement as (HTMLElement & { labels?: NodeListOf<HTMLElement> | null }) | null;
      return e?.labels?.[0]?.textContent ?? e?.textContent ?? '';
    });
    if (name.test(at)) return;
  }
  throw new Error(`no way by Tab to ${name}`);
}

const type = (page: Page, text: string) => page.keyboard.type(text);

async function addPerson(page: Page, name: string, birthday: string): Promise<void> {
  await page.getByRole('searchbox', { name: 'Name' }).fill(name);
  await page.keyboard.press('Enter');
  await page.getByLabel(/^Birthday of/).fill(birthday);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Safety check' }).waitFor();
}

async function checkLooks(page: Page, name: string): Promise<void> {
  await expectNoBarriersInState(page, name);
  await page.setViewportSize({ width: 320, height: 640 });
  expect([name, await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)]).toEqual([name, false]);
  await page.setViewportSize({ width: 1280, height: 860 });
}

refusalTest(
  'the page of a person is filled in by keys, shown to others with both values, and keeps what was before',
  { timeout: 180_000 },
  async ({ refusedPage: page, server }) => {
    await signIn(page, server);
    await page.goto(`${server.url}/people`);
    await addPerson(page, "Siobhán O'Dwyer-محمد", '20120506');
    await page.keyboard.press('Escape');
    await page.keyboard.press(';');
    await page.getByRole('heading', { level: 1, name: /O'Dwyer/ }).waitFor();
    await page.getByRole('button', { name: /^Change/ }).focus();
    await page.keyboard.press('Enter');
    await checkLooks(page, 'form');
    await page.getByRole('textbox', { name: 'Chart number' }).focus();
    await type(page, '1002');
    await tabTo(page, /^not asked/);
    await tabTo(page, /Add a guardian/);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Shift+Tab');
    await tabTo(page, /Add a guardian/);
    const guardian = page.getByRole('group', { name: 'Guardian 1' });
    await guardian.getByRole('textbox', { name: 'Name' }).focus();
    await type(page, 'Mai Tran');
    await page.keyboard.press('Tab');
    await type(page, 'mother');
    await guardian.getByRole('radio', { name: 'yes' }).focus();
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Add a home' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('group', { name: 'Home 1' }).getByRole('textbox', { name: 'Name' }).focus();
    await type(page, 'with her father');
    const care = page.getByRole('group', { name: 'Care', exact: true });
    await care.getByRole('radio', { name: 'yes' }).focus();
    await page.keyboard.press('Space');
    // A permission without a name is nobody's.
    await page.getByRole('button', { name: 'Save' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('Not saved yet: one line needs a look.').waitFor();
    expect(await care.getByRole('textbox', { name: 'Said by' }).evaluate((e) => e === document.activeElement)).toBe(true);
    await type(page, 'Mai Tran');
    await page.keyboard.press('Enter');
    await page.getByText('Saved.').waitFor();
    const main = page.getByRole('main');
    expect(await main.innerText()).toMatch(/Mai Tran, mother, phone not asked, may say yes to care/);
    expect(await main.innerText()).toMatch(/Messages\s+not asked/);
    expect(await main.innerText()).toMatch(/Care\s+given, said by \u2068Mai Tran\u2069 on /);
    await checkLooks(page, 'person');

    // A new name needs a reason; meanwhile somebody else saves: both values stand there.
    await page.getByRole('button', { name: /^Change/ }).click();
    await page.getByRole('textbox', { name: 'Name', exact: true }).first().fill("Siobhán O'Dwyer");
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('A changed name or birthday needs a reason.').waitFor();
    await page.getByRole('textbox', { name: 'Why the name' }).fill('mistyped');
    const id = page.url().split('/').at(-1) ?? '';
    await page.evaluate(async (personId) => {
      const { details, version } = await (await fetch(`/api/people/${personId}/details`)).json();
      const body = JSON.stringify({ details: { ...details, chartNumber: '2002' }, version });
      await fetch(`/api/people/${personId}/details`, { method: 'PUT', headers: { 'content-type': 'application/json' }, body });
    }, id);
    const conflict = page.getByRole('table', { name: 'Theirs and yours' });
    await page.getByRole('button', { name: 'Save' }).click();
    await conflict.waitFor();
    expect(await conflict.innerText()).toMatch(/Chart number\s+2002\s+1002/);
    await page.getByRole('button', { name: 'Save mine in its place' }).click();
    await page.getByText('Saved.').waitFor();
    const history = page.getByRole('region', { name: 'History' });
    expect(await history.innerText()).toMatch(/changed, because mistyped/);
    expect(await history.innerText()).toMatch(/Chart number: was 2002, is now 1002/);
  },
);

refusalTest(
  'two charts of one person: side by side, merged with a reason, found by either name, and taken apart again',
  { timeout: 180_000 },
  async ({ refusedPage: page, server }) => {
    await signIn(page, server);
    for (const [name, birthday] of [
      ['Wilma Quist', '19720101'],
      ['Vilma Kvist', '19720101'],
    ] as const) {
      await page.goto(`${server.url}/people`);
      await addPerson(page, name, birthday);
    }
    // Both have an open visit now, so the one is taken first that has none.
    await page.keyboard.press('Escape');
    await page.keyboard.press(';');
    await page.getByRole('heading', { level: 1, name: /Vilma Kvist/ }).waitFor();
    const kept = page.url();
    const merge = async () => {
      await page.getByRole('button', { name: 'Merge with another chart' }).focus();
      await page.keyboard.press('Enter');
      await type(page, 'Wilma');
      await tabTo(page, /^Wilma Quist, born/);
      await page.keyboard.press('Enter');
      const table = page.getByRole('table', { name: 'Both charts' });
      await table.waitFor();
      expect(await table.innerText()).toMatch(/Name\s+Vilma Kvist\s+Wilma Quist/);
      await tabTo(page, /this chart, Vilma Kvist/);
      await page.keyboard.press('Space');
      await tabTo(page, /Why they are one person/);
      await type(page, 'entered twice');
      await page.keyboard.press('Enter');
    };
    await merge();
    await page.getByText('Both charts have an open visit. Close one of them first.').waitFor();
    await checkLooks(page, 'merge');
    await page.getByRole('button', { name: 'Leave without saving' }).click();
    const other = await page.evaluate(async () => {
      const { people } = await (await fetch('/api/people')).json();
      const wilma = people.find((p: { name: string }) => p.name === 'Wilma Quist');
      await fetch(`/api/visits/${wilma.openVisitId}/close`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: '{}',
      });
      return wilma.id as string;
    });
    await merge();
    await page.getByText(/Wilma Quist, born 1 January 1972, 1 visit/).waitFor();
    await checkLooks(page, 'merged');

    await page.goto(`${server.url}/people/${other}`);
    await page.getByText(/The chart of Wilma Quist is read as a part of this one/).waitFor();
    await page.goto(`${server.url}/people`);
    await page.getByRole('searchbox', { name: 'Name' }).fill('Quist');
    expect(await page.locator('tbody tr').allInnerTexts()).toEqual([expect.stringContaining('Vilma Kvist')]);
    await page.goto(`${server.url}/over-time/${other}`);
    await page.getByRole('heading', { level: 1, name: /Vilma Kvist/ }).waitFor();
    await page.getByText('1 closed visit').waitFor();

    await page.goto(kept);
    await page.getByRole('button', { name: 'undo Wilma Quist' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('What was written since the merge stays with this chart').waitFor();
    await type(page, 'they are twins');
    await page.keyboard.press('Enter');
    await page.getByText('a merge was undone, because they are twins').waitFor();
    await page.goto(`${server.url}/people/${other}`);
    await page.getByRole('heading', { level: 1, name: /Wilma Quist/ }).waitFor();
  },
);
