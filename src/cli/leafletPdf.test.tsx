import { describe, expect, test, vi } from 'vitest';
import { buildCase } from '../../test/leaflet/buildCase.ts';
import { caseShelf, demoCases, leafletCases } from '../../test/leaflet/leafletCases.ts';
import { readPdf } from '../../test/leaflet/readPdf.ts';
import { demoShelf } from '../content/demo/shelf.ts';
import { leafletTable } from '../content/texts/leafletTable.ts';
import type { Leaflet } from '../core/leaflet/types.ts';
import { countPages, renderLeafletPdf } from './leafletPdf.tsx';

const [adult, , child, , everything] = leafletCases;
if (adult === undefined || child === undefined || everything === undefined) throw new Error('cases are missing');
const leaflet = buildCase(adult, 'en', leafletTable);
const withoutSpaces = (text: string) => text.replace(/\s/g, '');

/** The longer languages on the shorter sheet, and the other pair. */
const SHEETS = [
  { page: 'A4', width: 595.28, height: 841.89, language: 'en' },
  { page: 'LETTER', width: 612, height: 792, language: 'es' },
  { page: 'LETTER', width: 612, height: 792, language: 'fr' },
] as const;

const shelf = [...caseShelf, ...demoShelf];

describe.each([...leafletCases, ...demoCases])('$name', (one) => {
  test.each(SHEETS)(
    '$language on $page: one page, every word, type of 12 pt and more but for the foot',
    async ({ page, width, height, language }) => {
      const built = buildCase(one, language, leafletTable, shelf);
      const pdf = readPdf(await renderLeafletPdf(built, { page }));
      expect(pdf.pages).toBe(1);
      expect(pdf.sizePt[0]).toBeCloseTo(width, 1);
      expect(pdf.sizePt[1]).toBeCloseTo(height, 1);
      const text = withoutSpaces(pdf.text);
      for (const said of wordsOn(built)) expect(text).toContain(withoutSpaces(said));
      expect(text).not.toContain('?');
      expect(pdf.fonts.every((font) => font.startsWith('AtkinsonHyperlegibleNext'))).toBe(true);
      const [foot, ...body] = pdf.typeSizesPt;
      expect(foot).toBe(9.5);
      expect(Math.min(...body)).toBeGreaterThanOrEqual(12);
    },
  );
});

/** Everything that the page must say. Labels of blocks that are empty are not on it. */
function wordsOn(built: Leaflet): readonly string[] {
  const { labels } = built;
  return [
    ...[
      built.title,
      built.personName,
      built.practiceName,
      built.date,
      labels.keep,
      built.keep,
      labels.cautions,
      labels.next,
      built.nextDate,
      built.foot,
      ...built.call,
    ],
    ...(built.review === null ? [] : [built.review]),
    ...(built.who === null ? [] : [`${built.labels.who}: ${built.who}`]),
    ...(built.tryThis === null ? [] : [labels.try, built.tryThis]),
    ...built.day.flatMap(({ when, time, text, amount }) => [time ?? built.slots[when], text, ...(amount ? [amount.text] : [])]),
    ...built.cautions,
    ...built.stopUsing,
    ...(built.monthlyCost === null ? [] : [labels.cost, built.monthlyCost]),
    ...built.signedBy,
    ...(built.demoNotice === null ? [] : [built.demoNotice]),
  ].filter((said) => said !== labels.cautions || built.cautions.length > 0);
}

test('an ordinary page stands in 14 pt; a full one in smaller type, never below 12', async () => {
  const ordinary = readPdf(await renderLeafletPdf(leaflet, { page: 'A4' }));
  const full = readPdf(await renderLeafletPdf(buildCase(everything, 'es', leafletTable), { page: 'LETTER' }));
  expect(ordinary.typeSizesPt).toContain(14);
  expect(full.typeSizesPt).not.toContain(14);
});

