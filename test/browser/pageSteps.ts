import type { Page } from 'playwright-core';
import { DEMO_CODE } from '../../src/content/demo/members.ts';
import type { RunningServer } from './startServer.ts';

/** Signs in and waits for the first page, Today. */
export async function signIn(page: Page, server: RunningServer): Promise<void> {
  await page.goto(server.signInUrl);
  await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
}

/** Opens a visit of the person by name, as the first page does it. */
export async function openVisitOf(page: Page, name: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Name, or time and name' }).fill(name);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: new RegExp(`^${name}`) }).waitFor();
}

export async function openChecks(page: Page, url: string): Promise<void> {
  await page.goto(`${url}/checks`);
  await page.getByRole('heading', { level: 1, name: 'Swab checks' }).waitFor();
}

/** Change of member by keys alone, on whatever page it is. */
export async function become(page: Page, letter: string): Promise<void> {
  await page.keyboard.press('Control+.');
  await page.getByRole('dialog', { name: 'Who is here?' }).waitFor();
  await page.keyboard.press(letter);
  await page.keyboard.type(DEMO_CODE);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'Who is here?' }).waitFor({ state: 'detached' });
}
