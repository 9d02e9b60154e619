import { createRequire } from 'node:module';
import { Font, renderToBuffer } from '@react-pdf/renderer';
import type { Leaflet } from '../core/leaflet/types.ts';
import type { PageSetting } from './leafletBlocks.tsx';
import { LeafletDocument, type LeafletPageSize } from './leafletPage.tsx';

/** Type is never smaller than this, but for the last lines. */
const SMALL = { smallPt: 12, footPt: 9.5 } as const;

/**
 * Tried in this order until everything stands on one page: first the spaces shrink, then the drawn cups go, then the type
 * shrinks, then a drawn brush gives way to its words, last the drawn day to the times beside them.
 */
const SETTINGS: readonly PageSetting[] = [
  { ...SMALL, bodyPt: 14, largePt: 17, namePt: 24, topMm: 14, spaceMm: 5, leading: 1.35, brushes: true, cups: true, days: true },
  { ...SMALL, bodyPt: 14, largePt: 17, namePt: 22, topMm: 13, spaceMm: 3.2, leading: 1.28, brushes: true, cups: true, days: true },
  { ...SMALL, bodyPt: 14, largePt: 16, namePt: 22, topMm: 13, spaceMm: 2.8, leading: 1.25, brushes: true, cups: false, days: true },
  { ...SMALL, bodyPt: 13, largePt: 15, namePt: 20, topMm: 12, spaceMm: 2.6, leading: 1.25, brushes: true, cups: false, days: true },
  { ...SMALL, bodyPt: 12, largePt: 14, namePt: 18, topMm: 11, spaceMm: 2.4, leading: 1.25, brushes: true, cups: false, days: true },
  { ...SMALL, bodyPt: 12, largePt: 13, namePt: 16, topMm: 10, spaceMm: 1.6, leading: 1.18, brushes: true, cups: false, days: true },
  { ...SMALL, bodyPt: 12, largePt: 13, namePt: 15, topMm: 8, spaceMm: 1, leading: 1.1, brushes: false, cups: false, days: true },
  { ...SMALL, bodyPt: 12, largePt: 13, namePt: 16, topMm: 10, spaceMm: 1.6, leading: 1.18, brushes: false, cups: false, days: false },
  { ...SMALL, bodyPt: 12, largePt: 13, namePt: 15, topMm: 8, spaceMm: 1, leading: 1.1, brushes: false, cups: false, days: false },
];

/** Large print: nothing below 18 pt. */
const LARGE = { bodyPt: 18, smallPt: 18, footPt: 18, isLarge: true } as const;

const AIRY: PageSetting = { ...LARGE, largePt: 22, namePt: 28, topMm: 14, spaceMm: 5, leading: 1.4, brushes: true, cups: true, days: true };
/** Tried in this order until everything stands on two pages, in the same order of what gives way; the type stays. */
const LARGE_SETTINGS: readonly PageSetting[] = [
  AIRY,
  { ...LARGE, largePt: 22, namePt: 26, topMm: 13, spaceMm: 3.6, leading: 1.3, brushes: true, cups: true, days: true },
  { ...LARGE, largePt: 20, namePt: 24, topMm: 12, spaceMm: 2.4, leading: 1.22, brushes: true, cups: false, days: true },
  { ...LARGE, largePt: 20, namePt: 22, topMm: 10, spaceMm: 1.6, leading: 1.14, brushes: false, cups: false, days: true },
  { ...LARGE, largePt: 20, namePt: 24, topMm: 12, spaceMm: 2.4, leading: 1.22, brushes: false, cups: false, days: false },
  { ...LARGE, largePt: 20, namePt: 22, topMm: 10, spaceMm: 1.6, leading: 1.14, brushes: false, cups: false, days: false },
];
const LARGE_PAGES = 2;

export interface PdfOptions {
  readonly page: LeafletPageSize;
  readonly largePrint?: boolean | undefined;
}

/**
 * The leaflet as a PDF, black on white: exactly one page, type never below 12 pt but for the last lines; or in large print, on two
 * pages where they hold it and else on as many as it takes.
 * @throws RangeError when a sign has no place in the typeface, or when the words do not fit one page even at 12 pt
 */
