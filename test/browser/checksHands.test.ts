import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { openChecks, signIn } from './pageSteps.ts';

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
