import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoTest } from './demo.ts';
import { expectNoBarriers } from './expectNoBarriers.ts';
import { signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';
import { type Answers, answerQuestions, handsOn } from './visitKeys.ts';

interface Person {
  readonly name: string;
  /** As it is keyed. */
  readonly birthday: string;
  readonly answers: Answers;
  /** Two digits of a tooth, then the keys of a finding. */
  readonly finding: readonly string[];
}

const LANGUAGES = ['English', 'Spanish', 'French', 'Arabic'] as const;
const plan = (page: Page) => page.getByRole('region', { name: 'Plan' });

/** A new person from the first page to a confirmed level, by keys. */
async function workThrough(page: Page, server: RunningServer, { name, birthday, answers, finding }: Person): Promise<void> {
  await signIn(page, server);
  const hands = handsOn(page);
  await hands.type(name);
  await hands.press('Enter');
  await hands.type(birthday);
  await hands.press('Enter');
  await page.getByRole('heading', { level: 1, name: new RegExp(`^${name}, \\d+`) }).waitFor();
  await answerQuestions(page, hands, ['safety'], answers);
  await hands.press('3');
  await answerQuestions(page, hands, ['food', 'home', 'health', 'look'], answers);
  for (const key of ['4', 'f', ...finding, '5', 'c']) await hands.press(key);
  await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
  await plan(page).locator('[data-line]').first().waitFor();
  await expectDrawnDay(page);
}

/** Under the plan stands its day: one sentence, the strip, and its table one press away; what is assumed is said. */
async function expectDrawnDay(page: Page): Promise<void> {
  const day = plan(page).locator('figure.uses-of-day').first();
  await day.locator('svg').first().waitFor();
  expect(await plan(page).innerText()).toMatch(/How the days run was not asked/);
  await day.getByText('Show as table').click();
  expect(await day.getByRole('row').count()).toBeGreaterThan(2);
}

/** The leaflet of the visit that is open, printed in each language: one page, in its direction, with the name of the person. */
async function printLeaflets(page: Page, { name }: Person): Promise<ReadonlyMap<string, string>> {
  await page.goto(`${page.url()}/leaflet`);
  const words = new Map<string, string>();
  for (const language of LANGUAGES) {
    const sheet = page.getByRole('article');
    await page.getByRole('combobox', { name: 'Language' }).selectOption({ label: language });
    await page.locator(`article[lang="${LANGUAGE_CODES[language]}"]`).waitFor();
    expect(await sheet.getAttribute('dir')).toBe(language === 'Arabic' ? 'rtl' : 'ltr');
    const pdf = await page.pdf({ preferCSSPageSize: true, format: 'A4' });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g), language).toHaveLength(1);
    keep(pdf, `${name}-${language}`);
    expect(await sheet.locator('.day svg.sheet-row').count()).toBe(1);
    words.set(language, await sheet.innerText());
    expect(words.get(language)).toContain(name);
    await printLarge(page, `${name}-${language}`);
  }
  return words;
}

/** Letter holds less. */
const LARGE_PAPERS = process.env.EBBLINE_LONG === '1' || process.env.EBBLINE_LEAFLETS ? ['A4', 'Letter'] : ['Letter'];

/** The page that is shown, in large print on paper: at most two pages, no type below 18 pt, every word of the ordinary page. */
async function printLarge(page: Page, name: string): Promise<void> {
  const isLarge = page.getByRole('checkbox', { name: 'Large print' });
  const sheet = page.getByRole('article');
  const ordinary = await sheet.innerText();
  await isLarge.check();
  for (const format of LARGE_PAPERS) {
    const pdf = await page.pdf({ preferCSSPageSize: true, format });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length, `${name}, large, ${format}`).toBeLessThanOrEqual(2);
    keep(pdf, `${name}-large-${format}`);
  }
  expect(await smallestTypePx(sheet)).toBeGreaterThanOrEqual(24);
  const printed = withoutSpaces(await sheet.innerText());
  for (const said of ordinary.split('\n')) if (!isFoot(said)) expect(printed, name).toContain(withoutSpaces(said));
  await isLarge.uncheck();
}

