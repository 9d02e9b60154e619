import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';
import { answerQuestions, handsOn } from './visitKeys.ts';

interface Screen {
  readonly name: string;
  readonly open: (page: Page, server: RunningServer) => Promise<void>;
}

const isReady = (page: Page, heading: string) => page.getByRole('heading', { level: 1, name: heading }).waitFor();

async function openDisclosures(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
}

/** One for each time that a visit is worked through, so that all begin alike. */
const unanswered = ['Maud', 'Petra', 'Alonso'];

/** Every screen, each with what it folds away unfolded. */
const screens: readonly Screen[] = [
  { name: 'Today', open: (page) => page.locator('.day-line').first().waitFor() },
  {
    name: 'People',
    open: async (page, server) => {
      await page.goto(`${server.url}/people`);
      await isReady(page, 'People');
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
    name: 'Sheets for the waiting room',
    open: async (page) => {
      await page.getByRole('link', { name: 'sheets for the waiting room' }).click();
      await page
        .getByRole('article', { name: /^Sheet of/ })
        .first()
        .waitFor();
    },
  },
  {
    name: 'Visit, answered and confirmed',
    open: async (page) => {
      await openVisitOf(page, unanswered.shift() ?? 'nobody is left');
      const hands = handsOn(page);
      await answerQuestions(page, hands, ['safety']);
      await hands.press('r');
      await hands.type('5150');
      await hands.press('Enter');
      await hands.press('u');
      await answerQuestions(page, hands, ['food', 'home', 'health', 'look']);
      await hands.press('c');
      await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
      for (const why of await page.getByRole('button', { name: /^(why|compare):/ }).all()) await why.click();
      await openDisclosures(page);
    },
  },
  {
    name: 'Visit, a list being answered',
    open: async (page) => {
      await openVisitOf(page, 'Yusra');
      await page.keyboard.press('a');
      await page.keyboard.press('Enter');
      await page.keyboard.type('anti');
      await page.getByRole('option').first().waitFor();
    },
  },
  {
    name: 'Visit, shown to the patient',
    open: async (page) => {
      await openVisitOf(page, 'Yusra');
      await page.getByRole('button', { name: 'Show patient' }).click();
      await page.getByRole('button', { name: 'Back to work' }).waitFor();
    },
  },
  {
    name: 'Visit, keys',
    open: async (page) => {
      await openVisitOf(page, 'Yusra');
      await page.keyboard.press('?');
      await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    },
  },
  {
    name: 'Today, keys',
    open: async (page) => {
      await page.keyboard.press('?');
      await page.getByRole('dialog', { name: 'Keys' }).getByText('change of member').waitFor();
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
    name: 'Shelf',
    open: async (page, server) => {
      await page.goto(`${server.url}/shelf`);
      await isReady(page, 'Shelf');
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
  {
    name: 'Leaflet',
    open: async (page) => {
      await openVisitOf(page, 'Soren');
      await page.keyboard.press('7');
      await page.keyboard.press('p');
      await page.getByRole('button', { name: 'Print' }).waitFor();
    },
  },
];

for (const { name, open } of screens) {
  for (const colorScheme of ['light', 'dark'] as const) {
    // The page fixture fails the test on any policy violation, console error or uncaught error.
    demoTest(`${name}, ${colorScheme}: axe finds nothing, and nothing is refused or logged`, async ({ page, server }) => {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width: 1440, height: 1000 });
      await signIn(page, server);
      await open(page, server);
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join('\n')}`)).toEqual([]);
    });
  }

  demoTest(`${name}: nothing to scroll sideways at 320 px`, async ({ page, server }) => {
    await page.setViewportSize({ width: 320, height: 640 });
    await signIn(page, server);
    await open(page, server);
    const tooWide = await page.evaluate(() => {
      const wide = [...document.querySelectorAll('body *')].filter(
        (e) => e.getBoundingClientRect().right > innerWidth + 1 && getComputedStyle(e).position !== 'absolute',
      );
      return { scrolls: document.documentElement.scrollWidth > innerWidth, wide: wide.slice(0, 5).map((e) => e.outerHTML.slice(0, 160)) };
    });
    expect(tooWide).toEqual({ scrolls: false, wide: [] });
  });
}
