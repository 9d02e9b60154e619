import { checkScreens, openDisclosures } from './checkScreens.ts';

checkScreens([
  {
    name: 'People',
    open: async (page, server) => {
      await page.goto(`${server.url}/people`);
      await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
    },
  },
  {
    name: 'A person, everything open',
    open: async (page, server) => {
      await page.goto(`${server.url}/people`);
      await page.getByRole('row', { name: /Kezia/ }).getByRole('link', { name: 'over time' }).click();
      await page.getByRole('heading', { level: 1, name: /Kezia/ }).waitFor();
      await page.goto(page.url().replace('/over-time/', '/people/'));
      await page.getByRole('heading', { level: 1, name: /Kezia/ }).waitFor();
      await openDisclosures(page);
    },
  },
  {
    name: 'Over time',
    open: async (page, server) => {
      await page.goto(`${server.url}/people`);
      await page
        .getByRole('row', { name: /Henrik/ })
        .getByRole('link', { name: 'over time' })
        .click();
      await page.getByRole('heading', { level: 1, name: /Henrik/ }).waitFor();
      await openDisclosures(page);
    },
  },
  {
    name: 'Sheets for the waiting room',
    open: async (page) => {
      await page.getByRole('link', { name: 'sheets for the waiting room' }).click();
      await page
        .getByRole('article', { name: /^Sheet of/ })
        .first()
        .waitFor();
    },
  },
]);