// 1 mm = 72 / 25.4 = 2.834646 pt. The pea is a filled circle 7 mm wide. Exact to the printed digits.
test('amounts are drawn in true size', async () => {
  const { drawing } = readPdf(await renderLeafletPdf(buildCase(child, 'en', leafletTable), { page: 'A4' }));
  const scales = [...drawing.matchAll(/^([\d.]+) 0 0 ([\d.]+) 0 0 cm$/gm)]
    .map(([, x, y]) => [Number(x), Number(y)])
    .filter(([x]) => x !== 1);
  expect(scales).not.toEqual([]);
  for (const [x, y] of scales) expect([x, y]).toEqual([2.834646, 2.834646]);
  const pea = /scn\n([\s\S]*?)\nh\nf/.exec(drawing.slice(drawing.lastIndexOf('2.834646')))?.[1] ?? '';
  const across = [...pea.matchAll(/([\d.]+) [\d.]+ [ml]\n/g)].map(([, x]) => Number(x));
  const curves = [...pea.matchAll(/([\d.]+) [\d.]+ c\n/g)].map(([, x]) => Number(x));
  expect(Math.max(...across, ...curves) - Math.min(...across, ...curves)).toBeCloseTo(7, 3);
});

test('letters of many names are set; a sign without a glyph is refused, not left out', async () => {
  const named = (personName: string) => renderLeafletPdf({ ...leaflet, personName }, { page: 'A4' });
  expect(readPdf(await named('Łucja Šimková-Dvořák')).text).toContain('Łucja Šimková-Dvořák');
  await expect(named('李雷')).rejects.toThrow('李雷');
});

test.each(['محمد العبد', 'سارة O’Neil', "D'Arcy O'Brien-Łukasz"])(
  'the name %s is set in head and foot, and leaves the date beside it alone',
  async (personName) => {
    const foot = leaflet.foot.replace(leaflet.personName, personName);
    const pdf = readPdf(await renderLeafletPdf({ ...leaflet, personName, foot }, { page: 'A4' }));
    expect(pdf.pages).toBe(1);
    expect(pdf.text).toContain(foot.slice(personName.length).trim());
    // Drawn from right to left, the letters stand the other way round in the file.
    const letters = (text: string) => [...text.replace(/\s/g, '')].sort().join('');
    const head = pdf.text.slice(leaflet.title.length, pdf.text.indexOf(leaflet.practiceName));
    expect(letters(head)).toBe(letters(personName));
  },
);

test('Arabic letters on a page of another language are refused, but for the name', async () => {
  await expect(renderLeafletPdf({ ...leaflet, keep: 'محمد' }, { page: 'A4' })).rejects.toThrow('محمد');
});

