import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { expectAccessible } from './expectAccessible.ts';
import { ownPracticeTest } from './ownPractice.ts';
import { signIn } from './pageSteps.ts';

const says = (page: Page) => page.getByRole('region', { name: 'What the record says' });
const CAUTION =
  /^Published evidence that a swab reading goes with later decay is thin\..*they do not show what a reading means for one person\.$/;

/** From the list of studies, by its link; the keyboard alone. */
async function openByKeys(page: Page, url: string): Promise<void> {
  await page.goto(`${url}/checks/studies`);
  await page.getByRole('link', { name: 'Do readings go with new lesions here?' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Readings and new lesions' }).waitFor();
  await says(page).waitFor();
}

demoTest(
  'readings beside new lesions: the answer, the caution before the figures, and every limit as a table',
  async ({ page, server }) => {
    await signIn(page, server);
    await openByKeys(page, server.url);
    expect(await page.getByRole('link', { name: 'Swab checks' }).getAttribute('aria-current')).toBe('page');

    const [groups, caution, answer, chance, present, best] = await says(page).locator('> p').allInnerTexts();
    expect(groups).toMatch(/^\d+ people with a new lesion, \d+ without\.$/);
    expect(caution).toMatch(CAUTION);
    expect(answer).toMatch(/^In this practice readings (told|did not tell) the two apart better than chance\.$/);
    expect(chance).toMatch(/\(95 % interval \d+ to \d+\); chance alone gives 50\.$/);
    expect(present).toMatch(/^At the present cut-off of 4,200 RLU/);
    expect(best).toContain("The meter's cut-off stays as its instructions give it.");
    await says(page)
      .getByText(/people not counted, since nobody looked at all their teeth/)
      .waitFor();

    // The picture says how many limits it has, and the table has a row for each, from nobody to everybody.
    const limits = Number(/^Curve over (\d+) limits/.exec((await page.getByRole('img').getAttribute('aria-label')) ?? '')?.[1]);
    await page.getByText('Show as table').focus();
    await page.keyboard.press('Enter');
    const rows = page.getByRole('table', { name: 'Every limit' }).locator('tbody tr');
    expect(await rows.count()).toBe(limits);
    expect(await rows.first().innerText()).toMatch(/above all\s+0 %\s+100 %/);
    expect(await rows.last().innerText()).toMatch(/RLU\s+100 %\s+0 %/);
    await says(page)
      .getByRole('button', { name: /^sources/ })
      .click();
    await says(page).getByText('ATP against counts of bacteria, not against decay, in 38 adults').waitFor();
    await expectAccessible(page);
  },
);

demoTest('a longer time, by one key: too few without, no figure, and how people come to count', async ({ page, server }) => {
  await signIn(page, server);
  await openByKeys(page, server.url);
  await page.getByRole('radio', { name: '12 months' }).focus();
  for (const months of [18, 24]) {
    await page.keyboard.press('ArrowDown');
    expect(await page.getByRole('radio', { name: `${months} months` }).isChecked()).toBe(true);
  }
  await says(page)
    .getByText(/Too few for a figure, which takes 10 of each: \d+ more without\.$/)
    .waitFor();
  await says(page)
    .getByText(/without when a closed visit after these 24 months had looked at all teeth/)
    .waitFor();
  await says(page).getByText(CAUTION).waitFor();
  expect(await page.getByRole('img').or(page.getByRole('table')).count()).toBe(0);
});

demoTest('on paper the table stands open, and is folded again afterwards', async ({ page, server }) => {
  await signIn(page, server);
  await openByKeys(page, server.url);
  const details = says(page).locator('details');
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  expect(await details.evaluate((one: HTMLDetailsElement) => one.open)).toBe(true);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  expect(await details.evaluate((one: HTMLDetailsElement) => one.open)).toBe(false);
});

ownPracticeTest('a practice that has just begun: nobody counts yet, and what it takes', async ({ page, server }) => {
  await page.goto(server.signInUrl);
  await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
  await openByKeys(page, server.url);
  expect(await says(page).locator('> p').allInnerTexts()).toEqual([
    '0 people with a new lesion, 0 without. Too few for a figure, which takes 10 of each: 10 more with a new lesion and 10 more without.',
    expect.stringMatching(/^Somebody counts with a new lesion when a closed visit within 12 months of the reading notes one/),
    expect.stringMatching(CAUTION),
    expect.stringMatching(/^0 people not counted/),
    'sources',
  ]);
  expect(await page.getByRole('img').or(page.getByRole('table')).count()).toBe(0);
  await expectAccessible(page);
});
