import type { ShelfItem } from '../regimen/types.ts';
import type { LeafletLanguage } from './types.ts';

/** What an item is called on a leaflet, and whether that is its English name because it has none in this language. */
export interface NameOnLeaflet {
  readonly text: string;
  readonly isStandIn: boolean;
}

/** Never a guessed translation: without a name in the language the English one stands, and the professional is told. */
export function nameOnLeaflet({ leafletName }: Pick<ShelfItem, 'leafletName'>, language: LeafletLanguage): NameOnLeaflet {
  const own = leafletName[language]?.trim();
  return own ? { text: own, isStandIn: false } : { text: leafletName.en, isStandIn: true };
}
