import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { expectNoBarriers } from './expectNoBarriers.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import { handsOn, readFocus } from './visitKeys.ts';

// Issue 3: each of these takes six keys or fewer, counted from the Look section, the opening key among them.
const MOST_KEYS = 6;

const look = (page: Page) => page.locator('[data-scope="look"]');
const rowOf = (page: Page, label: string) => look(page).locator('.line-row', { has: page.getByText(label, { exact: true }) });

/** The letter that a line shows. */
async function letterOf(page: Page, label: string): Promise<string> {
  const letter = await rowOf(page, label).first().getAttribute('aria-keyshortcuts');
  if (!letter) throw new Error(`no letter on ${label}`);
  return letter;
}

/** Presses the keys from the heading of Look, and says how many they were. */
async function pressFromLook(page: Page, keys: readonly string[]): Promise<number> {
  await page.keyboard.press('Escape');
  await page.keyboard.press('4');
  await expect.poll(() => readFocus(page)).toMatchObject({ scope: 'look' });
  await page.keyboard.press('Escape');
  const hands = handsOn(page);
  for (const key of keys) await hands.press(key);
  return hands.keys();
}

demoTest('findings, plaque, wear and bitewings: six keys or fewer each', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Henrik');
  const entered: [what: string, keys: readonly string[], place: string, says: RegExp][] = [
    ['new white spot', ['f', ...'13411'], '13, facial', /white spot, active/],
    ['cavity of a milk tooth', ['f', ...'85323'], '85, distal', /cavity, activity not assessed/],
    ['recent restoration', ['f', ...'4626'], '46, mesial', /restoration/],
    ['root showing', ['f', ...'3169'], '31, root', /showing/],
    ['acid wear of a tooth', ['+', ...'2150'], '21, lingual', /acid wear/],
  ];
  for (const [what, keys, place, says] of entered) {
    const count = await pressFromLook(page, keys);
    console.log(`${what}: ${count} keys`);
    expect(count).toBeLessThanOrEqual(MOST_KEYS);
    await expect.poll(() => rowOf(page, place).innerText()).toMatch(says);
    expect(await readFocus(page)).toMatchObject({ scope: 'look', line: null });
  }

  const answered: [label: string, keys: readonly string[], says: RegExp][] = [
    ['Heavy plaque', ['y'], /yes/],
    ['Tooth wear', ['2'], /from acid/],
    ['Last bitewings', [...'0625', 'Enter'], /June 2025/],
  ];
  for (const [label, keys, says] of answered) {
    const count = await pressFromLook(page, [await letterOf(page, label), ...keys]);
    console.log(`${label}: ${count} keys`);
    expect(count).toBeLessThanOrEqual(label === 'Last bitewings' ? MOST_KEYS : 2);
    await expect.poll(() => rowOf(page, label).innerText()).toMatch(says);
  }
  await page.getByText(/^Last bitewings: June 2025/).waitFor();
  await page.getByText(/Acid wear is a finding with its own advice/).waitFor();

  // What was just entered is put right by its letter and one key; a wrong tooth leaves the field free for the next two digits.
  await pressFromLook(page, [await letterOf(page, '85, distal'), '6']);
  await expect.poll(() => rowOf(page, '85, distal').count()).toBe(0);
  await pressFromLook(page, ['f', '1', '9']);
  expect(await page.getByRole('alert').innerText()).toMatch(/^19: A tooth has two digits/);
  for (const key of [...'17', '1', '2', '1']) await page.keyboard.press(key);
  await expect.poll(() => rowOf(page, '17, occlusal').innerText()).toMatch(/cavity, active/);

  // Another page sees the same: all of it was saved.
  await page
    .getByText(/^saved/i)
    .first()
    .waitFor();
  await page.reload();
  await expect.poll(() => rowOf(page, '13, facial').innerText()).toMatch(/white spot, active/);
  await expect.poll(() => rowOf(page, 'Last bitewings').innerText()).toMatch(/June 2025/);
});

demoTest('what became of a carried finding: its tooth and one key', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Henrik');
  await pressFromLook(page, ['f', ...'14414']);
  await expect.poll(() => rowOf(page, '14, facial').innerText()).toMatch(/white spot, active[\s\S]*seen before/);

  const keys = await pressFromLook(page, ['c', ...'14', '2']);
  expect(keys).toBe(4);
  await expect.poll(() => rowOf(page, '14, facial').innerText()).toMatch(/white spot, inactive/);

  await pressFromLook(page, ['c', ...'14', '4']);
  await expect.poll(() => rowOf(page, '14, facial').innerText()).toMatch(/cavity, activity not assessed[\s\S]*new/);
  await pressFromLook(page, ['c', ...'14', '4']);
  await expect.poll(() => rowOf(page, '14, facial').innerText()).toMatch(/restoration/);
  await pressFromLook(page, ['c', ...'18']);
  expect(await page.getByRole('alert').innerText()).toMatch(/Nothing is noted at 18/);
});

demoTest('without natural teeth: no level to confirm, no question about teeth, nowhere to swab', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Hedda');
  await page.locator('[data-scope="level"]').getByText('No natural teeth: caries level does not apply.').waitFor();
  expect(await page.getByRole('button', { name: /Confirm|Change/ }).count()).toBe(0);
  for (const label of ['Heavy plaque', 'Deep pits or fissures', 'Last bitewings', 'Whole mouth examined']) {
    expect({ label, there: await rowOf(page, label).count() }).toEqual({ label, there: 0 });
  }
  await page.getByText('Nowhere to swab: no natural teeth.').first().waitFor();
  await page.getByText('Nothing for teeth is offered in this mouth.').waitFor();
  for (const key of ['5', 'c', 'g']) await page.keyboard.press(key);
  expect(await page.getByRole('button', { name: /Confirm|Change/ }).count()).toBe(0);
});

demoTest('axe finds nothing while a finding is keyed, in its steps and after', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Soren');
  await pressFromLook(page, ['f', '1', '9']);
  await expectNoBarriers(page, 'a wrong tooth');
  for (const key of '1150') await page.keyboard.press(key);
  await pressFromLook(page, [await letterOf(page, '11, lingual')]);
  await expectNoBarriers(page, 'what became of a finding');
  await pressFromLook(page, [await letterOf(page, 'Last bitewings')]);
  await expectNoBarriers(page, 'a date');
});
