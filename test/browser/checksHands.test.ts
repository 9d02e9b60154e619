import AxeBuilder from '@axe-core/playwright';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { openChecks, openVisitOf, signIn } from './pageSteps.ts';

demoTest('hands side by side: a sentence, a picture and a table, of all and of one, by keys alone', async ({ page, server }) => {
  await signIn(page, server);
  await openChecks(page, server.url);
  const hands = page.getByRole('region', { name: 'Hands' });
  await hands.locator('[data-hands="together"]').getByText('differ no more than chance brings').waitFor();
  const members = ['Ines Marrow', 'Tomas Quill', 'Una Sorrel-Bahk'];
  const funnel = hands.getByRole('img', { name: 'Mean of 3 members against the number of their controls. The table gives each.' });
  expect(await funnel.locator('circle.mark').count()).toBe(3);
  await page.getByText('Show members as table').focus();
  await page.keyboard.press('Enter');
  for (const name of members) await hands.getByRole('cell', { name: new RegExp(`^${name}, \\d+ controls: in line, `) }).waitFor();

  await page.getByRole('radio', { name: 'Ines Marrow' }).focus();
  await page.keyboard.press('ArrowDown');
  await hands.locator('[data-hands="one"]').getByText('The latest controls of Tomas Quill').waitFor();
  const picture = hands.getByRole('img', { name: /^\d+ controls of Tomas Quill over time with their moving average/ });
  await page.getByText('Show controls of Tomas Quill as table').focus();
  await page.keyboard.press('Enter');
  const rows = hands.locator('figure').last().locator('tbody tr');
  expect(await rows.count()).toBe(await picture.locator('circle').count());
  expect(await rows.first().textContent()).toMatch(/2026[+−]?\d+\.\d %[+−]?\d+\.\d %−\d+\.\d % to \+\d+\.\d %$/);

  // A control that does not count is hollow in the picture and says so in the table.
  expect(await picture.locator('circle.hollow').count()).toBe(0);
  const last = page.locator('.control-list li').filter({ hasText: 'Tomas Quill' }).first();
  await last.getByRole('button', { name: /^noted by mistake/ }).click();
  await page.getByRole('textbox', { name: 'Because' }).fill('another solution');
  await page.keyboard.press('Enter');
  await expect.poll(() => picture.locator('circle.hollow').count()).toBe(1);
  await hands.getByRole('cell', { name: 'not counted', exact: true }).waitFor();

  // What is due says so in words, and who was there stands in the record.
  const tomas = hands.getByRole('row', { name: /^Tomas Quill takes swabs/ });
  await tomas
    .locator('.unknown')
    .getByText(/, overdue$/)
    .waitFor();
  await tomas.getByText('Training record').click();
  await tomas
    .getByText(/supervised swab with Ines Marrow; noted by/)
    .first()
    .waitFor();
});

demoTest(
  'a check of the meter that did not pass stops readings with every lot until one passes, by keys alone',
  async ({ page, server }) => {
    await signIn(page, server);
    await openChecks(page, server.url);
    const meters = page.getByRole('region', { name: 'Meters' });
    const last = meters.locator('[data-meter-check]');
    await last.getByText(/passed, by its own check device, .* Checked every 91 days; .* The next is due on /).waitFor();
    await page.getByText('Show checks of Demo meter A as table').press('Enter');
    await meters.getByRole('row', { name: /871 did not pass 21 °C Tomas Quill/ }).waitFor();

    const note = async (rlu: string, passed?: 'passed' | 'did not pass') => {
      await page.getByRole('button', { name: 'Note a check of the meter' }).press('Enter');
      const form = page.getByRole('form', { name: 'A check of Demo meter A' });
      if (rlu) await form.getByRole('textbox', { name: 'The meter showed' }).fill(rlu);
      // Enter saves from a field of text; nobody's word is taken for granted.
      if (passed) {
        await form.getByRole('textbox', { name: 'Note' }).press('Enter');
        await form.getByText('Say whether it passed.').waitFor();
        await form.getByRole('radio', { name: passed }).press('Space');
      }
      await form.getByRole('textbox', { name: 'Note' }).press('Enter');
      await form.waitFor({ state: 'detached' });
    };
    await note('820');
    await meters.getByText('Noted: did not pass.').waitFor();
    await page.locator('.checks > .opening').getByText('The check of Demo meter A did not pass. Run today without swabs.').waitFor();
    const stopped = meters.locator('[data-meter-stopped]');
    expect(await stopped.textContent()).toMatch(/^Run today without swabs\..*Let today's readings count all the same/s);
    for (const width of [1280, 320]) {
      await page.setViewportSize({ width, height: 900 });
      const { violations } = await new AxeBuilder({ page }).include('section[aria-label="Meters"]').analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target)])).toEqual([]);
      const isWider = await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
      expect({ width, isWider }).toEqual({ width, isWider: false });
    }
    await page.setViewportSize({ width: 1280, height: 900 });

    await page.goto(server.url);
    await openVisitOf(page, 'Maud');
    await page
      .getByRole('region', { name: 'Swab' })
      .getByText(/^Run today without swabs: the check of the meter did not pass \(by its own check device, 820 RLU\)/)
      .waitFor();
    await page.goto(`${page.url()}/swab`);
    await page.getByRole('heading', { level: 2, name: 'Run today without swabs.' }).waitFor();
    await page.getByText(/Take another meter that passed its check/).waitFor();

    await openChecks(page, server.url);
    await stopped.getByRole('button', { name: /^Let today's readings count all the same/ }).press('Enter');
    await page.getByRole('textbox', { name: 'Because' }).fill('Maud came from far');
    await page.keyboard.press('Enter');
    await stopped.getByText(/^Today's readings count all the same: Ines Marrow, .*: Maud came from far/).waitFor();
    await note('', 'passed');
    await last.getByText(/, passed, by its own check device \(Ines Marrow\)/).waitFor();
    expect(await stopped.count()).toBe(0);
  },
);