const withoutSpaces = (text: string): string => text.replace(/\s/g, '');
/** In large print the last line says no number of pages: the printer knows it. */
const isFoot = (said: string): boolean => / · .* · /.test(said);

/** 18 pt are 24 px. Words in a drawing are measured in its own units. */
const smallestTypePx = (sheet: Locator): Promise<number> =>
  sheet.evaluate((root) =>
    Math.min(...[...root.querySelectorAll('p, h1, h2, h3, li')].map((part) => Number.parseFloat(getComputedStyle(part).fontSize))),
  );

const LANGUAGE_CODES = { English: 'en', Spanish: 'es', French: 'fr', Arabic: 'ar' } as const;

/** To be opened and looked at: `EBBLINE_LEAFLETS=folder npx vitest run --project browser test/browser/fourPeople.test.ts`. */
function keep(pdf: Buffer, name: string): void {
  const folder = process.env.EBBLINE_LEAFLETS;
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name.replaceAll(' ', '-').toLowerCase()}.pdf`), pdf);
}

demoTest(
  'a child of four with a milk allergy: the paste of her age and varnish, nothing of milk, nothing to chew',
  async ({ page, server }) => {
    const child: Person = {
      name: 'Pelle Aubrac',
      birthday: '20220714',
      answers: {
        speaker: '2',
        allergies: ['Milk protein'],
        weight_kg: '16.2',
        can_spit: 'n',
        snacks_per_day: '5',
        sugars_at_meals: 'n',
        paste_strength: '2',
      },
      finding: ['5', '1', '4', '1', '1'],
    };
    await workThrough(page, server, child);
    const says = await plan(page).innerText();
    expect(says).toMatch(/Paste, sodium fluoride .* \(1,000 ppm F\), twice a day/);
    expect(says).toMatch(/Varnish, sodium fluoride 5 %/);
    expect(says).toMatch(/Not offered, because: .*casein.*\(milk allergy: it holds milk protein\)/);
    expect(linesOf(says)).not.toMatch(/gum|rinse|lozenge|casein|5,000|2,800/i);
    const words = await printLeaflets(page, child);
    for (const text of words.values()) expect(text).not.toMatch(/casein|caseína|caséine|كازيين/i);
    expect(words.get('English')).toMatch(/Mild fluoride paste: brush every tooth\.\s+Wipe off what is left\./);
  },
);

demoTest(
  'a pregnant woman: varnish without alcohol, no alcohol in a rinse, what is strong waits; her pregnancy stands on no leaflet',
  async ({ page, server }) => {
    const pregnant: Person = {
      name: 'Noor Lisle',
      birthday: '19960302',
      answers: { pregnant: '2', snacks_per_day: '5', sugars_at_meals: 'n' },
      finding: ['1', '3', '4', '1', '1'],
    };
    await workThrough(page, server, pregnant);
    const says = await plan(page).innerText();
    expect(says).toMatch(/Varnish, .*no colophony, no alcohol, today/);
    expect(says).toMatch(/ppm F\), twice a day\s+waiting for Dr\. Ahlgren's signature/);
    expect(says).toMatch(/Not offered, because: .*with alcohol \(pregnancy: this pack holds alcohol\)/);
    expect(linesOf(says)).not.toMatch(/with colophony|with alcohol|hypochlorite|silver|iodine/i);
    const words = await printLeaflets(page, pregnant);
    // Everybody is asked to tell of a pregnancy, in one sentence.
    for (const [language, text] of words) expect(text.match(/pregnan|embaraz|enceinte|grossesse|حامل|حمل/gi), language).toHaveLength(1);
    // Nobody has signed the strong paste.
    expect(words.get('English')).not.toMatch(/2,800|5,000/);
  },
);

demoTest(
  'a woman of 78 with a dry mouth and root lesions: strong paste before silver, no acid gel, and a lighter regimen beside the full one',
  async ({ page, server }) => {
    const old: Person = {
      name: 'Edda Farrow',
      birthday: '19480509',
      answers: { dry_mouth: '3', saliva_look: '3', snacks_per_day: '4' },
      finding: ['3', '3', '6', '5', '1'],
    };
    await workThrough(page, server, old);
    const says = await plan(page).innerText();
    expect(says).toMatch(/Paste, sodium fluoride 1\.1 % \(5,000 ppm F\), twice a day\s+waiting for Dr\. Ahlgren's signature/);
    expect(says).toMatch(/Spray, saliva substitute/);
    expect(says).toMatch(/acidulated phosphate fluoride .*\(dry mouth: no acid gel in a dry mouth\)/);
    expect(linesOf(says)).not.toMatch(/silver|acidulated|with alcohol, /i);
    // The other regimen asks for less and says what it leaves open; one key takes it, the same key brings the first back.
    const [full, lighter] = tasksSaid(says);
    expect(lighter).toBeLessThanOrEqual((full ?? 0) / 2);
    expect(says).toMatch(/Leaves open: .*\. The best of those with at most \d+ tasks a day, a limit of our own\./);
    await page.keyboard.press('6');
    await page.keyboard.press('o');
    await expect.poll(async () => tasksSaid(await plan(page).innerText())[0]).toBe(lighter);
    await page.keyboard.press('o');
    await expect.poll(async () => tasksSaid(await plan(page).innerText())[0]).toBe(full);
    await page.keyboard.press('o');
    await expect.poll(async () => tasksSaid(await plan(page).innerText())[0]).toBe(lighter);
    const words = await printLeaflets(page, old);
    expect(words.get('English')).not.toMatch(/5,000/);
  },
);

demoTest('a man with asthma: no varnish, with the reason, and what a dentist may give in its place', async ({ page, server }) => {
  const asthma: Person = {
    name: 'Jonah Reeve',
    birthday: '19900117',
    answers: { conditions: ['Asthma'], snacks_per_day: '5', sugars_at_meals: 'n' },
    finding: ['1', '3', '4', '1', '1'],
  };
  await workThrough(page, server, asthma);
  const says = await plan(page).innerText();
  expect(linesOf(says)).not.toMatch(/varnish|hypochlorite/i);
  expect(says.match(/\(asthma: the label of fluoride varnish names asthma\)/g)).toHaveLength(2);
  expect(says).toMatch(/Gel, .*today\s+waiting for Dr\. Ahlgren's signature/);
  const words = await printLeaflets(page, asthma);
  for (const text of words.values()) expect(text).not.toMatch(/varnish|barniz|vernis|ورنيش/i);
  await expectPrintKept(page, asthma);
});

/** What is chosen for this page alone is gone with it; what is kept of the person stands there again, until it is taken back. */
async function expectPrintKept(page: Page, { name }: Person): Promise<void> {
  const sheet = page.locator('article.sheet');
  const isLarge = page.getByRole('checkbox', { name: 'Large print' });
  const keepButton = page.getByRole('button', { name: `Keep this for ${name}` });
  const choose = async () => {
    await page.getByRole('combobox', { name: 'Language' }).selectOption({ label: 'Spanish' });
    await isLarge.check();
    await keepButton.waitFor();
  };
  const begin = async (lang: string) => {
    await page.reload();
    await page.locator(`article[lang="${lang}"]`).waitFor();
    return { isLarge: await isLarge.isChecked(), isOffered: (await keepButton.count()) > 0 };
  };
  expect(await begin('en')).toEqual({ isLarge: false, isOffered: false });
  await choose();
  expect(await begin('en')).toEqual({ isLarge: false, isOffered: false });
  await choose();
  await keepButton.press('Enter');
  await page.getByText('Kept: Spanish, large print.').waitFor();
  await expectNoBarriers(page, 'Leaflet, kept');
  expect(await begin('es')).toEqual({ isLarge: true, isOffered: false });
  expect(await sheet.getAttribute('class')).toContain('large');
  await page.getByRole('combobox', { name: 'Language' }).selectOption({ label: 'French' });
  await keepButton.press('Enter');
  await page.getByText('Kept: French, large print.').waitFor();
  await page.getByRole('button', { name: 'Undo' }).press('Enter');
  await keepButton.waitFor();
  expect(await begin('es')).toEqual({ isLarge: true, isOffered: false });
}

/** What is proposed, before what is not. */
const linesOf = (says: string): string => says.split(/Not offered, because:/)[0] ?? '';
const tasksSaid = (says: string): readonly number[] => [...says.matchAll(/(\d+) tasks? a day at home/g)].map(([, n]) => Number(n));
