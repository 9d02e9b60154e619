import type { PlanLine, ShelfItem } from '../regimen/types.ts';

/** What the person said to an item. Absent = not recorded: the item stands as the plan proposes it. */
export type ItemAgreement = 'agreed' | 'declined' | 'not-affordable';

export interface PrintableLine {
  readonly line: PlanLine;
  readonly item: ShelfItem;
}

/**
 * The lines of a plan that a leaflet may show: what needs a signature only once it is signed by a named person, and nothing that
 * was declined or cannot be paid. What needs a signature is read from the shelf as well as from the line, so that neither alone
 * can release an item.
 * @param lines    of the plan
 * @param shelf    must hold every item of the lines
 * @param answers  by shelf item id
 * @throws RangeError when a line names an item that is not on the shelf
 */
export function listPrintableLines(
  lines: readonly PlanLine[],
  shelf: readonly ShelfItem[],
  answers: Readonly<Record<string, ItemAgreement>> = {},
): readonly PrintableLine[] {
  return lines.flatMap((line) => {
    const item = shelf.find(({ id }) => id === line.shelfItemId);
    if (item === undefined) throw new RangeError(`plan line names an item that is not on the shelf: ${line.shelfItemId}`);
    const refused = Object.hasOwn(answers, item.id) && answers[item.id] !== 'agreed';
    return !refused && isReleased(line, item) ? [{ line, item }] : [];
  });
}

function isReleased(line: PlanLine, item: ShelfItem): boolean {
  if (line.state === 'signed') return line.signedBy !== undefined && line.signedBy.name.trim() !== '';
  return line.state === 'proposed' && item.release === 'anyone';
}