export async function renderLeafletPdf(leaflet: Leaflet, { page, largePrint = false }: PdfOptions): Promise<Uint8Array> {
  const isArabicPage = leaflet.language === 'ar';
  const hasArabicName = !isArabicPage && isArabic(leaflet.personName);
  registerFonts(isArabicPage || hasArabicName);
  const faces = [...(isArabicPage ? [ARABIC_FACE[0]] : []), ...FACES.map(([family]) => family)];
  const nameFaces = hasArabicName ? [ARABIC_FACE[0]] : [];
  await refuseUnknownSigns(leaflet, faces, nameFaces);
  const render = async (setting: PageSetting) =>
    new Uint8Array(
      await renderToBuffer(<LeafletDocument leaflet={leaflet} page={page} setting={setting} faces={faces} nameFaces={nameFaces} />),
    );
  for (const setting of largePrint ? LARGE_SETTINGS : SETTINGS) {
    const pdf = await render(setting);
    if (countPages(pdf) <= (largePrint ? LARGE_PAGES : 1)) return pdf;
  }
  // Three pages lose nothing: then they may have air, and the drawings.
  if (largePrint) return render(AIRY);
  throw new RangeError(`the leaflet does not fit one page: ${leaflet.day.length} steps, ${leaflet.cautions.length} cautions`);
}

/** Pages of a PDF whose page objects stand uncompressed, as this renderer writes them. */
export function countPages(pdf: Uint8Array): number {
  return (
    Buffer.from(pdf)
      .toString('latin1')
      .match(/\/Type\s*\/Page\b/g)?.length ?? 0
  );
}

/** The second family holds letters of names such as Ł. */
const FACES = [
  ['Atkinson', 'atkinson-hyperlegible-next', 'latin'],
  ['AtkinsonMore', 'atkinson-hyperlegible-next', 'latin-ext'],
] as const;
/**
 * For pages in Arabic, and for a name in Arabic script on another page; loaded only where it is needed. Its letters are whole glyphs:
 * the renderer misplaces the dots of a face that sets them as marks of their own.
 */
const ARABIC_FACE = ['Arabic', 'vazirmatn', 'arabic'] as const;
const WEIGHTS = [400, 600];
const registered = new Set<string>();

/** Static faces, since the renderer takes no variable font. */
function registerFonts(hasArabic: boolean): void {
  const { resolve } = createRequire(import.meta.url);
  for (const [family, pack, subset] of [...FACES, ...(hasArabic ? [ARABIC_FACE] : [])]) {
    if (registered.has(family)) continue;
    const fileOf = (weight: number) => resolve(`@fontsource/${pack}/files/${pack}-${subset}-${weight}-normal.woff`);
    Font.register({ family, fonts: WEIGHTS.map((fontWeight) => ({ src: fileOf(fontWeight), fontWeight })) });
    registered.add(family);
  }
  Font.registerHyphenationCallback((word) => [word]);
}

/** A sign without a glyph would print as an empty box: the page is refused instead. */
async function refuseUnknownSigns(
  { personName, foot, footPages, notInLanguage: _, ...rest }: Leaflet,
  ofPage: readonly string[],
  ofName: readonly string[],
): Promise<void> {
  const faces = await Promise.all(ofPage.map(loadFace));
  const nameFaces = [...faces, ...(await Promise.all(ofName.map(loadFace)))];
  const isSet = (text: string, by: readonly Face[]) =>
    [...text].every((sign) => by.some((face) => face.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0)));
  const others = listTexts({ ...rest, foot: foot.replace(personName, ''), footPages: footPages.replace(personName, '') });
  const unknown = isSet(personName, nameFaces) ? others.find((text) => !isSet(text, faces)) : personName;
  if (unknown !== undefined) throw new RangeError(`the leaflet's typeface has not every sign of: ${unknown}`);
}

const isArabic = (name: string): boolean => /\p{Script=Arabic}/u.test(name);

/** The part of a loaded face that is used here. */
interface Face {
  hasGlyphForCodePoint(codePoint: number): boolean;
}

async function loadFace(fontFamily: string): Promise<Face> {
  await Font.load({ fontFamily, fontWeight: 400 });
  // The published type of `data` is open: fontkit brings no types of its own.
  const face = Font.getFont({ fontFamily, fontWeight: 400 }).data as unknown as Face | null;
  if (face === null) throw new Error(`the typeface ${fontFamily} did not load`);
  return face;
}

function listTexts(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(listTexts) : [];
}
