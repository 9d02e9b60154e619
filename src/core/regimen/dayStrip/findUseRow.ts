import type { Jurisdiction, ShelfItem } from '../types.ts';
import type { UseRhythm } from './types.ts';

/** How items of an agent are used, as far as the time of day goes. */
export interface UseRow {
  readonly agentId: string;
  readonly forms?: readonly string[] | undefined;
  readonly jurisdiction?: Jurisdiction | undefined;
  readonly rhythm: UseRhythm;
}

/** The row of an item: the first that fits agent, form and place; undefined = the team shows how. */
export function findUseRow<T extends UseRow>(item: ShelfItem, jurisdiction: Jurisdiction, rows: readonly T[]): T | undefined {
  return rows.find(
    (row) =>
      row.agentId === item.agentId &&
      (row.forms === undefined || row.forms.includes(item.form)) &&
      (row.jurisdiction === undefined || row.jurisdiction === jurisdiction),
  );
}
