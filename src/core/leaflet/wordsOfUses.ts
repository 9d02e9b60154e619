import type { ShelfItem } from '../regimen/types.ts';
import { lowerFirst } from './formatForLeaflet.ts';
import { nameOnLeaflet } from './nameOnLeaflet.ts';
import type { Say } from './sayMessage.ts';
import type { LeafletLanguage } from './types.ts';

interface Reader {
  readonly language: LeafletLanguage;
  readonly locale: string;
}

/** The word at each item's marks, by its id: "paste", "gum"; what a leaflet calls it where two items are of one form. */
export function wordsOfUses(items: readonly ShelfItem[], say: Say, { language, locale }: Reader): ReadonlyMap<string, string> {
  const isAlone = ({ form }: ShelfItem) => items.filter((other) => other.form === form).length === 1;
  const wordOf = (item: ShelfItem) => (isAlone(item) ? say(`form.${item.form}`) : lowerFirst(nameOnLeaflet(item, language).text, locale));
  return new Map(items.map((item) => [item.id, wordOf(item)]));
}
