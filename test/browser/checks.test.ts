import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { expectNoBarriers } from './expectNoBarriers.ts';
import { openChecks, openVisitOf, signIn } from './pageSteps.ts';
import { handsOn } from './visitKeys.ts';

/** Types today's control by keys alone. */
async function takeControl(page: Page, rlu: string): Promise<void> {
  const before = await page.locator('[data-answer]').textContent();
  await page.keyboard.press('Escape');
  await page.locator('h1').click();
  const hands = handsOn(page);
  await hands.press('n');
  await hands.type(rlu);
  await hands.press('Enter');
  await expect.poll(() => page.locator('[data-answer]').textContent()).not.toBe(before);
}

/** The swab of the open visit: number, then how it was taken. */
async function readSwab(page: Page, rlu: string): Promise<void> {
  const hands = handsOn(page);
  await hands.press('2');
  await hands.press('r');
  await hands.type(rlu);
  await hands.press('Enter');
  await hands.press('u');
}

/** Closes the open visit as it stands. */
async function closeHere(page: Page): Promise<void> {
  // What is still on its way would find the visit closed.
  await expect.poll(() => page.locator('[data-saved]').textContent()).toMatch(/^saved/);
  const status = await page.evaluate(async () => {
    const headers = { 'content-type': 'application/json' };
    return (await fetch(`/api${location.pathname}/close`, { method: 'POST', headers, body: '{}' })).status;
  });
  expect(status).toBe(200);
}

const reading = (page: Page) => page.locator('.reading-words');

