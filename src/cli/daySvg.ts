import type { AcidDayResult } from '../core/plaque/day/assessAcidDay.ts';
import { bandPath, type CurveScale, curvePath } from '../core/plaque/day/curvePath.ts';
import { listAcidStretches } from '../core/plaque/day/dayFigures.ts';
import { DAY_MINUTES, nightSpans } from '../core/plaque/day/nightSpans.ts';
import { sayEvent } from '../core/plaque/day/sayDay.ts';
import type { AcidDay, Food } from '../core/plaque/day/types.ts';

const WIDTH = 1000;
const HEIGHT = 440;
const LEFT = 50;
const RIGHT = 980;
const STRIP_TOP = 70;
const STRIP_HEIGHT = 26;
const NAMES_TOP = 124;
const CURVE_TOP = 190;
const CURVE_BOTTOM = 400;
const HIGHEST_PH = 7.5;
const LOWEST_PH = 3.5;
const HOURS_STEP = 3;
const NAME_ROWS = 3;
const NAME_ROW = 18;
const LETTER = 7.5;

/** A picture of a day, black on white, in words too: the strip of acid stretches leads, the curve with its band stands below. */
export function daySvg(day: AcidDay, result: AcidDayResult, foods: ReadonlyMap<string, Food>): string {
  const { curve, band, acidSide, minutesBelow, sentences } = result;
  const lines = minutesBelow.map(({ line }) => line).filter(({ id }) => id === 'saliva' || id === 'plaque-fluid');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-labelledby="title desc" font-family="sans-serif" font-size="14" fill="black">`,
    `<title id="title">${escapeXml(day.label ?? 'Acid day')}</title>`,
    `<desc id="desc">${escapeXml([sentences.headline, sentences.change, sentences.caution].filter(Boolean).join(' '))}</desc>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="white"/>`,
    text(LEFT, 24, sentences.headline, 'font-weight="bold" font-size="16"'),
    text(LEFT, 46, [sentences.change, sentences.caution].filter(Boolean).join(' ')),
    ...strip(day, listAcidStretches(curve, acidSide.ph)),
    ...names(day, foods),
    `<path d="${bandPath(band.lowPh, band.highPh, SCALE)}" fill="#d8d8d8"/>`,
    ...lines.map(({ ph, id }) => rule(ph, id === acidSide.id ? '' : ' stroke-dasharray="6 4"')),
    `<path d="${curvePath(curve.ph, SCALE)}" fill="none" stroke="black" stroke-width="2"/>`,
    ...lines.map(({ ph, says }, i) => text(LEFT + 6, SCALE.y(ph) + (i === 0 ? -5 : 15), says, 'font-size="12"')),
    ...axes(),
    '</svg>',
    '',
  ].join('\n');
}

const SCALE: CurveScale = {
  x: (minute) => LEFT + ((RIGHT - LEFT) * minute) / DAY_MINUTES,
  y: (ph) =>
    CURVE_TOP + ((CURVE_BOTTOM - CURVE_TOP) * (HIGHEST_PH - Math.min(Math.max(ph, LOWEST_PH), HIGHEST_PH))) / (HIGHEST_PH - LOWEST_PH),
};

function strip(day: AcidDay, stretches: readonly { readonly from: number; readonly to: number }[]): string[] {
  const box = (from: number, to: number, fill: string) =>
    `<rect x="${SCALE.x(from).toFixed(1)}" y="${STRIP_TOP}" width="${(SCALE.x(to) - SCALE.x(from)).toFixed(1)}" height="${STRIP_HEIGHT}" fill="${fill}"/>`;
  return [
    box(0, DAY_MINUTES, '#efefef'),
    ...nightSpans(day).map(({ from, to }) => box(from, to, '#dcdcdc')),
    ...stretches.map(({ from, to }) => box(from, to, 'black')),
  ];
}

/** A mark for each event, its name in the first row that has room. */
function names(day: AcidDay, foods: ReadonlyMap<string, Food>): string[] {
  const ends = Array.from({ length: NAME_ROWS }, () => 0);
  return [...day.events]
    .filter(({ kind }) => kind !== 'brushing')
    .sort((a, b) => a.startMinute - b.startMinute)
    .flatMap((event) => {
      const x = SCALE.x(event.startMinute);
      const name = sayEvent(event, foods);
      const row = ends.findIndex((end) => end <= x);
      const width = Math.max((RIGHT - LEFT) * (event.minutes / DAY_MINUTES), 2);
      const mark = `<rect x="${x.toFixed(1)}" y="${STRIP_TOP + STRIP_HEIGHT + 4}" width="${width.toFixed(1)}" height="5"/>`;
      if (row < 0) return [mark];
      ends[row] = x + name.length * LETTER;
      return [mark, text(Math.min(x, RIGHT - name.length * LETTER), NAMES_TOP + row * NAME_ROW, name)];
    });
}

function axes(): string[] {
  const hours = Array.from({ length: 24 / HOURS_STEP + 1 }, (_, i) => i * HOURS_STEP);
  return [
    `<path d="M${LEFT} ${CURVE_BOTTOM}H${RIGHT}" stroke="black"/>`,
    ...hours.map((hour) => text(SCALE.x(hour * 60), CURVE_BOTTOM + 20, `${String(hour).padStart(2, '0')}:00`, 'text-anchor="middle"')),
    ...[4, 5, 6, 7].map((ph) => text(LEFT - 8, SCALE.y(ph) + 5, String(ph), 'text-anchor="end"')),
    text(12, CURVE_TOP - 8, 'pH'),
  ];
}

const rule = (ph: number, dash: string): string => `<path d="M${LEFT} ${SCALE.y(ph).toFixed(1)}H${RIGHT}" stroke="black"${dash}/>`;

const text = (x: number, y: number, words: string, attributes = ''): string =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}"${attributes === '' ? '' : ` ${attributes}`}>${escapeXml(words)}</text>`;

function escapeXml(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
