import { expect } from 'vitest';
import { checkScreens, openDisclosures } from './checkScreens.ts';
import { demoTest } from './demo.ts';
import { expectAccessible } from './expectAccessible.ts';
import { signIn } from './pageSteps.ts';

checkScreens([
  { name: 'Today', open: (page) => page.locator('.day-line').first().waitFor() },
  {
    name: 'Today, keys',
    open: async (page) => {
      await page.keyboard.press('?');
      await page.getByRole('dialog', { name: 'Keys' }).getByText('change of member').waitFor();
    },
  },
  {
    name: 'Shelf',
    open: async (page, server) => {
      await page.goto(`${server.url}/shelf`);
      await page.getByRole('heading', { level: 1, name: 'Shelf' }).waitFor();
    },
  },
  {
    name: 'Stock of an item',
    open: async (page, server) => {
      await page.goto(`${server.url}/shelf/paste-naf-1450/stock`);
      await page.getByRole('button', { name: 'Packs came in' }).click();
      await page.getByRole('form', { name: 'Packs that came in' }).waitFor();
    },
  },
  {
    name: 'What to order',
    open: async (page, server) => {
      await page.goto(`${server.url}/shelf/reorder`);
      const row = page.getByRole('row', { name: /Gum, xylitol/ });
      await row.waitFor();
      // What to order is the point of the paper.
      await page.emulateMedia({ media: 'print' });
      await row.getByText('2 packs').waitFor();
      await page.emulateMedia({ media: 'screen' });
    },
  },
  {
    name: 'A table of the shelf, one line to put right',
    open: async (page, server) => {
      await page.goto(`${server.url}/shelf/table`);
      const table = page.getByLabel('Table', { exact: true });
      await table.fill('id;price;lot;last day;packs\ngum-xylitol;9.40;Knot 9;05/2099;12\nlozenge-xylitol;60,000;;;');
      await page.getByRole('button', { name: 'Look at the table' }).click();
      await page.getByRole('row', { name: /3 price "60,000" is not a price/ }).waitFor();
      await page.getByRole('row', { name: /2 Gum, xylitol.*lot Knot 9, 31 May 2099: 12 packs come in/ }).waitFor();
    },
  },
  {
    name: 'Rules',
    open: async (page, server) => {
      await page.goto(`${server.url}/rules`);
      await page.getByRole('heading', { name: 'Settings' }).waitFor();
      await openDisclosures(page);
    },
  },
]);

demoTest(
  'a table with one bad line keeps its text; mended, one key writes it and the lot stands on the shelf',
  async ({ page, server }) => {
    await signIn(page, server);
    await page.goto(`${server.url}/shelf/table`);
    const table = page.getByLabel('Table', { exact: true });
    const text = 'id;lot;last day;packs\ngum-xylitol;Knot 9;05/2099;1.000';
    await table.fill(text);
    await page.getByRole('button', { name: 'Look at the table' }).click();
    await page.getByText('write 1000, or 1').waitFor();
    expect(await table.inputValue()).toBe(text);
    await table.fill(text.replace('1.000', '12'));
    await page.getByRole('button', { name: 'Look at the table' }).click();
    await page.getByRole('button', { name: 'Write 1 lot' }).waitFor();
    await page.keyboard.press('w');
    await page.getByText('1 lot written.').waitFor();
    await page.goto(`${server.url}/shelf/gum-xylitol/stock`);
    await page.getByRole('row', { name: /Knot 9 31 May 2099 12/ }).waitFor();
  },
);

demoTest('what decides between regimens is put in another order by keys, and stands so on paper', async ({ page, server }) => {
  await signIn(page, server);
  await page.goto(`${server.url}/rules`);
  await page.getByRole('button', { name: 'Change which regimen comes first' }).press('Enter');
  const form = page.getByRole('form', { name: 'Which regimen comes first' });
  await form.getByRole('button', { name: 'up: Lowest cost a month' }).press('Enter');
  await expectAccessible(page);
  await form.getByRole('button', { name: 'Save' }).press('Enter');
  await page.getByText('Saved.').waitFor();
  await page.reload();
  await page.getByText('Lowest cost a month').waitFor();
  await page.emulateMedia({ media: 'print' });
  const order = page.locator('h3', { hasText: 'Which regimen comes first' }).locator('xpath=following-sibling::ol[1]');
  expect((await order.innerText()).split('\n')).toEqual(['Lowest cost a month', 'Fewest tasks a day', 'Fewest products']);
});

