import type { CDPSession, Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { signIn } from './pageSteps.ts';
import { answerQuestions, type Hands, handsOn } from './visitKeys.ts';

/** What a screen reader says when the focus arrives. */
interface Stop {
  readonly role: string;
  readonly name: string;
}

/** From the accessibility tree of the browser itself, not from the markup. */
async function readStop(cdp: CDPSession): Promise<Stop> {
  const { result } = await cdp.send('Runtime.evaluate', { expression: 'document.activeElement' });
  const { nodes } = await cdp.send('Accessibility.getPartialAXTree', { objectId: result.objectId ?? '', fetchRelatives: false });
  const [node] = nodes;
  return { role: String(node?.role?.value ?? ''), name: String(node?.name?.value ?? '') };
}

/** Everything that live regions say from now on, in order. */
async function listen(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const heard: string[] = [];
    const regions = '[role="status"], [role="alert"], [aria-live="polite"], [aria-live="assertive"]';
    new MutationObserver((mutations) => {
      const changed = new Set(
        mutations.flatMap(({ target }) => {
          const element = target instanceof Element ? target : target.parentElement;
          return [element?.closest(regions), ...(element?.querySelectorAll(regions) ?? [])].filter((r) => r instanceof HTMLElement);
        }),
      );
      for (const region of changed) if (region.innerText.trim() !== '') heard.push(region.innerText.trim());
    }).observe(document.body, { childList: true, characterData: true, subtree: true });
    Object.assign(window, { heard });
  });
  return () => page.evaluate(() => (window as unknown as { heard: string[] }).heard);
}

/** Whether the focus can be seen where it stands: the picture about it changes when it leaves. */
async function isFocusSeen(page: Page): Promise<boolean> {
  const box = await page.evaluate(() => {
    const { x, y, width, height } = document.activeElement?.getBoundingClientRect() ?? new DOMRect();
    return { x: Math.max(0, x - 8), y: Math.max(0, y - 8), width: width + 16, height: height + 16 };
  });
  const view = page.viewportSize() ?? { width: 0, height: 0 };
  const clip = { ...box, width: Math.min(box.width, view.width - box.x), height: Math.min(box.height, view.height - box.y) };
  if (!(clip.width > 0 && clip.height > 0)) return false;
  const picture = () => page.screenshot({ clip, animations: 'disabled', caret: 'hide' });
  const focused = await picture();
  await page.evaluate(() => {
    const at = document.activeElement;
    if (!(at instanceof HTMLElement)) return;
    Object.assign(window, { left: at });
    at.blur();
  });
  const left = await picture();
  await page.evaluate(() => (window as unknown as { left: HTMLElement }).left.focus({ preventScroll: true }));
  return !focused.equals(left);
}

const SPEAKS = ['button', 'heading', 'textbox', 'searchbox', 'combobox', 'listbox', 'option', 'spinbutton', 'link', 'radio', 'checkbox'];

demoTest(
  'a whole visit by ear: every stop of the focus has a role and a name and is seen, and what changes is said',
  async ({ page, server }) => {
    await page.setViewportSize({ width: 1440, height: 1000 });
    await signIn(page, server);
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('Accessibility.enable');
    const hands = handsOn(page);
    const stops: Stop[] = [];
    const unseen: Stop[] = [];
    const look = async () => {
      const stop = await readStop(cdp);
      stops.push(stop);
      if (!(await isFocusSeen(page))) unseen.push(stop);
    };
    const listening: Hands = {
      ...hands,
      press: async (key) => {
        await hands.press(key);
        await look();
      },
    };

    await hands.type('henr');
    await hands.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^Henrik Varghese/ }).waitFor();
    const heard = await listen(page);
    await answerQuestions(page, listening, ['safety']);
    await listening.press('r');
    await hands.type('61000');
    await listening.press('Enter');
    await page.getByRole('textbox').fill('5150');
    await listening.press('Enter');
    await listening.press('u');
    await answerQuestions(page, listening, ['food', 'home', 'health', 'look']);
    await listening.press('c');
    await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
    for (const key of ['7', '=']) await listening.press(key);
    await expect.poll(() => page.locator('[data-saved]').textContent()).toMatch(/^saved/);

    expect(stops.filter(({ role, name }) => !SPEAKS.includes(role) || name.trim() === '')).toEqual([]);
    expect(unseen).toEqual([]);
    const said = (await heard()).join('\n');
    expect(said).toContain('above the highest reading of this meter');
    expect(said).toContain('5,150 RLU');
    // What is saved is not read out after every answer; what is not saved would be.
    expect(said).not.toMatch(/^(sending|saved)/m);
    expect(said).toMatch(/^Level \w+, confirmed\. \d+ items? in the plan/m);
    expect(said).toMatch(/^No level yet: \d things? not known\.$/m);
    // The level is read with its place on the list, not as a drawing.
    await page.getByRole('img', { name: /^\w+, \d of \d, confirmed$/ }).waitFor();
    // Headings lead through the page in order, none skipped.
    const levels = await page.getByRole('heading').evaluateAll((all) => all.map((h) => Number(h.tagName.slice(1))));
    expect(levels[0]).toBe(1);
    for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? level)).toBeLessThanOrEqual(1);
    // Landmarks to jump between.
    for (const name of ['Swab', 'Talk', 'Look', 'Level', 'Plan', 'Agree']) await page.getByRole('region', { name, exact: true }).waitFor();
  },
);
