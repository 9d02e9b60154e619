import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { expectNoBarriersInBothThemes } from './expectNoBarriers.ts';
import { signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';

interface Screen {
  readonly name: string;
  /** From Today, signed in, to the screen with what it folds away unfolded. */
  readonly open: (page: Page, server: RunningServer) => Promise<void>;
}

export async function openDisclosures(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
}

/** A test that holds for every screen. The page fixture fails it on any policy violation, console error or uncaught error. */
export function checkScreens(screens: readonly Screen[]): void {
  for (const { name, open } of screens) {
    const title = `${name}: axe finds nothing in light and dark, nothing is refused or logged, and nothing to scroll sideways at 320 px`;
    demoTest(title, async ({ page, server }) => {
      await page.setViewportSize({ width: 1440, height: 1000 });
      await signIn(page, server);
      await open(page, server);
      await expectNoBarriersInBothThemes(page, name);
      await page.setViewportSize({ width: 320, height: 640 });
      expect(await findTooWide(page)).toEqual({ scrolls: false, wide: [] });
    });
  }
}

function findTooWide(page: Page) {
  return page.evaluate(() => {
    const wide = [...document.querySelectorAll('body *')].filter(
      (e) => e.getBoundingClientRect().right > innerWidth + 1 && getComputedStyle(e).position !== 'absolute',
    );
    return { scrolls: document.documentElement.scrollWidth > innerWidth, wide: wide.slice(0, 5).map((e) => e.outerHTML.slice(0, 160)) };
  });
}
