import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { ProtocolTable } from '../../../src/core/risk/protocol.ts';
import type { Items, ItemValue } from '../../../src/core/risk/types.ts';

/** Generated answers for the risk lists: half of them random, half one step from a reference case. */
const vectors: readonly { readonly ageYears: number; readonly items: Items }[] = JSON.parse(
  readFileSync('test/reference/risk/vectors.json', 'utf8'),
).cases;

/** Values on both sides of every limit of any list. */
export const EDGE_COUNTS: readonly number[] = [0, 1, 2, 3, 4, 6, 7, 9, 23, 24];

export interface Case {
  readonly items: Items;
  readonly ageYears: number;
}

/** Items that the table can read at any age, with a value or without. */
export function idsOf(table: ProtocolTable): readonly string[] {
  const conditions =
    table.kind === 'score'
      ? table.lines.flatMap((line) => line.cases.map((c) => c.when))
      : [
          ...table.rows.flatMap((row) => row.anyOf),
          ...(table.kind === 'balance' ? [...(table.suspicion ? [...table.suspicion.anyOf, table.suspicion.settledBy] : [])] : []),
        ];
  return [...new Set(conditions.map((c) => c.item))];
}

export function anyValue(table: ProtocolTable, id: string): fc.Arbitrary<ItemValue> {
  return table.items[id]?.valueType === 'count' ? fc.constantFrom(...EDGE_COUNTS) : fc.boolean();
}

function agesOf(table: ProtocolTable): fc.Arbitrary<number> {
  const { fromAgeYears, belowAgeYears } = table.applies;
  const last = (belowAgeYears ?? 100) - 1;
  const edges = [fromAgeYears, last, 14, 15].filter((age) => age >= fromAgeYears && age <= last);
  return fc.oneof(fc.constantFrom(...edges), fc.integer({ min: fromAgeYears, max: last }));
}

/** Random answers with few of them unknown, and answers one step from a reference case: those sit on the limits of the rules. */
export function casesOf(table: ProtocolTable, mostUnknown: number): fc.Arbitrary<Case> {
  const ids = idsOf(table);
  const random = fc.record(Object.fromEntries(ids.map((id) => [id, anyValue(table, id)])));
  const withUnknown = (items: Items) =>
    fc
      .subarray([...ids], { maxLength: Math.min(mostUnknown, ids.length) })
      .map((unknown) => Object.fromEntries(Object.entries(items).filter(([id]) => !unknown.includes(id))));
  const fits = vectors.filter((v) => v.ageYears >= table.applies.fromAgeYears && v.ageYears < (table.applies.belowAgeYears ?? 200));
  const edge = fc.constantFrom(...fits).chain((vector) =>
    fc.constantFrom(...ids).chain((id) =>
      anyValue(table, id).chain((value) => {
        const absent = Object.fromEntries(ids.map((i): [string, ItemValue] => [i, table.items[i]?.valueType === 'count' ? 0 : false]));
        return withUnknown({ ...absent, caregiver_decay_months_since: 24, ...vector.items, [id]: value });
      }),
    ),
  );
  return fc.record({ items: fc.oneof(random.chain(withUnknown), edge), ageYears: agesOf(table) });
}
