/**
 * Takes every screen of the demonstration, light, dark and printed, into docs/pictures. Run: npx tsx scripts/pictures.ts
 * With `acid-day` or `fluids` only the pictures of those are taken anew.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { startDemo } from '../test/browser/demoTemplate.ts';
import { openVisitOf, signIn } from '../test/browser/pageSteps.ts';
import type { RunningServer } from '../test/browser/startServer.ts';
import { answerQuestions, handsOn } from '../test/browser/visitKeys.ts';
import { findChromium } from './tools.mjs';

const OUT = fileURLToPath(new URL('../docs/pictures', import.meta.url));
const WIDE = { width: 1280, height: 860 };
const PHONE = { width: 390, height: 844 };
const PDF_DPI = '70';
const PASTED = `time;chart number;name;birthday
9:00;1001;Una O'Neil;04/03/1980
9:30;1002;سارة الحداد;25/12/1970
10:99;1003;Ben Ode;01/02/2015
11:00;1004;Henrik Varghese;1950-01-01`;

const executablePath = findChromium();
if (!executablePath) throw new Error('Chromium is not installed');
// Chromium's sandbox refuses to run as root.
const browser = await chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
const folder = mkdtempSync(join(tmpdir(), 'ebbline-pictures-'));
const server = await startDemo();
const wanted = process.argv.slice(2);
if (wanted.length === 0) rmSync(OUT, { recursive: true, force: true });
mkdirSync(OUT, { recursive: true });
try {
  if (wanted.length > 0) await takeSome(browser, server);
  else {
    await takeAll(browser, server);
    for (const language of ['en', 'es']) drawLeafletPdf(language);
  }
} finally {
  await browser.close();
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
}
const bytes = readdirSync(OUT).reduce((sum, file) => sum + statSync(join(OUT, file)).size, 0);
console.log(`${readdirSync(OUT).length} pictures, ${Math.round(bytes / 1024)} kB`);

async function takeSome(chrome: Browser, demo: RunningServer): Promise<void> {
  const page = await chrome.newPage({ viewport: WIDE });
  await signIn(page, demo);
  if (wanted.includes('fluids')) await takePage(page, demo, 'fluids');
  if (!wanted.includes('acid-day')) return;
  await openVisitOf(page, 'Petra');
  await answerQuestions(page, handsOn(page), ['safety']);
  await takeAcidDay(page, page.url());
}

async function takePage(page: Page, demo: RunningServer, name: string): Promise<void> {
  await page.goto(`${demo.url}/${name}`);
  await page.getByRole('heading', { level: 2 }).or(page.locator('tbody')).first().waitFor();
  await inBothThemes(page, name);
  await printed(page, name);
}

async function takeAll(chrome: Browser, demo: RunningServer): Promise<void> {
  const page = await chrome.newPage({ viewport: WIDE });
  await page.goto(demo.url);
  await page.getByRole('radio').first().waitFor();
  await inBothThemes(page, 'sign-in');

  await signIn(page, demo);
  await page.locator('.day-line').first().waitFor();
  await page.getByRole('heading', { name: 'Waiting for a signature' }).waitFor();
  await inBothThemes(page, 'today', { fullPage: true });
  await printed(page, 'today');
  await page.getByRole('link', { name: 'sheets for the waiting room' }).click();
  await page.getByRole('article').first().waitFor();
  await printed(page, 'waiting-room-sheets');
  await pasteList(page, demo);
  await page.goto(`${demo.url}/people`);
  await page.locator('tbody tr').first().waitFor();
  await inBothThemes(page, 'people');
  await printed(page, 'people');
  await page.getByRole('row', { name: /Kezia/ }).getByRole('link', { name: 'person' }).click();
  await page.getByRole('heading', { level: 1, name: /Kezia/ }).waitFor();
  await inBothThemes(page, 'person', { fullPage: true });
  await printed(page, 'person');

  await signIn(page, demo);

  await openVisitOf(page, 'Maud');
  await inBothThemes(page, 'visit-begun');
  await workThroughVisit(page);
  await inBothThemes(page, 'visit', { fullPage: true });
  await printed(page, 'visit');
  const visit = page.url();
  await showNote(page);
  await page.getByRole('button', { name: 'Show patient' }).click();
  await inBothThemes(page, 'visit-shown-to-patient');
  await page.getByRole('button', { name: 'Back to work' }).click();
  await page.setViewportSize(PHONE);
  await inBothThemes(page, 'visit-phone');
  await page.setViewportSize(WIDE);

  await takeAcidDay(page, visit);
  await takeSwab(page, demo);

  await signAsDentist(chrome, demo, visit);
  await page.goto(`${visit}/leaflet`);
  await page.getByRole('article').waitFor();
  await inBothThemes(page, 'leaflet-screen');
  await printed(page, 'leaflet-english');

  await signIn(page, demo);
  await openVisitOf(page, 'Carmen');
  await workThroughVisit(page);
  const spanish = page.url();
  await signAsDentist(chrome, demo, spanish);
  await page.goto(`${spanish}/leaflet`);
  await page.getByRole('article').waitFor();
  await printed(page, 'leaflet-spanish');

  await page.goto(`${demo.url}/people`);
  await page
    .getByRole('row', { name: /Henrik/ })
    .getByRole('link', { name: 'over time' })
    .click();
  await page.getByRole('heading', { name: 'Readings' }).waitFor();
  await inBothThemes(page, 'over-time', { fullPage: true });
  await printed(page, 'over-time');
  await takeChecks(page, demo);
  await takeStudies(page, demo);
  for (const name of ['shelf', 'rules', 'practice', 'fluids']) await takePage(page, demo, name);
  await page.goto(`${demo.url}/shelf/new`);
  await page.getByLabel('Kind').selectOption('F_PASTE_STD');
  await page.getByLabel('Fluoride compound').selectOption('NaF');
  await page.getByLabel('Strength of the compound').fill('0.32');
  await page.getByLabel('Checked on the pack').check();
  await inBothThemes(page, 'shelf-item', { fullPage: true });
}

/** The chart note as it stands where the browser does not copy by itself. */
async function showNote(page: Page): Promise<void> {
  await page.evaluate(() => Object.defineProperty(navigator, 'clipboard', { value: undefined }));
  await page.keyboard.press('.');
  await page.getByRole('textbox', { name: 'Chart note' }).waitFor();
  await inBothThemes(page, 'note');
  await page.keyboard.press('Escape');
}

