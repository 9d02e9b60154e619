import { compileList, tallyOf } from './compileList.ts';
import { checkItems, listUnknownItems } from './evaluateProtocol.ts';
import { LEVELS } from './levels.ts';
import type { ProtocolTable, RiskSettings } from './protocol.ts';
import { firstSets, reachTallies } from './reach.ts';
import type { Items, LevelChange } from './types.ts';

const MAX_CHANGES = 4;
const SETS_PER_LEVEL = 3;

/**
 * The smallest sets of changes that move the level on this list, one group for each other level that can be reached, lowest level first.
 * Exact: no smaller set exists. Of several sets of the smallest size the first three are given, in the order of the list.
 * Low is left out while a disease item is unknown, as it would not be given then.
 * Changed are unknown items (to any value) and the known items named in `changeableItems`. It says what the list would say, not what
 * decay would do.
 * @param changeableItems  as `listChangeableItems` gives them; items that look back, and unknown ones, need not be left out
 * @returns sets of at most 4 changes; a level that needs more, or cannot be reached, is absent
 * @throws RangeError when the list is not for this age
 * @throws TypeError  when a known item has the wrong type
 */
export function whatWouldChange(
  table: ProtocolTable,
  items: Items,
  ageYears: number,
  settings: RiskSettings,
  changeableItems: readonly string[],
): readonly LevelChange[] {
  const list = compileList(table, ageYears, settings);
  checkItems(table, items);
  const present = list.verdict(tallyOf(list, items)).level;
  const unknown = new Set(listUnknownItems(table, list, items));
  const free = [...list.reads.keys()].filter((id) => unknown.has(id) || (items[id] !== undefined && changeableItems.includes(id)));
  const reached = reachTallies({ list, items, free, maxChanges: MAX_CHANGES, keep: SETS_PER_LEVEL });
  const mayBeLow = ![...unknown].some((item) => table.items[item]?.role === 'disease');

  return LEVELS.filter((level) => level !== present && (level !== 'low' || mayBeLow)).flatMap((level) => {
    const ways = reached.filter((r) => list.verdict(r.tally).level === level);
    const cost = Math.min(...ways.map((way) => way.cost));
    const smallest = ways.filter((way) => way.cost === cost).flatMap((way) => way.sets);
    return firstSets(smallest, SETS_PER_LEVEL).map((set) => ({
      to: level,
      changes: [...set].sort((a, b) => a.rank - b.rank).map(({ item, from, to }) => ({ item, from, to })),
    }));
  });
}

/**
 * Known items of the list that can be changed from today on: by the person, or by care given. Looks back, medicines, conditions and
 * social items never are.
 * @param mayLimitFood  true only when the safety rules allow a suggestion that drops, delays or limits food or a feed
 */
export function listChangeableItems(table: ProtocolTable, { mayLimitFood }: { readonly mayLimitFood: boolean }): readonly string[] {
  return Object.values(table.items)
    .filter((item) => item.changeable !== 'no' && (mayLimitFood || item.limitsFood !== true))
    .map((item) => item.id);
}
