import { checkScreens, openDisclosures } from './checkScreens.ts';

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
    name: 'Rules',
    open: async (page, server) => {
      await page.goto(`${server.url}/rules`);
      await page.getByRole('heading', { name: 'Settings' }).waitFor();
      await openDisclosures(page);
    },
  },
]);
