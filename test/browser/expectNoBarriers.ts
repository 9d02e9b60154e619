import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeSource } from './axeSource.ts';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** A theme changes colours and nothing else, so the other rules find in each what they find in one. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/** Axe finds nothing on the page as it stands: WCAG 2.2 A and AA, and good practice. */
export async function expectNoBarriers(page: Page, where = ''): Promise<void> {
  await expectNone(where, axe(page).withTags(RULES));
}

/** The same in light and in dark. Leaves the page in light. */
export async function expectNoBarriersInBothThemes(page: Page, where = ''): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' });
  await expectNoBarriers(page, `${where} light`);
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectNoColourBarriers(page, `${where} dark`);
  await page.emulateMedia({ colorScheme: 'light' });
}

/** A state of a screen that `checkScreens` looks at in both themes: in light, and with EBBLINE_LONG=1 in dark too. */
export async function expectNoBarriersInState(page: Page, where = ''): Promise<void> {
  await (process.env.EBBLINE_LONG === '1' ? expectNoBarriersInBothThemes(page, where) : expectNoBarriers(page, where));
}

/** For another theme of a page that has passed `expectNoBarriers` in one. */
export async function expectNoColourBarriers(page: Page, where = ''): Promise<void> {
  await expectNone(where, axe(page).withRules(COLOUR_RULES));
}

/**
 * Describing every element that passes costs as much as the checks, and reading the findings in a page of their own (which foreign frames
 * need; there are none) costs as much again.
 */
function axe(page: Page): AxeBuilder {
  return new AxeBuilder({ page, axeSource }).options({ resultTypes: ['violations'] }).setLegacyMode(true);
}

async function expectNone(where: string, builder: AxeBuilder): Promise<void> {
  const { violations } = await builder.analyze();
  expect(violations.map(({ id, nodes }) => `${where}: ${id}: ${nodes.map((node) => node.html).join('\n')}`)).toEqual([]);
}