demoTest(
  'where sources disagree, a position is chosen by keys and said; what has nothing to set has no control',
  async ({ page, server }) => {
    await signIn(page, server);
    await page.goto(`${server.url}/rules#disagreements`);
    const part = page.getByRole('region', { name: 'Where sources disagree' });
    await part.locator('summary', { hasText: 'Chosen here' }).press('Enter');
    await part.locator('summary', { hasText: 'Nothing to set' }).press('Enter');
    const line = part.getByRole('listitem').filter({ hasText: 'From which age may a fluoride rinse be used at home?' });
    await line.getByText('Not chosen, so the stricter holds: from 8 years').waitFor();
    await line.getByRole('button', { name: /^choose/ }).press('Enter');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await expectAccessible(page);
    await page.keyboard.press('Enter');
    await line.getByText('From 6 years, as the labels print it: chosen by this practice.').waitFor();
    await page.locator('#safety summary', { hasText: 'Who an item is not for' }).press('Enter');
    const rule = page.getByRole('row', { name: /^C07 / });
    expect(await rule.innerText()).toMatch(
      /6 years and over.*Applies here under 6 years\..*chosen by this practice.*The other side: from 8 years/s,
    );
    const fixed = part.getByRole('listitem').filter({ hasText: 'What to do when too much fluoride was swallowed?' });
    await fixed.getByText('Nothing to set: never vomiting.').waitFor();
    expect(await fixed.getByRole('button', { name: /^choose/ }).count()).toBe(0);
  },
);

demoTest(
  'Fluids: from Rules to both maps and the figures of products; hypochlorite stays off until it has its protocol',
  async ({ page, server }) => {
    await signIn(page, server);
    await page.goto(`${server.url}/rules#fluids`);
    await page.getByRole('link', { name: 'Open the page of fluids' }).click();
    await page.getByText('5.3 for typical saliva (not measured here').waitFor();
    expect(await page.getByRole('img', { name: /^Saturation map of/ }).count()).toBe(2);

    await page.getByText('Type what was measured').click();
    await page.getByLabel('Calcium of saliva').fill('1');
    await page.getByLabel('Phosphate of saliva').fill('4');
    await page.keyboard.press('Enter');
    await page.getByText('from the calcium and phosphate measured in saliva').waitFor();

    await page.getByLabel('Strength of the compound').fill('0.05');
    await page.getByLabel('One use').fill('10');
    await page.keyboard.press('Enter');
    await page.getByText('226 ppm fluoride (mg in a litre), 11.9 mmol/L. 2.26 mg in one use. One pack: not given.').waitFor();

    const rinse = page.getByRole('form', { name: 'Hypochlorite dilution' });
    for (const [label, typed] of [
      ['Strength that the protocol says', '0.3'],
      ['Strength on the bottle', '5'],
      ['Rinse to be made', '250'],
    ] as const) {
      await rinse.getByLabel(label).fill(typed);
    }
    await page.keyboard.press('Enter');
    await rinse.getByText('Not worked out yet: 4 lines need a look.').waitFor();
    await rinse.getByText('must be above 0 and at most 0.25 % sodium hypochlorite').waitFor();
    expect(await rinse.getByLabel('Rinse to be made').inputValue()).toBe('250');
    await rinse.getByLabel('Strength that the protocol says').fill('0.2');
    await rinse.getByLabel('Name of the protocol').fill('Gum rinse');
    await rinse.getByLabel('Who wrote it').fill('A. Dentist');
    await rinse.getByLabel('Date of the protocol').fill('2026-01-15');
    await page.keyboard.press('Enter');
    await rinse.getByText('10 mL from the bottle and 240 mL of water make 250 mL of 0.2 %: 1,905 ppm available chlorine.').waitFor();

    await openDisclosures(page);
    await expectAccessible(page);
  },
);