demoTest(
  'a control out of limits blocks readings on Visit; the override is recorded with its reason and stands on the reading',
  async ({ page, server }) => {
    await signIn(page, server);
    await openChecks(page, server.url);
    await takeControl(page, '5200');
    expect(await page.locator('[data-answer]').textContent()).toMatch(/^5,200 RLU: out of limits, control rule 2 of 6: one far too high/);
    const stopped = page.locator('[data-stopped]');
    // To go without swabs stands before the override.
    expect(await stopped.textContent()).toMatch(/^Run today without swabs\..*Let today's readings count all the same/s);

    await page.goto(server.url);
    await openVisitOf(page, 'Maud');
    const swab = page.getByRole('region', { name: 'Swab' });
    await swab.getByText(/^Run today without swabs: the last control of lot Birch was out of limits/).waitFor();
    await readSwab(page, '9000');
    await expect.poll(() => reading(page).textContent()).toMatch(/Not counted: the control of .* was out of limits \(control rule 2 of 6/);
    expect(await reading(page).textContent()).toContain('stays on the record and decides nothing');

    await openChecks(page, server.url);
    await page.getByRole('button', { name: "Let today's readings count all the same" }).click();
    await page.getByRole('button', { name: 'Let them count today' }).click();
    await page.getByText('A reason is needed.').waitFor();
    await page.getByRole('textbox', { name: 'Because' }).fill('Maud came from far');
    await page.keyboard.press('Enter');
    await stopped.getByText(/^Today's readings count all the same: Ines Marrow, .*: Maud came from far/).waitFor();

    await page.goto(server.url);
    await openVisitOf(page, 'Maud');
    await expect.poll(() => reading(page).textContent()).toMatch(/9,000 RLU\. Above the cut-off\./);
    expect(await reading(page).textContent()).toMatch(
      /Counted, with caution: .*Ines Marrow let readings count that day: Maud came from far/,
    );

    // A control in line ends it, with what was done in the same step.
    await openChecks(page, server.url);
    await page.getByRole('combobox', { name: 'What was done' }).selectOption('new-solution');
    await page.getByRole('textbox', { name: 'In a few words' }).fill('the old bottle stood open');
    await takeControl(page, '3000');
    expect(await page.locator('[data-answer]').textContent()).toMatch(/^3,000 RLU: in line\./);
    expect(await stopped.count()).toBe(0);
    await page.getByText(/^Stops of Demo meter A: 2 stops on record/).click();
    await page
      .getByText(/In line again .*3,000 RLU\. Resolved: a new bottle of the solution was opened: the old bottle stood open \(Ines Marrow/)
      .waitFor();
  },
);

demoTest('the assistant is told on the Swab page, and a control noted by mistake stays with its reason', async ({ page, server }) => {
  await signIn(page, server);
  await openChecks(page, server.url);
  await takeControl(page, '5300');
  await page.goto(server.url);
  await openVisitOf(page, 'Petra');
  await page.goto(`${page.url()}/swab`);
  await page.getByRole('heading', { level: 2, name: 'Run today without swabs.' }).waitFor();

  await openChecks(page, server.url);
  await page.getByRole('button', { name: /^noted by mistake 5,?300/ }).click();
  await page.getByRole('textbox', { name: 'Because' }).fill('the swab of a patient');
  await page.keyboard.press('Enter');
  await page.getByText('5,300 RLU: not counted, the swab of a patient.').waitFor();
  expect(await page.locator('[data-stopped]').count()).toBe(0);
});

demoTest('what cannot be a control is refused in words and stays in the field', async ({ page, server }) => {
  await signIn(page, server);
  await openChecks(page, server.url);
  const hands = handsOn(page);
  const field = page.getByRole('textbox', { name: /The control reads/ });
  await hands.press('n');
  for (const [typed, words] of [
    ['abc', 'A number is needed here.'],
    ['70000', 'above the highest reading of this meter'],
  ] as const) {
    await field.fill(typed);
    await hands.press('Enter');
    await page.getByRole('alert').filter({ hasText: words }).waitFor();
    expect(await field.inputValue()).toBe(typed);
  }
});

demoTest('a plan and a step of training are saved from the page', async ({ page, server }) => {
  await signIn(page, server);
  await openChecks(page, server.url);
  await page.getByRole('button', { name: 'Change the plan Demo meter A' }).click();
  await page.getByRole('radio', { name: 'every day on which people are swabbed' }).check();
  await page.getByRole('button', { name: 'Save' }).last().click();
  await page.getByText('Plan: a control every day, 6 control rules.').waitFor();

  await page.getByRole('button', { name: 'note a step of Wim Tansy' }).click();
  await page.getByRole('radio', { name: 'qualified by a lead' }).check();
  await page.getByRole('textbox', { name: 'Because' }).fill('two swabs along the path');
  await page.getByRole('textbox', { name: 'Looked at again by' }).fill('20271125');
  await page.keyboard.press('Enter');
  const wim = page.getByRole('row', { name: /Wim Tansy/ });
  await wim.getByText('takes swabs').waitFor();
  await wim.getByText('25 November 2027').waitFor();
});

demoTest('no barrier to reading or keys, light and dark, wide and on a phone', async ({ page, server }) => {
  await signIn(page, server);
  for (const width of [1280, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await openChecks(page, server.url);
    await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });
    // Each colour once, and the narrow page in one of them: a table of a hundred controls takes its time.
    await page.emulateMedia({ colorScheme: width === 320 ? 'dark' : 'light' });
    await expectNoBarriers(page, `${width} px`);
    const isWider = await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
    expect({ width, isWider }).toEqual({ width, isWider: false });
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.keyboard.press('5');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Hands');
  await page.keyboard.press('?');
  await page.getByRole('dialog').getByText("the field for today's control; Enter saves it").waitFor();
});

demoTest('a stop that ended without a word asks for one, and the readings before it are put under question', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Henrik');
  await readSwab(page, '9000');
  await expect.poll(() => reading(page).textContent()).toMatch(/9,000 RLU\. Above the cut-off\./);
  await closeHere(page);
  const visit = page.url();

  await openChecks(page, server.url);
  await takeControl(page, '5200');
  const before = page.locator('[data-before]').first();
  await before.getByText(/since the last control in line/).waitFor();
  await before.locator('summary').click();
  await before.getByRole('row', { name: /Henrik.*9,000 RLU.*counts/ }).waitFor();
  await before.getByRole('button', { name: 'Put them all under question' }).click();
  await before.getByRole('textbox', { name: 'Because' }).fill('the solution was old');
  await page.keyboard.press('Enter');
  await before.getByText(/Under question, and in no decision: Ines Marrow, .*: the solution was old\./).waitFor();

  await takeControl(page, '3000');
  await page.getByText('In line again; what was done is not recorded.').waitFor();
  await page.getByRole('button', { name: 'Note what was done' }).click();
  await page.getByText('What was done: choose one of the list.').waitFor();
  await page.getByRole('combobox', { name: 'What was done' }).selectOption('meter-cleaned');
  await page.getByRole('button', { name: 'Note what was done' }).click();
  await expect.poll(() => page.locator('[data-stopped]').count()).toBe(0);

  // What was told stays, with what holds now beside it.
  await page.goto(visit);
  await page.getByText(/· closed/).waitFor();
  expect(await reading(page).textContent()).toMatch(/9,000 RLU\. Above the cut-off\./);
  await page
    .getByText(/^Since then not counted: a later control was out of limits, and Ines Marrow put this reading under question/)
    .waitFor();
});

demoTest('a control noted later carries its own time; one still to come is refused by name', async ({ page, server }) => {
  await signIn(page, server);
  await openChecks(page, server.url);
  const when = page.getByRole('textbox', { name: 'Taken at' });
  await page.getByRole('textbox', { name: /The control reads/ }).fill('3100');
  await when.fill('20991231 0815');
  await page.keyboard.press('Enter');
  await page.getByText('Taken at: 08:15 on 31 December 2099 is still to come.').waitFor();
  expect(await page.getByRole('textbox', { name: /The control reads/ }).inputValue()).toBe('3100');
  await when.fill('20260302 0717');
  await page.keyboard.press('Enter');
  await expect.poll(() => when.inputValue()).toBe('');
  await page.getByRole('region', { name: 'Controls over time' }).getByText('Show as table').click();
  await page.getByRole('row', { name: /2 March 2026.*3,100/ }).waitFor();
});

demoTest(
  'a target set by hand holds from then on: the next control stands on a band of its own, the earlier ones on theirs',
  async ({ page, server }) => {
    await signIn(page, server);
    await openChecks(page, server.url);
    const bands = page.locator('.control-band');
    const before = await bands.count();
    const birch = page.getByRole('region', { name: 'Lots' }).getByRole('row', { name: /^Birch/ });
    await birch.getByRole('button', { name: 'Set by hand the target of lot Birch on Demo meter A' }).click();
    await birch.getByRole('textbox', { name: 'Mean of the controls' }).fill('3600');
    await page.keyboard.press('Enter');
    await birch.getByText('A reason is needed.').waitFor();
    await birch.getByRole('textbox', { name: 'Because' }).fill('a bottle of another strength');
    await page.keyboard.press('Enter');
    await birch.getByText(/3,600 RLU, spread .*, set by Ines Marrow, .*: a bottle of another strength/).waitFor();
    await birch.getByText(/^Until .* from the comparison$/).waitFor();
    expect(await bands.count()).toBe(before);

    await takeControl(page, '3610');
    expect(await page.locator('[data-answer]').textContent()).toMatch(/^3,610 RLU: in line\./);
    await expect.poll(() => bands.count()).toBe(before + 1);
  },
);

demoTest('a lot that was not compared asks why on Visit too, and the reason stands on the reading', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Kezia');
  await readSwab(page, '9000');
  const asked = page.locator('[data-uncompared]');
  expect(await asked.count()).toBe(0);
  const hands = handsOn(page);
  await hands.press('2');
  await hands.press('l');
  await page.getByRole('button', { name: /lot Cedar/ }).click();
  await asked.getByText(/^Lot Cedar was not compared with the lot before it/).waitFor();
  await asked.getByRole('button', { name: /^Use it without/ }).click();
  await page.keyboard.press('Enter');
  await asked.getByText('A reason is needed.').waitFor();
  await asked.getByRole('textbox', { name: 'Because' }).fill('Birch is used up');
  await page.keyboard.press('Enter');
  await expect.poll(() => asked.count()).toBe(0);
  await expect.poll(() => reading(page).textContent()).toContain('Birch is used up');
});
