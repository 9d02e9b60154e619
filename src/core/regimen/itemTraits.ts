import { fluorideContentPpm } from './fluorideContentPpm.ts';
import type { ShelfItem } from './types.ts';

const NEUTRAL_PH = 7;
const LIQUID_FORMS: readonly ShelfItem['form'][] = ['rinse', 'gel', 'spray', 'drops'];

/** How a pack without any flavour is noted. */
export const NO_FLAVOUR = 'none';

/** The flavour as it is compared, however it was typed; undefined when none is noted. */
export const tasteOf = ({ flavour }: ShelfItem): string | undefined => flavour?.trim().toLowerCase();

/**
 * What a rule may look for in a pack: the ingredients noted on the shelf item, and what follows from its flavour,
 * form, compound and pH. The pH of a
 * liquid that is not noted is a trait of its own; a strength that is not noted adds none, rules that depend on it look at the number.
 */
export function itemTraits(item: ShelfItem): ReadonlySet<string> {
  const traits = new Set<string>([...(item.traits ?? []), item.form]);
  if (tasteOf(item) !== undefined && tasteOf(item) !== NO_FLAVOUR) traits.add('flavour');
  if (item.pH !== undefined && item.pH < NEUTRAL_PH) traits.add('pH below 7');
  if (item.pH === undefined && LIQUID_FORMS.includes(item.form)) traits.add('pH unknown');
  if (item.compound === 'SnF2') traits.add('stannous fluoride');
  if (item.compound === 'Na2PO3F') traits.add('sodium monofluorophosphate');
  if ((itemPpm(item) ?? 0) > 0) traits.add('contains fluoride');
  return traits;
}

/** ppm F as noted, else from compound and percentage; undefined when the pack tells neither. */
export function itemPpm({ fluoridePpm, compound, percent }: ShelfItem): number | undefined {
  if (fluoridePpm !== undefined) return fluoridePpm;
  return compound === undefined || percent === undefined ? undefined : fluorideContentPpm(compound, percent);
}