/** A ready-made day with the best change tried on it. */
async function takeAcidDay(page: Page, visit: string): Promise<void> {
  await page.goto(`${visit}/day`);
  await page.getByText('No day is told yet').waitFor();
  await page.keyboard.press('2');
  await page.locator('.day-moves').getByText('less a day').first().waitFor({ timeout: 60_000 });
  await inBothThemes(page, 'acid-day');
  await page.keyboard.press('1');
  await page.getByText('with the change:').waitFor({ timeout: 60_000 });
  await inBothThemes(page, 'acid-day-changed', { fullPage: true });
  await printed(page, 'acid-day');
  await page.keyboard.press('b');
}

/** The assistant's page where the path is drawn, and the card that it prints for the wall. */
async function takeSwab(page: Page, demo: RunningServer): Promise<void> {
  await signIn(page, demo);
  await openVisitOf(page, 'Petra');
  await page.goto(`${page.url()}/swab`);
  for (const step of ['before-cleaning', 'since', 'taken-by']) {
    await page.locator(`[data-step="${step}"]`).waitFor();
    await page.keyboard.press(step === 'taken-by' ? '1' : 'y');
  }
  await page.locator('[data-step="site"]').waitFor();
  await inBothThemes(page, 'swab');
  await printed(page, 'swab-card');
}

/** A list with a wrong time and a namesake, looked at and thrown away. */
async function pasteList(page: Page, demo: RunningServer): Promise<void> {
  await page.goto(`${demo.url}/day/2027-01-11/fill`);
  await page.getByLabel('Rows').fill(PASTED);
  await page.getByRole('button', { name: 'Look at the rows' }).click();
  await page.getByText(/can be taken/).waitFor();
  await inBothThemes(page, 'day-from-a-list', { fullPage: true });
}

