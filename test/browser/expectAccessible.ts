import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { expectNoBarriersInBothThemes } from './expectNoBarriers.ts';

/** The page as it stands: axe finds nothing in light and in dark, and at 320 px nothing scrolls sideways. It is left at 320 px. */
export async function expectAccessible(page: Page): Promise<void> {
  await expectNoBarriersInBothThemes(page);
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
}
