import { keepByTable } from '../../keep/keepByTable.ts';
import type { RegimenTables } from '../tables.ts';
import { listSettable } from './settleTables.ts';
import type { SettableDisagreement, TableChange } from './types.ts';

/** What the practice chooses that changes, adds or takes away a safety rule or an interaction, by the id of that rule. */
export const settableByRule = keepByTable((tables: RegimenTables): ReadonlyMap<string, SettableDisagreement> => {
  const touched = listSettable(tables).flatMap((row) =>
    row.positions.flatMap(({ change }) => idsIn(change).map((id) => [id, row] as const)),
  );
  return new Map(touched);
});

const idsIn = ({ rules = {}, moreRules = [], interactions = {}, without = [] }: TableChange): readonly string[] => [
  ...Object.keys(rules),
  ...moreRules.map(({ id }) => id),
  ...Object.keys(interactions),
  ...without,
];
