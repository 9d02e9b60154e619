import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { DEMO_CODE, DEMO_PASSWORD } from '../../src/content/demo/members.ts';
import { demoTest } from './demo.ts';
import { expectAccessible } from './expectAccessible.ts';
import { become, openVisitOf, signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';
import { answerQuestions, handsOn } from './visitKeys.ts';

const DENTIST = 'd';
const HYGIENIST = 'i';
const queue = (page: Page) => page.getByRole('region', { name: 'Waiting for a signature' });
const rows = (page: Page) => queue(page).locator('[data-signing]');
const plan = (page: Page) => page.getByRole('region', { name: 'Plan' });

/** A visit with a cavity and a confirmed high level, so that strong paste waits. */
async function workThrough(page: Page, name: string): Promise<void> {
  await openVisitOf(page, name);
  const hands = handsOn(page);
  await answerQuestions(page, hands, ['safety', 'swab', 'food', 'home', 'health', 'look']);
  await hands.press('5');
  await hands.press('g');
  await hands.press('3');
  await hands.type('seen before');
  await hands.press('Enter');
  await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
}

const firstWaiting = (page: Page) =>
  plan(page)
    .getByText(/^waiting for/)
    .first();

demoTest(
  'the queue by keys alone: up and down, sign, undo, refuse with a reason, undo; the visit opens at the plan',
  async ({ page, server }) => {
    await signIn(page, server);
    await queue(page).getByText('Dr. Ahlgren can sign.').waitFor();
    await become(page, DENTIST);
    await queue(page)
      .getByRole('button', { name: /^Sign / })
      .first()
      .waitFor();
    const count = await rows(page).count();
    expect(count).toBeGreaterThan(1);
    await rows(page).first().locator('[data-row]').focus();
    await page.keyboard.press('ArrowDown');
    expect(await page.evaluate(() => document.activeElement?.closest('[data-signing]')?.getAttribute('data-signing'))).toBe('1');
    await page.keyboard.press('ArrowUp');

    await page.keyboard.press('s');
    await queue(page)
      .getByText(/: signed\.$/)
      .waitFor();
    await expect.poll(() => rows(page).count(), { timeout: 15_000 }).toBe(count - 1);
    await page.keyboard.press('u');
    await expect.poll(() => rows(page).count(), { timeout: 15_000 }).toBe(count);

    await page.keyboard.press('r');
    await page.keyboard.press('Enter');
    await queue(page).getByText('A reason is needed.').waitFor();
    await page.keyboard.type('kidneys first');
    await page.keyboard.press('Enter');
    await queue(page)
      .getByText(/: not released\.$/)
      .waitFor();
    await expect.poll(() => rows(page).count(), { timeout: 15_000 }).toBe(count - 1);
    await page.keyboard.press('u');
    await expect.poll(() => rows(page).count(), { timeout: 15_000 }).toBe(count);

    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Plan', exact: true }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('[data-scope]')?.getAttribute('data-scope'))).toBe('plan');
  },
);

demoTest('a member without the right sees how many wait and who could sign, and no button', async ({ page, server }) => {
  await signIn(page, server);
  await become(page, 't');
  await queue(page)
    .getByText(/^In the whole practice \d+ items? waits?, .*\. Dr\. Ahlgren can sign\.$/)
    .waitFor();
  expect(await rows(page).count()).toBe(0);
  expect(await queue(page).getByRole('button').count()).toBe(0);
});

demoTest(
  'on the plan: refused with its reason, not proposed again, taken back, signed, and named on the leaflet',
  async ({ page, server }) => {
    await signIn(page, server);
    await workThrough(page, 'Maud');
    await become(page, DENTIST);
    await firstWaiting(page).waitFor();
    const line = plan(page).locator('[data-line]', { hasText: 'waiting for' }).first();
    const id = await line.getAttribute('data-line');
    await line.locator('.plan-row').click();
    await page.keyboard.press('r');
    await page.keyboard.type('looked at first');
    await page.keyboard.press('Enter');
    await plan(page)
      .getByText(/not released by Dr\. Ahlgren, .*, because looked at first\./)
      .waitFor();
    expect(await plan(page).locator(`[data-line="${id}"]`).count()).toBe(0);
    await page.getByRole('button', { name: 'Show patient' }).click();
    expect(await plan(page).getByText('looked at first').count()).toBe(0);
    await page.getByRole('button', { name: 'Back to work' }).click();

    await plan(page).getByRole('button', { name: 'Take back the refusal' }).click();
    await firstWaiting(page).waitFor();
    await plan(page).locator('[data-line]', { hasText: 'waiting for' }).first().locator('.plan-row').click();
    await page.keyboard.press('s');
    await plan(page)
      .getByText(/^signed by Dr\. Ahlgren,/)
      .first()
      .waitFor();

    const visit = page.url();
    await page.goto(`${visit}/leaflet`);
    await page
      .getByRole('article')
      .getByText(/signed by Dr\. Ahlgren\./)
      .waitFor();
  },
);

demoTest(
  'a standing order: written by the dentist, signed on by the hygienist from the plan; name and date stand on plan, leaflet and prescription',
  async ({ page, server }) => {
    await signIn(page, server);
    await become(page, DENTIST);
    await page.goto(`${server.url}/practice`);
    await page.getByRole('button', { name: 'Write an order' }).click();
    await page.getByLabel('Name of the order').fill('Strong paste');
    for (const box of await page.getByRole('group', { name: 'Items' }).getByRole('checkbox').all()) await box.check();
    await page.getByRole('button', { name: 'Write and sign the order' }).click();
    await page.getByRole('row', { name: /^Strong paste.*until it is withdrawn/ }).waitFor();
    await become(page, HYGIENIST);
    await page.goto(server.url);
    await workThrough(page, 'Petra');
    await firstWaiting(page).waitFor();
    const line = plan(page).locator('[data-line]', { hasText: 'waiting for' }).first();
    await line.getByRole('button', { name: /Sign on the order "Strong paste" of/ }).waitFor();
    await line.locator('.plan-row').click();
    await page.keyboard.press('s');
    await plan(page)
      .getByText(/^signed by Ines Marrow, on the standing order "Strong paste" of .* by Dr\. Ahlgren/)
      .first()
      .waitFor();
    const visit = page.url();
    await page.goto(`${visit}/leaflet`);
    await page
      .getByRole('article')
      .getByText(/signed by Ines Marrow on the standing order "Strong paste" of/)
      .waitFor();
    await page.goto(`${visit}/prescriptions`);
    await page.getByText('It is not itself a prescription.').waitFor();
    const pdf = await page.pdf({ format: 'Letter', preferCSSPageSize: true });
    expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(1);

    await become(page, DENTIST);
    await page.goto(`${server.url}/practice`);
    await page.getByRole('button', { name: 'withdraw Strong paste' }).click();
    await page.getByRole('row', { name: /withdrawn by Dr\. Ahlgren/ }).waitFor();
  },
);

demoTest(
  'against a rule: only the dentist, only with a reason; who signed and why stand on the plan, who signed on the printed leaflet, and why not',
  async ({ page, server }) => {
    await signIn(page, server);
    await workThrough(page, 'Soren');
    // Asthma is told late: the label of the varnish names it, and a dentist may still decide.
    await page.keyboard.press('1');
    await page.keyboard.press('c');
    await page.locator('.picker input').fill('Asthma');
    await page.getByRole('option', { name: 'Asthma', exact: true }).click();
    await page.keyboard.press('Escape');
    await plan(page)
      .getByText(/^Not offered, because: .*asthma/)
      .waitFor();
    const against = plan(page).getByText('Sign against a rule');
    expect(await against.count()).toBe(0);

    await become(page, DENTIST);
    await against.click();
    const rule = plan(page).getByRole('listitem').filter({ hasText: 'rule C02 stops it' }).first();
    const item = ((await rule.textContent()) ?? '').split(': rule C02')[0] ?? '';
    await rule.getByRole('button', { name: /^sign against rule C02/ }).click();
    await page.keyboard.press('Enter');
    await plan(page).getByText('A reason is needed.').waitFor();
    expect(
      await plan(page)
        .getByText(/^signed by/)
        .count(),
    ).toBe(0);
    await page.keyboard.type('no attack for ten years');
    await page.keyboard.press('Enter');
    const line = plan(page).locator('[data-line]', { hasText: item });
    await line.getByText(/^signed by Dr\. Ahlgren, .*; against rule C02, because no attack for ten years$/).waitFor();
    await page.getByRole('button', { name: 'Show patient' }).click();
    await line.getByText(/^signed by Dr\. Ahlgren, [^;]*$/).waitFor();
    expect(await page.getByText(/ten years|C02/).count()).toBe(0);
    await page.getByRole('button', { name: 'Back to work' }).click();
    await page.emulateMedia({ media: 'print' });

    await page.goto(`${page.url()}/leaflet`);
    const leaflet = page.getByRole('article');
    await leaflet.getByText(/signed by Dr\. Ahlgren\./).waitFor();
  },
);

interface Screen {
  readonly name: string;
  readonly open: (page: Page, server: RunningServer) => Promise<void>;
}

const screens: readonly Screen[] = [
  {
    name: 'Queue, one being refused',
    open: async (page) => {
      await become(page, DENTIST);
      await rows(page).first().locator('[data-row]').focus();
      await page.keyboard.press('r');
      await queue(page).getByRole('textbox').waitFor();
    },
  },
  {
    name: 'Practice as the dentist, an order and a code being written',
    open: async (page, server) => {
      await become(page, DENTIST);
      await page.goto(`${server.url}/practice`);
      await page.getByRole('button', { name: 'Write an order' }).click();
      await page.getByRole('button', { name: /^new code/ }).click();
      await page.getByRole('button', { name: 'Set the code' }).click();
      await page.getByText('Your password is needed once.').waitFor();
    },
  },
  {
    name: 'Practice as the lead, roles and minutes being changed',
    open: async (page, server) => {
      await become(page, HYGIENIST);
      await page.goto(`${server.url}/practice`);
      await page.getByRole('button', { name: 'roles of Tomas Quill' }).click();
      await page.getByRole('button', { name: 'Change the minutes' }).click();
      await page.getByLabel('Hide after').fill('90');
      await page.getByRole('form', { name: 'Minutes until the screen hides' }).getByRole('button', { name: 'Save' }).click();
      await page.getByText('A whole number from 1 to 60.').waitFor();
    },
  },
  {
    name: 'Text for the prescription',
    open: async (page, server) => {
      await page.goto(server.url);
      await openVisitOf(page, 'Petra');
      await page.goto(`${page.url()}/prescriptions`);
      await page.getByText('It is not itself a prescription.').waitFor();
    },
  },
];

for (const { name, open } of screens) {
  demoTest(`${name}: axe finds nothing in light and dark, and nothing to scroll sideways at 320 px`, async ({ page, server }) => {
    await signIn(page, server);
    await open(page, server);
    await expectAccessible(page);
  });
}

demoTest('a lead sets the minutes and changes roles; a member sets a code; the last lead stays', async ({ browser, server, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const page = await browser.newPage();
  await signIn(page, server);
  await page.goto(`${server.url}/practice`);
  await page.getByRole('button', { name: /^new code/ }).click();
  await page.getByLabel('Your password').fill(DEMO_PASSWORD);
  await page.getByLabel('New code').fill('1234');
  await page.getByRole('button', { name: 'Set the code' }).click();
  await page.getByText(/digits in a row, are guessed first/).waitFor();
  await page.getByLabel('New code').fill(DEMO_CODE);
  await page.getByRole('button', { name: 'Set the code' }).click();
  await page.getByText('Your code is set.').waitFor();
  await page.getByRole('button', { name: 'roles of Ines Marrow' }).click();
  await page.getByRole('checkbox', { name: /^lead/ }).uncheck();
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText(/keeps at least one lead/).waitFor();
  await page.getByRole('checkbox', { name: /^lead/ }).check();
  await page.getByRole('checkbox', { name: /^dentist/ }).check();
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText(/Nobody gives herself or himself the role of a dentist/).waitFor();
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await page.getByRole('button', { name: 'Change the minutes' }).click();
  await page.getByLabel('Hide after').fill('7');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText(/hides 7 minutes after the last key, as this practice set it/).waitFor();
  await page.close();
});

demoTest("a dentist writes a protocol of the practice's own, retires it with a reason, and it stays", async ({ page, server }) => {
  await signIn(page, server);
  await become(page, DENTIST);
  await page.goto(`${server.url}/rules`);
  const own = page.getByRole('region', { name: 'Protocols of our own' });
  await own.getByText('There is none.').waitFor();
  await own.getByRole('button', { name: 'Write a protocol' }).click();
  await own.getByLabel('Name').fill('Rinse for very active plaque');
  await own.getByLabel('Strength at most').fill('0.5');
  await own.getByLabel('How often at most').fill('2');
  await own.getByLabel('How long at most').fill('84');
  await own.getByLabel('high', { exact: true }).check();
  await own.getByRole('button', { name: 'Write and sign the protocol' }).click();
  await own.getByText('The strength is above 0 and at most 0.25 %.').waitFor();
  await own.getByLabel('Strength at most').fill('0.2');
  await own.getByRole('button', { name: 'Write and sign the protocol' }).click();
  await own.getByText(/^Written and signed by Dr\. Ahlgren/).waitFor();
  await own.getByRole('button', { name: /^retire/ }).click();
  await own.getByLabel('Because').fill('stains');
  await own.getByRole('button', { name: 'Retire it' }).click();
  await own.getByText(/retired on .* by Dr\. Ahlgren, because stains/).waitFor();
});
