import type { PlannedUse } from '../regimen/planFluoride.ts';
import type { PlanLine, ShelfItem } from '../regimen/types.ts';
import { wantedLines } from './turnedDown.ts';
import type { VisitInput } from './types.ts';

/** The lines of a plan that are used at home and were not turned down, with their items. */
export function plannedAtHome(
  lines: readonly PlanLine[],
  shelf: readonly ShelfItem[],
  agreed: VisitInput['visit']['agreed'],
): readonly PlannedUse[] {
  return wantedLines(lines, agreed).flatMap(({ shelfItemId, use, state }) => {
    const item = shelf.find(({ id }) => id === shelfItemId);
    return item && use.atVisit !== true ? [{ item, use, state }] : [];
  });
}
