import type { VisitInput } from './types.ts';

/** What the person said to an item that is not taken; undefined where it was agreed to or not talked about. */
export function turnedDownWord(agreed: VisitInput['visit']['agreed'], shelfItemId: string): 'declined' | 'not-affordable' | undefined {
  const { items = {} } = agreed ?? {};
  const said = Object.hasOwn(items, shelfItemId) ? items[shelfItemId] : undefined;
  return said === 'agreed' ? undefined : said;
}