// The letters that this renderer writes into the file for Arabic glyphs are not the ones drawn, so the drawing is looked at by eye; what is
// held here is the order: digits as they are read, and the full stop and bracket of a sentence on its left, which is drawn first.
test('a page in Arabic: one page, from right to left, with the digits of the pack', async () => {
  const arabic = buildCase(child, 'ar', leafletTable, shelf);
  const pdf = readPdf(await renderLeafletPdf(arabic, { page: 'LETTER' }));
  expect(pdf.pages).toBe(1);
  expect(pdf.fonts).toContain('Vazirmatn-Regular');
  expect(arabic.nextDate).toMatch(/\(.* 2027\)\.$/);
  expect(pdf.text).toMatch(/\.\(2027 /);
  expect(JSON.stringify(arabic)).not.toMatch(/[٠-٩]/);
  const [foot, ...body] = pdf.typeSizesPt;
  expect([foot, Math.min(...body)]).toEqual([9.5, 12]);
});

describe('in large print', () => {
  const isLarge = { page: 'LETTER', largePrint: true } as const;

  test.each(['en', 'es', 'ar'] as const)('%s: two pages, nothing below 18 pt, each page says which of how many it is', async (language) => {
    const built = buildCase(everything, language, leafletTable, shelf);
    const pdf = readPdf(await renderLeafletPdf(built, isLarge));
    expect(pdf.pages).toBe(2);
    expect(Math.min(...pdf.typeSizesPt)).toBeGreaterThanOrEqual(18);
    expectOnPaper(pdf.drawing);
    if (language === 'ar') return;
    const text = withoutSpaces(pdf.text);
    for (const said of wordsOn(built)) if (said !== built.foot) expect(text).toContain(withoutSpaces(said));
    for (const page of [1, 2]) expect(text).toContain(withoutSpaces(pageSaid(built, page)));
  });

  test('what two pages do not hold goes on a third, with the drawings', async () => {
    const cautions = Array.from({ length: 30 }, (_, i) => `${i} ${leaflet.cautions[0]}`);
    const pdf = readPdf(await renderLeafletPdf({ ...leaflet, cautions }, isLarge));
    expect(pdf.pages).toBeGreaterThan(2);
    const text = withoutSpaces(pdf.text);
    for (const said of [...cautions, leaflet.nextDate, ...leaflet.call]) expect(text).toContain(withoutSpaces(said));
    expect(pdf.drawing).toMatch(/^2\.834646 0 0 2\.834646 0 0 cm$/m);
  });

  const pageSaid = ({ footPages, personName }: Leaflet, page: number) =>
    footPages.replace(`${personName} · `, '').replace('{page}', String(page)).replace('{pages}', '2');

  /** What is moved further than a paper is long is drawn where nobody sees it. */
  function expectOnPaper(drawing: string): void {
    const moves = [...drawing.matchAll(/^1 0 0 -?1 ([-\d.]+) ([-\d.]+) cm$/gm)].flatMap(([, x, y]) => [
      Math.abs(Number(x)),
      Math.abs(Number(y)),
    ]);
    expect(moves.length).toBeGreaterThan(10);
    expect(Math.max(...moves)).toBeLessThan(850);
  }
});

test('more than a page holds is refused, not cut off', async () => {
  const cautions = Array.from({ length: 40 }, (_, i) => `${i} ${leaflet.cautions[0]}`);
  await expect(renderLeafletPdf({ ...leaflet, cautions }, { page: 'A4' })).rejects.toThrow('does not fit one page');
});

test("pages are counted in this renderer's files", async () => {
  expect(countPages(Buffer.from('/Type /Pages /Type /Page\n/Type /Page '))).toBe(2);
});

describe('the strip of a told day', () => {
  const rows: NonNullable<Leaflet['strip']>['rows'] = (['told', 'changed'] as const).map((of) => ({
    of,
    night: [
      { from: 0, to: 400 },
      { from: 1380, to: 1440 },
    ],
    acid: [
      { from: 600, to: 601 },
      { from: 870, to: 1015 },
    ],
    eaten: [
      { from: 590, to: 600, name: 'Café con azúcar' },
      { from: 600, to: 601, name: 'Plátano' },
      { from: 870, to: 990, name: 'Cola' },
    ],
  }));
  const words = { title: 'Your day', told: 'Today', changed: 'With the change', dark: 'Dark: sour.', caution: 'This compares days.' };
  const withStrip = (drawn: typeof rows): Leaflet => ({ ...leaflet, strip: { rows: drawn, words } });

  test.each([
    { largePrint: false, leastPt: 12 },
    { largePrint: true, leastPt: 18 },
  ])(
    'large print $largePrint: its words in the letters of the page, in $leastPt pt, and nothing drawn twice',
    async ({ largePrint, leastPt }) => {
      const complaints = vi.spyOn(console, 'error').mockImplementation(() => undefined);
      const pdf = readPdf(await renderLeafletPdf(withStrip(rows), { page: 'A4', largePrint }));
      expect(complaints.mock.calls).toEqual([]);
      complaints.mockRestore();
      const text = withoutSpaces(pdf.text);
      for (const said of ['Café con azúcar', 'Plátano', 'Cola', ...Object.values(words)]) expect(text).toContain(withoutSpaces(said));
      expect(pdf.fonts.every((font) => font.startsWith('AtkinsonHyperlegibleNext'))).toBe(true);
      // In the drawing, type is measured in its own units, and the drawing is scaled.
      const drawn = pdf.typeSizesPt.filter((size) => size < 5);
      expect(drawn).toHaveLength(1);
      const scales = [...pdf.drawing.matchAll(/^([\d.]+) 0 0 [\d.]+ 0 0 cm$/gm)].map(([, x]) => Number(x));
      expect((drawn[0] ?? 0) * Math.max(...scales)).toBeCloseTo(leastPt, 2);
    },
  );

  test('a word that cannot be set is refused, not left out', async () => {
    const named = rows.map((row) => ({ ...row, eaten: row.eaten.map((one) => ({ ...one, name: '李雷' })) }));
    await expect(renderLeafletPdf(withStrip(named), { page: 'A4' })).rejects.toThrow('李雷');
  });
});
