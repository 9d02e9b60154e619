import type { DayLimits } from '../plaque/day/dayLimits.ts';
import type { AcidDay, DayEvent } from '../plaque/day/types.ts';

/** What of a day may be changed when a change is tried: what was eaten and drunk, gum, or neither. */
export interface MayTry {
  readonly food: boolean;
  readonly gum: boolean;
}

/**
 * A day that is shown to a person as "with the change" is a suggestion. So food stays as it was told wherever no meal or snack may be
 * dropped, delayed or limited, under the age where only a sweet bottle or cup may be spoken of too, and gum comes in only where it may be
 * suggested. What is done afterwards is always free.
 */
export const mayTry = ({ food, gum }: Pick<DayLimits, 'food' | 'gum'>): MayTry => ({ food: food.allowed === 'any', gum: gum.allowed });

/** Whether the changed day keeps to what may be suggested to this person. */
export function mayShowChange(told: AcidDay, changed: AcidDay, may: MayTry): boolean {
  return (may.food || isSame(told, changed, isFood)) && (may.gum || !hasMore(told, changed, 'gum'));
}

const isFood = ({ kind }: DayEvent): boolean => kind === 'eating';

function isSame(told: AcidDay, changed: AcidDay, isMeant: (event: DayEvent) => boolean): boolean {
  const inOrder = ({ events }: AcidDay) => [...events].filter(isMeant).sort((a, b) => a.id.localeCompare(b.id, 'en'));
  return JSON.stringify(inOrder(told)) === JSON.stringify(inOrder(changed));
}

/** Gum that was told is no suggestion; gum at another time or for longer is. */
function hasMore(told: AcidDay, changed: AcidDay, kind: DayEvent['kind']): boolean {
  const before = told.events.filter((event) => event.kind === kind).map((event) => JSON.stringify(event));
  return changed.events.some((event) => event.kind === kind && !before.includes(JSON.stringify(event)));
}
