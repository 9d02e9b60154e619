import type { ShelfItem } from '../../../core/regimen/types.ts';
import { formatCents } from '../../format.ts';
import { needWords } from '../../needWords.ts';
import type { SaidLines } from '../../parts/differences.ts';
import { findAgent } from './shelfDraft.ts';

export const RELEASE_WORDS: Readonly<Record<ShelfItem['release'], string>> = {
  anyone: 'anyone on the team',
  prescription: "needs a prescriber's signature",
  dentist: 'dentist only',
};

/** Everything that is noted of an item, in words. */
export function sayItem(item: ShelfItem): SaidLines {
  const { packAmount, use } = item;
  const known = (value: number | undefined, unit = '') => (value === undefined ? 'not known' : `${value}${unit}`);
  return [
    ['Kind', findAgent(item.agentId)?.name ?? item.agentId],
    ['Form', item.form],
    ['Name', item.name],
    ['Name on the leaflet, English', item.leafletName.en],
    ['Name on the leaflet, Spanish', item.leafletName.es],
    ['Name on the leaflet, French', item.leafletName.fr ?? 'none yet'],
    ['Name on the leaflet, Arabic', item.leafletName.ar ?? 'none yet'],
    ['Compound', item.compound ?? 'not known'],
    ['Strength', known(item.percent, ' %')],
    ['Fluoride', known(item.fluoridePpm, ' ppm')],
    ['pH', known(item.pH)],
    ['In the pack', item.traits === undefined ? 'pack not checked yet' : item.traits.join(', ') || 'none of them'],
    ['Pack', packAmount ? `${packAmount.value} ${packAmount.unit}` : 'not known'],
    ['Price', item.priceCents === undefined ? 'not known' : formatCents(item.priceCents)],
    ['Flavour', item.flavour ?? 'not noted'],
    ['Minimum', item.minimumLevel === undefined ? 'not set' : `${item.minimumLevel}`],
    [
      'Label',
      item.label
        ? `${item.label.value} ${item.label.of === 'ppm' ? 'ppm' : `% of ${item.label.of}`} ${item.label.per ?? ''}`.trim()
        : 'as above',
    ],
    ['In stock', item.inStock ? 'yes' : 'no'],
    ['Released by', RELEASE_WORDS[item.release]],
    ['Meets', item.meets.map(needWords).join(', ') || 'no need'],
    ['Used', use.atVisit ? 'at the visit' : `${Number(use.timesPerDay.toPrecision(3))} times a day`],
    ['Amount', use.amount],
    ['Amount in numbers', use.amountG === undefined ? known(use.amountMl, ' mL') : `${use.amountG} g`],
    ['Course', use.courseDays === undefined ? 'goes on' : `${use.courseDays} days`],
  ];
}
