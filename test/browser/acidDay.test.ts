import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { VisitBundle } from '../../src/api/bundles.ts';
import { demoTest } from './demo.ts';
import { expectNoBarriersInBothThemes } from './expectNoBarriers.ts';
import { openVisitOf, signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';
import { answerQuestions, handsOn } from './visitKeys.ts';

const SAID = /In the model, .+ on the acid side/;
const SLOW = { timeout: 120_000 };
const picture = (page: Page) => page.locator('.day-picture svg');
const leaveFields = (page: Page) => page.evaluate(() => (document.activeElement as HTMLElement | SVGElement | null)?.blur());
const pressTimes = async (page: Page, key: string, times: number) => {
  for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
};

/** The page of the acid day of an open visit, begun from the first ready-made day. @returns address of the visit */
async function beginDay(page: Page, server: RunningServer, name: string): Promise<string> {
  await signIn(page, server);
  await openVisitOf(page, name);
  const visit = page.url();
  await page.keyboard.press('-');
  await page.getByText('No day is told yet').waitFor();
  await page.keyboard.press('1');
  await picture(page).waitFor(SLOW);
  return visit;
}

/** The visit as the server has it. */
function savedVisit(page: Page): Promise<VisitBundle> {
  const id = new URL(page.url()).pathname.split('/')[2];
  return page.evaluate(async (visitId) => (await fetch(`/api/visits/${visitId}`)).json(), id);
}

/** The field as the server has it, once it has everything. */
async function savedDay(page: Page): Promise<NonNullable<VisitBundle['input']['visit']['acidDay']>> {
  await page.getByText(/^saved /).waitFor();
  return (await savedVisit(page)).input.visit.acidDay ?? { days: [] };
}

demoTest('a ready-made day is changed by keys and by the mouse to the same day, undone, added to and kept', async ({ page, server }) => {
  await beginDay(page, server, 'Maud');
  await page.getByText(SAID).waitFor(SLOW);
  expect(await page.getByText('This compares days; it does not measure teeth.').count()).toBe(1);
  const begun = await savedDay(page);
  const id = begun.days[0]?.events[1]?.id ?? '';

  // By keys, and taken back.
  await page.locator(`[data-event="${id}"]`).focus();
  await pressTimes(page, 'ArrowRight', 4);
  const byKeys = await savedDay(page);
  expect(byKeys.days[0]?.events.find((event) => event.id === id)?.startMinute).toBe((begun.days[0]?.events[1]?.startMinute ?? 0) + 20);
  await leaveFields(page);
  await pressTimes(page, 'Backspace', 4);
  expect(await savedDay(page)).toEqual(begun);

  // By the mouse: 20 minutes of 1,440 on the scale between the margins of the picture. Each step redraws.
  const redraws = () => page.evaluate(() => performance.getEntriesByName('acid-day redraw').length);
  const before = await redraws();
  const box = await page.locator(`[data-event="${id}"] .event-mark`).boundingBox();
  const width = (await picture(page).boundingBox())?.width;
  if (!box || !width) throw new Error('the mark is not on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 8; i += 1) await page.mouse.move(x + ((20 / 1440) * (width - 64) * i) / 8, y);
  await page.waitForFunction((count) => performance.getEntriesByName('acid-day redraw').length > count, before, SLOW);
  await page.mouse.up();
  await leaveFields(page);
  expect(await savedDay(page)).toEqual(byKeys);

  // Longer, taken out, undone.
  await page.keyboard.press('e');
  await page.keyboard.press('ArrowUp');
  expect((await savedDay(page)).days[0]?.events[0]?.minutes).toBeGreaterThan(byKeys.days[0]?.events[0]?.minutes ?? 0);
  await page.keyboard.press('Delete');
  expect((await savedDay(page)).days[0]?.events).toHaveLength((byKeys.days[0]?.events.length ?? 0) - 1);
  await pressTimes(page, 'Control+z', 2);
  expect(await savedDay(page)).toEqual(byKeys);

  // Added with its time and the first letters.
  await leaveFields(page);
  await page.keyboard.press('a');
  await page.keyboard.type('16:20 orange');
  await page.getByRole('option').first().click();
  await page.getByText(/^Added at 16:/).waitFor();
  const count = (await savedDay(page)).days[0]?.events.length ?? 0;
  expect(count).toBe((byKeys.days[0]?.events.length ?? 0) + 1);
  await page.reload();
  await picture(page).waitFor(SLOW);
  expect(await page.locator('[data-event]').count()).toBe(count);
});

demoTest(
  'only what to do afterwards while the safety check is unanswered; strip on visit and leaflet; no barriers',
  async ({ page, server }) => {
    const visit = await beginDay(page, server, 'Carmen');
    await page.getByText(/No change of food is suggested, because: the safety check is not answered yet/).waitFor(SLOW);
    expect(await page.locator('.day-moves li').count()).toBe(0);
    await page.getByText(SAID).waitFor(SLOW);
    await page.keyboard.press('t');
    await expectNoBarriersInBothThemes(page, 'acid day');
    await page.setViewportSize({ width: 320, height: 800 });
    await page.waitForFunction(() => document.documentElement.scrollWidth <= 320);
    await page.setViewportSize({ width: 1280, height: 860 });

    await page.getByLabel(/strip on the leaflet/).check();
    expect((await savedDay(page)).onLeaflet).toBe(0);
    await page.getByRole('button', { name: 'Another day' }).click();
    await page.getByText(/over the 2 days described/i).waitFor(SLOW);
    await page.goto(visit);
    await page
      .locator('.day-fold')
      .getByText(/over the 2 days described/i)
      .waitFor(SLOW);
    await page.locator('.day-fold-strip').waitFor();
    await page.goto(`${visit}/leaflet`);
    await page.locator('.told-strip').waitFor();
    expect(await page.locator('.told-strip').innerText()).not.toMatch(/\d/);
    await page.goto(`${visit}/diary`);
    await page.getByRole('article').waitFor();
    expect(await page.getByRole('article').getAttribute('lang')).toBe('es');
  },
);

demoTest(
  'a suggestion is tried and taken back; beer stays private; closing stores the sentence, which is then corrected with a reason',
  async ({ page, server }) => {
    await signIn(page, server);
    await openVisitOf(page, 'Petra');
    await answerQuestions(page, handsOn(page), ['safety']);
    const visit = page.url();
    // By the key of the page: a load of another one could come before the last answer is saved.
    await page.keyboard.press('-');
    await page.getByText('No day is told yet').waitFor();
    // The day with the fewest events: gum after a meal is what can be suggested.
    await page.keyboard.press('1');
    const moves = page.locator('.day-moves li');
    await moves.getByText('less a day').first().waitFor(SLOW);

    // Before and after, and taken back.
    const told = await savedDay(page);
    await page.keyboard.press('1');
    await page.getByText('with the change:').waitFor(SLOW);
    expect((await savedDay(page)).changed?.of).toBe(0);
    await page.keyboard.press('b');
    await page.getByText(SAID).waitFor(SLOW);
    expect(await savedDay(page)).toEqual(told);

    // Beer by name on the page of work, a drink once the patient looks or it goes on paper.
    await page.keyboard.press('a');
    await page.keyboard.type('21:10 beer');
    await page.getByRole('option').first().click();
    await page.getByText(/^Added at 21:.*Beer/).waitFor();
    await leaveFields(page);
    await page.keyboard.press('Control+Enter');
    await page.getByText('Shown to the patient.').waitFor();
    expect(await page.locator('main').innerText()).not.toMatch(/beer/i);
    expect(await page.locator('main').innerText()).toMatch(/A drink/);
    await page.keyboard.press('Control+Enter');
    expect(await page.locator('.day-events').innerText()).toMatch(/Beer/);
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('main').textContent()).not.toMatch(/beer\b/i);
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    const beforeClosing = await savedDay(page);

    // Closed: the page says what is stored, whatever the model would say today.
    await page.goto(visit);
    await page.locator('.day-fold').getByText(SAID).waitFor(SLOW);
    await page.keyboard.press('7');
    await page.keyboard.press('z');
    await page.getByText(/· closed/).waitFor(SLOW);
    const closed = await savedVisit(page);
    expect(closed.dayRecord?.days[0]?.headline).toMatch(SAID);
    expect(closed.input.visit.acidDay).toEqual(beforeClosing);
    const stored = 'In the model, roughly 9 to 10 hours a day on the acid side, as it was stored.';
    await page.route('**/api/visits/*', async (route) => {
      const bundle = (await (await route.fetch()).json()) as VisitBundle;
      await route.fulfill({
        json: {
          ...bundle,
          dayRecord: bundle.dayRecord && { ...bundle.dayRecord, days: [{ ...bundle.dayRecord.days[0], headline: stored }] },
        },
      });
    });
    await page.goto(`${visit}/day`);
    await picture(page).waitFor(SLOW);
    expect(await page.locator('.day-head .opening').innerText()).toContain(stored);
    await page.unrouteAll();
    expect(await page.locator('[data-event]').count()).toBe(0);

    // Corrected on the page of the day itself.
    await page.keyboard.press('c');
    await page.getByLabel(/What was wrong/).waitFor();
    await page.keyboard.type('breakfast was later');
    await page.keyboard.press('Enter');
    const bar = page.getByRole('region', { name: 'Correction', exact: true });
    await bar.waitFor();
    await page.keyboard.press('e');
    await page.keyboard.press('ArrowRight');
    await bar.getByText('The described day').waitFor();
    expect((await savedVisit(page)).input.visit.acidDay).toEqual(beforeClosing);
    await bar.getByRole('button', { name: 'Save the correction' }).click();
    const done = page.getByRole('region', { name: 'Corrections' });
    await done.waitFor(SLOW);
    expect(await done.innerText()).toMatch(/because breakfast was later/);
    const corrected = await savedVisit(page);
    expect(corrected.input.visit.acidDay?.days[0]?.events[0]?.startMinute).toBe((beforeClosing.days[0]?.events[0]?.startMinute ?? 0) + 5);
    expect(await page.locator('.day-head .opening').innerText()).toContain(corrected.dayRecord?.days[0]?.headline ?? 'no sentence');
    await expectNoBarriersInBothThemes(page, 'acid day of a closed visit');
  },
);
