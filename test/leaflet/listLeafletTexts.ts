import { buildDaySteps } from '../../src/core/leaflet/buildDaySteps.ts';
import { catalogOf, type LeafletTable } from '../../src/core/leaflet/leafletTable.ts';
import type { TimeOfUse } from '../../src/core/leaflet/timesOfUses.ts';
import type { Leaflet, LeafletLanguage } from '../../src/core/leaflet/types.ts';
import type { ShelfItem } from '../../src/core/regimen/types.ts';
import { planLine } from './leafletCases.ts';

/** Ages on both sides of each change of wording. */
const STEP_AGES = [1, 3, 5, 6, 7, 11, 12, 40] as const;

/** Every sentence that any leaflet can hold in a language, by where it comes from: fixed texts, and the steps of each shelf item at each age and place. */
export function listLeafletTexts(
  table: LeafletTable,
  shelf: readonly ShelfItem[],
  language: LeafletLanguage,
): readonly (readonly [where: string, text: string])[] {
  const catalog = catalogOf(table, language);
  return [
    ...Object.entries(catalog).filter(([id]) => /^(caution|advice|goal|call|who)\.|^keep|^askBeforeFood$/.test(id)),
    ...[...shelf.flatMap((item) => listSteps(item, table, language, []))],
  ];
}

/**
 * The steps again where each use has a time of its own: without how often, and repeated as "the same again". Too short for a formula of
 * readability by themselves; whole leaflets are measured with them.
 */
export const listTimedTexts = (table: LeafletTable, shelf: readonly ShelfItem[], language: LeafletLanguage): readonly string[] =>
  shelf.flatMap((item) => listSteps(item, table, language, timesOf(item)).map(([, text]) => text));

function listSteps(
  item: ShelfItem,
  table: LeafletTable,
  language: LeafletLanguage,
  times: readonly TimeOfUse[],
): readonly (readonly [string, string])[] {
  const all = STEP_AGES.flatMap((ageYears) =>
    (['US', 'UK', 'unknown'] as const).flatMap((jurisdiction) =>
      [true, false].flatMap((canSpit) => {
        const line = planLine(item, ageYears, true);
        const reader = { ageYears, canSpit, jurisdiction, language, locale: language };
        return buildDaySteps([{ line, item }], table, reader, times).map(({ text }) => text);
      }),
    ),
  );
  return [...new Set(all)].map((text) => [`item ${item.id}`, text] as const);
}

const timesOf = (item: ShelfItem): readonly TimeOfUse[] =>
  Array.from({ length: Math.ceil(item.use.timesPerDay) }, (_, order) => ({ shelfItemId: item.id, says: '', order }));

/** The prose of a whole leaflet, as it is read from top to bottom; names and block labels are left out, so that they cannot make it look easier. */
export function leafletProse(leaflet: Leaflet): string {
  return [
    leaflet.keep,
    leaflet.tryThis ?? '',
    ...leaflet.day.map(({ text }) => text),
    ...leaflet.call,
    ...leaflet.advice,
    ...leaflet.cautions,
    leaflet.monthlyCost ?? '',
    ...leaflet.signedBy,
    leaflet.nextDate,
    leaflet.demoNotice ?? '',
  ]
    .filter((text) => text !== '')
    .join('\n');
}
