import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { VisitBundle } from '../../src/api/bundles.ts';
import { content } from '../../src/content/allContent.ts';
import { assessVisit } from '../../src/core/visit/assessVisit.ts';
import { demoTest } from './demo.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import { answerQuestions, handsOn } from './visitKeys.ts';

const DRY_MOUTH = '[data-line="dry_mouth"]';
const PLAN_ROWS = '[data-scope="plan"] ul.plan > li[data-line]';

/** Keys, and clicks on what a selector finds, faster than the page is drawn: only promises run between them. What stands there after each. */
const pressAtOnce = (page: Page, keys: readonly string[]) =>
  page.evaluate(
    async ({ keys, answer, planRows }) => {
      const seen: { answer: string; plan: (string | null)[] }[] = [];
      for (const key of keys) {
        if (key.length > 1) document.querySelector<HTMLElement>(key)?.click();
        else
          (document.activeElement ?? document.body).dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
        for (let turn = 0; turn < 20; turn += 1) await undefined;
        const plan = [...document.querySelectorAll(planRows)].map((row) => row.getAttribute('data-line'));
        seen.push({ answer: document.querySelector(answer)?.textContent ?? '', plan });
      }
      return seen;
    },
    { keys, answer: `${DRY_MOUTH} .line-text`, planRows: PLAN_ROWS },
  );

const planRows = (page: Page): Promise<readonly (string | null)[]> =>
  page.locator(PLAN_ROWS).evaluateAll((rows) => rows.map((row) => row.getAttribute('data-line')));

/** As the server has it: the plan of its answers, and what was agreed. */
async function stored(page: Page): Promise<{ readonly plan: readonly string[]; readonly agreed: readonly string[] }> {
  const path = `/api${new URL(page.url()).pathname}`;
  const { input } = (await page.evaluate(async (at) => (await fetch(at)).json(), path)) as VisitBundle;
  const { plan } = assessVisit(input, content);
  return { plan: plan.lines.map((l) => l.shelfItemId), agreed: Object.keys(input.visit.agreed?.items ?? {}) };
}

/** A level that brings more than a paste is confirmed. */
async function toPlan(page: Page): Promise<void> {
  await answerQuestions(page, handsOn(page), ['safety']);
  for (const key of ['4', '+', ...'13', '4', '1', '1', '5', 'c']) await page.keyboard.press(key);
  await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
}

demoTest('an answer is drawn before the plan that it changes, which follows by itself', async ({ page, server }) => {
  await signIn(page, server);
  await openVisitOf(page, 'Maud');
  await toPlan(page);
  const before = await planRows(page);
  await page.locator(`${DRY_MOUTH} [data-row]`).click();
  const [drawn] = await pressAtOnce(page, ['3']);
  expect(drawn).toEqual({ answer: 'severe', plan: before });
  const { plan } = await stored(page);
  expect(plan).not.toEqual(before);
  await expect.poll(() => planRows(page)).toEqual(plan);
});

demoTest(
  'agreed by a key right after an answer that changes the plan: what is stored is the plan of the new answer; a click finds the new plan too',
  async ({ page, server }) => {
    await signIn(page, server);
    await openVisitOf(page, 'Grete');
    await toPlan(page);
    const before = await planRows(page);
    await page.locator(`${DRY_MOUTH} [data-row]`).click();
    const [drawn, , agreedOn] = await pressAtOnce(page, ['3', '7', '=']);
    expect(drawn?.plan).toEqual(before);
    await expect.poll(async () => (await stored(page)).agreed.length).toBeGreaterThan(0);
    const { plan, agreed } = await stored(page);
    expect(plan).not.toEqual(before);
    expect([...agreed].sort()).toEqual([...plan].sort());
    expect(agreedOn?.plan).toEqual(plan);

    await page.locator(`${DRY_MOUTH} [data-row]`).click();
    const [, clickedOn] = await pressAtOnce(page, ['1', `${PLAN_ROWS} [data-row]`]);
    expect(clickedOn?.plan).toEqual(before);
    await expect.poll(async () => (await stored(page)).plan).toEqual(before);
  },
);
