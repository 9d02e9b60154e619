import { checkLabel } from '../../regimen/checkLabel.ts';
import { itemPpm } from '../../regimen/itemTraits.ts';
import type { Agent } from '../../regimen/tables.ts';
import type { ShelfItem } from '../../regimen/types.ts';

/** What is not known of an item, with what follows from it, and what on its label cannot be right. Nothing here holds the item back. */
export function listOpen(item: ShelfItem, agents: readonly Agent[]): readonly string[] {
  const range = agents.find(({ id }) => id === item.agentId)?.ppmRange;
  const ppm = itemPpm(item);
  const isOutside = range !== undefined && ppm !== undefined && !(ppm >= range[0] && ppm <= range[1]);
  return [
    ...(range && ppm === undefined ? ['strength not known: not proposed until it is'] : []),
    ...(isOutside ? [`${Math.round(ppm)} ppm fluoride does not fit this kind: not proposed`] : []),
    ...(item.traits === undefined ? ['pack not checked: what it holds is asked first'] : []),
    ...(item.priceCents === undefined ? ['price not known: never taken for free'] : []),
    ...(item.packAmount === undefined ? ['pack size not known'] : []),
    ...(range ? doubts(item, agents) : []),
  ];
}

function doubts(item: ShelfItem, agents: readonly Agent[]): readonly string[] {
  const { form, compound, percent, fluoridePpm, label, use } = item;
  const ion = label?.of === 'ion' ? label.value : undefined;
  const print = { form, compound, percent, fluoridePpm, fluorideIonPercent: ion, useG: use.amountG, useMl: use.amountMl };
  return checkLabel(print, agents).map(({ says }) => says);
}
