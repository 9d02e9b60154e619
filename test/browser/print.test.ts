import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { readPdf } from '../leaflet/readPdf.ts';
import { demoTest } from './demo.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';

/** Width between the margins of the paper, in CSS pixels: 210 mm and 8.5 in, less 14 mm on either side. */
const PAPERS = { A4: (182 / 25.4) * 96, Letter: (8.5 - 28 / 25.4) * 96 } as const;

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

const pages: readonly { readonly name: string; readonly open: (page: Page, server: RunningServer) => Promise<void> }[] = [
  { name: 'Today', open: (page) => heading(page, /^Today, /) },
  {
    name: 'Visit',
    open: async (page) => {
      await openVisitOf(page, 'Henrik');
      await page.keyboard.press('2');
      await page.keyboard.press('r');
      await page.keyboard.type('5150');
      await page.keyboard.press('Enter');
      await page.getByText(/^5,150 RLU\./).waitFor();
    },
  },
  {
    name: 'Over time',
    open: async (page, server) => {
      await page.goto(`${server.url}/people`);
      await page
        .getByRole('row', { name: /Birgit/ })
        .getByRole('link', { name: 'over time' })
        .click();
      await heading(page, /Birgit/);
    },
  },
  ...['shelf', 'rules', 'practice'].map((path) => ({
    name: path,
    open: async (page: Page, server: RunningServer) => {
      await page.goto(`${server.url}/${path}`);
      await page.getByRole('heading', { level: 2 }).or(page.locator('tbody')).first().waitFor();
    },
  })),
];

/** Everything that prints in a colour, and everything that is wider than the paper. */
function readPaper(page: Page) {
  return page.evaluate(() => {
    const isGrey = (color: string) => {
      const [r = 0, g = 0, b = 0, alpha = 1] = (color.match(/[\d.]+/g) ?? []).map(Number);
      return alpha === 0 || Math.max(r, g, b) - Math.min(r, g, b) <= 2;
    };
    const shown = [...document.querySelectorAll<HTMLElement>('body, body *')].filter((e) => e.getClientRects().length > 0);
    const told = (e: HTMLElement) => e.outerHTML.slice(0, 100);
    const coloured = shown.filter((e) => {
      const style = getComputedStyle(e);
      const borders = (['Top', 'Right', 'Bottom', 'Left'] as const)
        .filter((side) => style[`border${side}Width`] !== '0px')
        .map((side) => style[`border${side}Color`]);
      const drawn = e instanceof SVGElement ? [style.fill, style.stroke].filter((c) => c.startsWith('rgb')) : [];
      return ![style.color, style.backgroundColor, ...borders, ...drawn].every(isGrey);
    });
    const dark = shown.filter((e) => {
      const [r = 255, , , alpha = 1] = (getComputedStyle(e).backgroundColor.match(/[\d.]+/g) ?? []).map(Number);
      return alpha > 0 && r < 120 && e.innerText.trim() !== '';
    });
    const wide = shown.filter((e) => e.getBoundingClientRect().right > innerWidth + 1 && getComputedStyle(e).position !== 'absolute');
    return { coloured: coloured.slice(0, 3).map(told), dark: dark.slice(0, 3).map(told), wide: wide.slice(0, 3).map(told) };
  });
}

for (const { name, open } of pages) {
  demoTest(`${name} prints in black and white on A4 and Letter, nothing cut off, in the dark too`, async ({ page, server }) => {
    await page.emulateMedia({ colorScheme: 'dark' });
    await signIn(page, server);
    await open(page, server);
    for (const [format, width] of Object.entries(PAPERS) as [keyof typeof PAPERS, number][]) {
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      await page.setViewportSize({ width: Math.floor(width), height: 1000 });
      expect([format, await readPaper(page)]).toEqual([format, { coloured: [], dark: [], wide: [] }]);
      const { pages: count, sizePt } = readPdf(await page.pdf({ format }));
      expect(count).toBeGreaterThan(0);
      expect(Math.abs(sizePt[0] - (format === 'A4' ? 595 : 612))).toBeLessThan(2);
      await page.emulateMedia({ media: 'screen' });
      await page.setViewportSize({ width: 1280, height: 900 });
    }
  });
}