/** A returning person with a swab, more snacks than last time and one new white spot. */
async function workThroughVisit(page: Page): Promise<void> {
  const hands = handsOn(page);
  await answerQuestions(page, hands, ['safety']);
  for (const key of ['r', ...'5150', 'Enter', 'u']) await hands.press(key);
  for (const key of ['a', '4', 'Escape']) await hands.press(key);
  await answerQuestions(page, hands, ['food', 'home', 'health', 'look']);
  for (const key of ['4', 'f', ...'13', '4', '1', '1']) await hands.press(key);
  await hands.press('5');
  await hands.press('c');
  await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
  for (const key of ['7', '=']) await hands.press(key);
  await page.getByText(/^saved/).waitFor();
}

async function signAsDentist(chrome: Browser, demo: RunningServer, visit: string): Promise<void> {
  const page = await chrome.newPage({ viewport: WIDE });
  await page.goto(demo.url);
  await page.getByRole('radio', { name: /Ahlgren/ }).check();
  await page.getByLabel('Password').fill('demo');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Today, / }).waitFor();
  await page.locator('[data-signing]').first().waitFor();
  await inBothThemes(page, 'signing-queue');
  await page.goto(visit);
  await page.getByRole('heading', { name: 'Plan' }).waitFor();
  const sign = page.getByRole('button', { name: 'Sign', exact: true });
  for (let left = await sign.count(); left > 0; left -= 1) {
    await sign.first().click();
    await sign.nth(left - 1).waitFor({ state: 'detached' });
  }
  await page.goto(`${visit}/prescriptions`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await printed(page, 'prescription');
  await page.goto(demo.url);
  await page.getByRole('button', { name: 'hide the screen' }).click();
  await page.getByRole('dialog').or(page.getByRole('textbox')).first().waitFor();
  await inBothThemes(page, 'screen-hidden');
  await page.context().close();
}

/** Today's control, meters, lots and hands, and how it looks on a phone. */
async function takeChecks(page: Page, demo: RunningServer): Promise<void> {
  await page.goto(`${demo.url}/checks`);
  await page.getByRole('heading', { level: 1, name: 'Swab checks' }).waitFor();
  await inBothThemes(page, 'checks', { fullPage: true });
  await printed(page, 'checks');
  await page.setViewportSize(PHONE);
  await page.getByRole('region', { name: 'Hands' }).scrollIntoViewIfNeeded();
  await inBothThemes(page, 'checks-phone');
  await page.setViewportSize(WIDE);
}

/** A study while it is planned, while it runs, on its run sheet, and once it is reported. */
async function takeStudies(page: Page, demo: RunningServer): Promise<void> {
  await page.goto(`${demo.url}/checks/studies/new`);
  await page.locator('.plan-answer .opening').waitFor();
  await inBothThemes(page, 'study-plan', { fullPage: true });
  for (const [name, link] of [
    ['study-running', /^People from day to day/],
    ['study-report', /^Hands and swabs/],
  ] as const) {
    await page.goto(`${demo.url}/checks/studies`);
    await page.getByRole('link', { name: link }).click();
    await page.locator('.study-links').waitFor();
    await inBothThemes(page, name);
    await printed(page, name);
  }
  await page.getByRole('link', { name: 'Run sheet to print' }).click();
  await page.getByRole('article').waitFor();
  await printed(page, 'study-run-sheet');
}

async function inBothThemes(page: Page, name: string, { fullPage = false } = {}): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    writeFileSync(join(OUT, `${name}-${colorScheme}.png`), await page.screenshot({ fullPage, animations: 'disabled' }));
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

/** The first page as a printer gets it. Needs pdftoppm (poppler-utils) to turn the PDF into a picture. */
async function printed(page: Page, name: string): Promise<void> {
  const pdf = join(folder, `${name}.pdf`);
  writeFileSync(pdf, await page.pdf({ format: 'A4', preferCSSPageSize: true }));
  drawFirstPage(pdf, `${name}-print`);
}

/** The leaflet of the command line, which sets its page without a browser. */
function drawLeafletPdf(language: string): void {
  const pdf = join(folder, `leaflet-${language}.pdf`);
  execFileSync(process.execPath, ['dist/cli.js', 'leaflet', 'examples/01-returning-adult.json', '--pdf', pdf, '--language', language]);
  drawFirstPage(pdf, `leaflet-pdf-${language}`);
}

function drawFirstPage(pdf: string, name: string): void {
  execFileSync('pdftoppm', ['-png', '-gray', '-r', PDF_DPI, '-f', '1', '-l', '1', '-singlefile', pdf, join(OUT, name)]);
}
