import type { PlannedUse } from '../regimen/planFluoride.ts';
import type { PlanLine, ShelfItem } from '../regimen/types.ts';

/** The lines of a plan that are used at home and were not turned down, with their items. */
export function plannedAtHome(
  lines: readonly PlanLine[],
  shelf: readonly ShelfItem[],
  answers: Readonly<Record<string, 'agreed' | 'declined' | 'not-affordable'>> = {},
): readonly PlannedUse[] {
  return lines.flatMap(({ shelfItemId, use, state }) => {
    const item = shelf.find(({ id }) => id === shelfItemId);
    const isTurnedDown = Object.hasOwn(answers, shelfItemId) && answers[shelfItemId] !== 'agreed';
    return item && use.atVisit !== true && !isTurnedDown ? [{ item, use, state }] : [];
  });
}
