import { keepByTable } from '../keep/keepByTable.ts';
import { type CompiledList, compileList, sumRules, type Tally, tallyOf } from './compileList.ts';
import { anyHolds, nearestInClass } from './conditions.ts';
import { explainLevel } from './explainLevel.ts';
import { sortLevels } from './levels.ts';
import type { ItemRole, ProtocolTable, RiskSettings } from './protocol.ts';
import { reachTallies } from './reach.ts';
import type { Items, ItemValue, Level, MissingItem, RiskResult } from './types.ts';

/**
 * What one published list says of one set of items, with everything that is not known.
 *
 * `possibleLevels` is exact: each unknown item may take any value of its own, all combinations are covered, none is left out.
 * Contradictions between items ("twice daily" without "once daily") are not ruled out, because the lists tick them apart.
 * Low is never given as `level` while a disease item is unknown: then `level` is null and `notYet` says what is missing. Its `atLeast`
 * is the lowest level not excluded; as unknown items tick nothing, that is the level withheld, and the sentence must not read as an
 * all-clear. An item that cannot be had today (`notAvailable`) is neither missing nor counted as possible, though a value given counts.
 * @param table      one edition of one list
 * @param items      known items of any list; absent = unknown. Items that are not on this list are ignored
 * @param ageYears   completed years, inside the ages of the list
 * @throws RangeError when the list is not for this age
 * @throws TypeError  when a known item has the wrong type; the message begins with its id
 * @source F2019form; RG2010; ADArule; AAPD6_2019
 */
export function evaluateProtocol(table: ProtocolTable, items: Items, ageYears: number, settings: RiskSettings): RiskResult {
  const list = compileList(table, ageYears, settings);
  checkItems(table, items);
  const tally = tallyOf(list, items);
  const verdict = list.verdict(tally);
  const counts = list.counts(tally);
  const unknown = listUnknownItems(table, list, items);
  const possibleLevels = sortLevels(
    reachTallies({ list, items, free: unknown, maxChanges: Number.POSITIVE_INFINITY, keep: 0 }).map(
      (reached) => list.verdict(reached.tally).level,
    ),
  );
  const missingDisease = unknown.filter((item) => roleOf(table, item) === 'disease');
  const isWithheld = verdict.level === 'low' && missingDisease.length > 0;
  const isBalanceWithoutDisease = table.kind === 'balance' && counts.disease === 0;
  return {
    protocol: table.id,
    edition: table.edition,
    screenName: table.screenName,
    levels: table.levels,
    level: isWithheld ? null : verdict.level,
    levelUnknownNotTicked: verdict.level,
    possibleLevels,
    needsConfirmation:
      possibleLevels.length > 1 || !verdict.published || isBalanceWithoutDisease || verdict.flags.includes('ten-moderate-lines'),
    notYet: isWithheld ? { atLeast: possibleLevels[0] ?? verdict.level, missing: missingDisease } : undefined,
    counts,
    usesProposalDefaults: !verdict.published,
    flags: [...verdict.flags, ...listRemarks(table, items, verdict.level)],
    missing: rankMissing({ table, list, items, unknown, tally, level: verdict.level }),
    ...explainLevel(table, items, ageYears, verdict),
  };
}

/** Items that the list reads at this age and that are not known, in the order of the list; without those that cannot be had today. */
export function listUnknownItems(table: ProtocolTable, list: CompiledList, items: Items): readonly string[] {
  return [...list.reads.keys()].filter((id) => items[id] === undefined && table.items[id]?.notAvailable === undefined);
}

/** @throws TypeError when a known item has the wrong type; the message begins with its id */
export function checkItems(table: ProtocolTable, items: Items): void {
  for (const [id, definition] of definitionsOf(table)) {
    const value = items[id];
    if (value === undefined) continue;
    if (definition.valueType === 'boolean' && typeof value !== 'boolean') throw new TypeError(`${id} must be true or false: ${value}`);
    if (definition.valueType === 'count' && !(typeof value === 'number' && Number.isInteger(value) && value >= 0)) {
      throw new TypeError(`${id} must be a whole number from 0: ${value}`);
    }
  }
}

const definitionsOf = keepByTable((table: ProtocolTable) => Object.entries(table.items));

function listRemarks(table: ProtocolTable, items: Items, level: Level): readonly string[] {
  return table.remarks.filter((r) => r.levels.includes(level) && anyHolds(r.anyOf, items)).map((r) => r.flag);
}

const ROLE_ORDER: readonly ItemRole[] = ['disease', 'risk', 'protective'];

function roleOf(table: ProtocolTable, item: string): ItemRole {
  const row = table.kind === 'balance' ? table.rows.find((r) => r.item === item) : undefined;
  return row?.role ?? table.items[item]?.role ?? 'risk';
}

interface Missing {
  readonly table: ProtocolTable;
  readonly list: CompiledList;
  readonly items: Items;
  readonly unknown: readonly string[];
  /** As the items stand, and the level it gives. */
  readonly tally: Tally;
  readonly level: Level;
}

/** Those that could change the level first; within that disease, risk, protective; within that the order of the list. */
function rankMissing({ table, list, items, unknown, tally, level }: Missing): readonly MissingItem[] {
  const missing = unknown.map((item): MissingItem => {
    const levelsIfFilled = listLevelsIfFilled(item, list, items, tally);
    return { item, role: roleOf(table, item), couldChangeLevel: levelsIfFilled.some((l) => l !== level), levelsIfFilled };
  });
  const place = (m: MissingItem) => (m.couldChangeLevel ? 0 : ROLE_ORDER.length) + ROLE_ORDER.indexOf(m.role);
  return missing.sort((a, b) => place(a) - place(b));
}

/** The levels when one unknown item takes each of its values: the rules that read it are added up anew, all others stand. */
function listLevelsIfFilled(item: string, list: CompiledList, items: Items, tally: Tally): readonly Level[] {
  const reading = list.reads.get(item);
  if (!reading) return [];
  const trial: Record<string, ItemValue | undefined> = {};
  for (const id of reading.readWith) trial[id] = items[id];
  const before = sumRules(reading.rules, trial, list.size);
  const levels = reading.classes.map((valueClass) => {
    trial[item] = nearestInClass(valueClass, undefined);
    const after = sumRules(reading.rules, trial, list.size);
    return list.verdict(tally.map((n, i) => n - (before[i] ?? 0) + (after[i] ?? 0))).level;
  });
  return sortLevels(levels);
}
