import { content } from '../content/allContent.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import type { VisitInput } from '../core/visit/types.ts';

/** What the core says of one item of a visit, from the saved answers: what a signature has to know. */
export interface ReleaseFacts {
  /** Rules that stop the item for this person. */
  readonly stops: readonly string[];
  /** Of those, the ones that no signature lifts. */
  readonly fixedStops: readonly string[];
  /** Rules that hold it back until something is asked. */
  readonly asks: readonly string[];
  /** It stands in the plan, or beside a line of it, and waits. */
  readonly waits: boolean;
}

export function releaseFacts(input: VisitInput, shelfItemId: string): ReleaseFacts {
  // Without what was signed or refused before, so that an item that is signed already is looked at like any other.
  const { signed, refused = [], ...visit } = input.visit;
  const isOther = (other: { readonly shelfItemId: string }) => other.shelfItemId !== shelfItemId;
  const asked = { ...input, visit: { ...visit, signed: signed.filter(isOther), refused: refused.filter(isOther) } };
  const { plan } = assessVisit(asked, content);
  const held = plan.notOffered.filter((e) => e.shelfItemId === shelfItemId);
  const stops = held.filter((e) => e.level === 'stop');
  return {
    stops: stops.map((e) => e.ruleId),
    fixedStops: stops.filter((e) => e.overridable !== true).map((e) => e.ruleId),
    asks: held.filter((e) => e.level === 'ask-first').map((e) => e.ruleId),
    waits: [...plan.lines, ...plan.alternatives.map((a) => a.line)].some(
      (line) => line.shelfItemId === shelfItemId && line.state === 'waiting-for-signature',
    ),
  };
}
