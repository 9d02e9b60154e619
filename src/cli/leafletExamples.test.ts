import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { leafletProse } from '../../test/leaflet/listLeafletTexts.ts';
import { measureEnglish, measureFrench, measureSpanish } from '../../test/leaflet/measureReading.ts';
import { content } from '../content/allContent.ts';
import { privateConditions } from '../content/conditions.ts';
import { LEAFLET_LANGUAGES } from '../core/leaflet/languages.ts';
import { nameOnLeaflet } from '../core/leaflet/nameOnLeaflet.ts';
import type { LeafletLanguage } from '../core/leaflet/types.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { countPages, renderLeafletPdf } from './leafletPdf.tsx';
import { readVisit } from './readVisit.ts';

const files = readdirSync('examples').filter((file) => file.endsWith('.json'));

/** What no page may hold beside the words of the table, which have their own test: numbers of a reading, levels, private answers. */
const NEVER = /RLU|\bATP\b|%|\brisk\b|riesgo|\b(low|moderate|high|extreme)\b|cut-?off|probab/i;

/** The fullest pages in the language and on the paper that hold least; EBBLINE_LONG=1: every example, language and paper. */
const FULLEST = [
  { file: '03-dry-mouth.json', language: 'es', page: 'LETTER' },
  { file: '09-milk-allergy.json', language: 'ar', page: 'LETTER' },
  { file: '12-acid-wear.json', language: 'fr', page: 'LETTER' },
] as const;

const sheetsOf = (file: string) =>
  process.env.EBBLINE_LONG === '1'
    ? LEAFLET_LANGUAGES.flatMap((language) => (['A4', 'LETTER'] as const).map((page) => ({ language, page })))
    : FULLEST.filter((sheet) => sheet.file === file);

describe.each(files)('%s', (file) => {
  const input = readVisit(JSON.parse(readFileSync(`examples/${file}`, 'utf8')));
  const assessIn = (language: LeafletLanguage) => assessVisit({ ...input, visit: { ...input.visit, language } }, content);

  test.each(['es', 'fr'] as const)('fits the shorter sheet in a longer language: %s', async (language) => {
    expect(countPages(await renderLeafletPdf(assessIn(language).leaflet, { page: 'LETTER' }))).toBe(1);
  });

  test.each(sheetsOf(file))('two pages of large print hold it: $language, $page', async ({ language, page }) => {
    expect(countPages(await renderLeafletPdf(assessIn(language).leaflet, { page, largePrint: true }))).toBeLessThanOrEqual(2);
  });

  test.each(LEAFLET_LANGUAGES)('%s: nothing private, unsigned or measured on it', (language) => {
    const { leaflet, plan } = assessIn(language);
    const text = JSON.stringify(leaflet);
    expect(text).not.toMatch(NEVER);
    for (const { label } of privateConditions) expect(text.toLowerCase()).not.toContain(label.toLowerCase());
    const rlu = input.visit.reading?.rlu;
    if (rlu !== undefined) expect(text).not.toContain(String(rlu));
    for (const line of plan.lines.filter(({ state }) => state === 'waiting-for-signature')) {
      const item = input.practice.shelf.find(({ id }) => id === line.shelfItemId);
      expect(text.toLowerCase()).not.toContain(item && nameOnLeaflet(item, language).text.toLowerCase());
    }
  });

  // The visit asks about pregnancy from 11 and below 56.
  test.each(LEAFLET_LANGUAGES)('%s: a pregnancy is spoken of only at an age at which the visit asks', (language) => {
    const { leaflet, ageYears, plan } = assessIn(language);
    const isSaid = plan.lines.length > 0 && ageYears >= 11 && ageYears < 56;
    expect(/pregnan|embaraz|enceinte|حمل/.test(leaflet.cautions.join(' '))).toBe(isSaid);
  });

  test('grade 6 or easier in each language that has a formula', () => {
    expect(measureEnglish(leafletProse(assessIn('en').leaflet)).fleschKincaidGrade).toBeLessThanOrEqual(6);
    expect(measureSpanish(leafletProse(assessIn('es').leaflet)).fernandezHuerta).toBeGreaterThanOrEqual(70);
    expect(measureFrench(leafletProse(assessIn('fr').leaflet)).kandelMoles).toBeGreaterThanOrEqual(75);
  });
});

test('there are examples to look at', () => {
  expect(files.length).toBeGreaterThan(5);
});
