import { appliesAtAge, conditionHolds, isInAgeRange } from './conditions.ts';
import { evaluateProtocol } from './evaluateProtocol.ts';
import type { Condition, ProtocolTable, RiskSettings } from './protocol.ts';
import type { Items, RiskResult } from './types.ts';

/** What a list makes of one known item. `no-effect`: it is on the list and, as answered, adds nothing. */
export type Treatment = 'decides' | 'raises' | 'lowers' | 'no-effect' | 'not-on-this-list';

export interface Comparison {
  /** One result for each list that fits the age, in the order given. */
  readonly results: readonly RiskResult[];
  /** Known items that the lists treat differently, when their levels differ; those that decide on some list first. */
  readonly partsOn: readonly { readonly item: string; readonly byProtocol: Readonly<Record<string, Treatment>> }[];
}

interface ListResult {
  readonly table: ProtocolTable;
  readonly result: RiskResult;
}

/** Every list that fits the age on the same items, and the items on which they part. Lists are not added up and there is no majority. */
export function compareProtocols(tables: readonly ProtocolTable[], items: Items, ageYears: number, settings: RiskSettings): Comparison {
  const applicable = tables.filter((table) => appliesAtAge(table, ageYears));
  const lists = applicable.map((table) => ({ table, result: evaluateProtocol(table, items, ageYears, settings) }));
  const results = lists.map((list) => list.result);
  if (new Set(results.map((r) => r.levelUnknownNotTicked)).size <= 1) return { results, partsOn: [] };

  const treated = new Set(results.flatMap((r) => [...r.drivers, ...r.protections].map((driver) => driver.item)));
  const partsOn = [...treated]
    .map((item) => ({
      item,
      byProtocol: Object.fromEntries(lists.map((list) => [list.table.id, treatmentOf(item, { ...list, ageYears, items })])),
    }))
    .filter(({ byProtocol }) => new Set(Object.values(byProtocol)).size > 1);
  const decides = (row: (typeof partsOn)[number]) => Object.values(row.byProtocol).includes('decides');
  return { results, partsOn: [...partsOn.filter(decides), ...partsOn.filter((row) => !decides(row))] };
}

function treatmentOf(
  item: string,
  { table, result, ageYears, items }: ListResult & { readonly ageYears: number; readonly items: Items },
): Treatment {
  const rows = rowsOf(table, ageYears);
  // Items that share a row tick it together, and the result names only the first of them.
  const ticked = rows.find((row) => row.some((c) => c.item === item && conditionHolds(c, items))) ?? [];
  const namedAs = (ids: readonly { readonly item: string }[]) => ids.some((d) => d.item === item || ticked.some((c) => c.item === d.item));
  const driver = result.drivers.find((d) => namedAs([d]));
  if (driver) return driver.decisive ? 'decides' : 'raises';
  if (namedAs(result.protections)) return 'lowers';
  return rows.some((row) => row.some((c) => c.item === item)) ? 'no-effect' : 'not-on-this-list';
}

/** The conditions of each row or line that counts at this age. */
function rowsOf(table: ProtocolTable, ageYears: number): readonly (readonly Condition[])[] {
  if (table.kind !== 'score') return table.rows.map((row) => row.anyOf);
  return table.lines
    .filter((line) => isInAgeRange(line, ageYears))
    .map((line) => line.cases.filter((c) => isInAgeRange(c, ageYears)).map((c) => c.when));
}
