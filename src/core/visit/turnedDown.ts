import type { VisitInput } from './types.ts';

type Agreed = VisitInput['visit']['agreed'];
export type TurnedDown = 'declined' | 'not-affordable';

/** Of what was said to an item, or of the state of its course: not taken, for whatever reason. */
export const isTurnedDown = (said: string | undefined): said is TurnedDown => said === 'declined' || said === 'not-affordable';

/** What the person said to an item that is not taken; undefined where it was agreed to or not talked about. */
export function turnedDownWord({ items = {} }: NonNullable<Agreed> = {}, shelfItemId: string): TurnedDown | undefined {
  const said = Object.hasOwn(items, shelfItemId) ? items[shelfItemId] : undefined;
  return isTurnedDown(said) ? said : undefined;
}

/** Lines of a plan that nobody turned down. */
export const wantedLines = <T extends { readonly shelfItemId: string }>(lines: readonly T[], agreed: Agreed): readonly T[] =>
  lines.filter(({ shelfItemId }) => turnedDownWord(agreed, shelfItemId) === undefined);
