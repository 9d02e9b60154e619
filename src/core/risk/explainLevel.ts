import { keepByTable } from '../keep/keepByTable.ts';
import type { SourceRef } from '../visit/answer.ts';
import type { Verdict } from './compileList.ts';
import { conditionHolds, isInAgeRange } from './conditions.ts';
import type { BalanceTable, ColumnsTable, Condition, ItemRole, ProtocolTable, ScoreTable } from './protocol.ts';
import type { Driver, Items, RiskResult } from './types.ts';

/** What ticked, before it is ranked: heavier rows come first within their kind. */
interface Tick {
  readonly item: string;
  readonly role: ItemRole;
  readonly decisive: boolean;
  readonly weight: number;
  readonly source: SourceRef;
}

/**
 * What pushes the level up and what protects, strongest first (items that decide alone, disease before risk, then heavier rows), and
 * the sources of everything that was used.
 */
export function explainLevel(
  table: ProtocolTable,
  items: Items,
  ageYears: number,
  verdict: Verdict,
): Pick<RiskResult, 'drivers' | 'protections' | 'sources'> {
  const ticks = listTicks(table, items, ageYears, verdict);
  const drivers = rank(ticks.filter((t) => t.role !== 'protective'));
  const protections = ticks.filter((t) => t.role === 'protective');
  const rules = table.steps.map((step) => step.source);
  const judged = verdict.published ? [] : judgementSources(table);
  return {
    drivers: drivers.map((t) => toDriver(table, t)),
    protections: protections.map((t) => toDriver(table, t)),
    sources: uniqueSources([...rules, ...judged, ...drivers.map((t) => t.source), ...protections.map((t) => t.source)]),
  };
}

function listTicks(table: ProtocolTable, items: Items, ageYears: number, verdict: Verdict): readonly Tick[] {
  switch (table.kind) {
    case 'balance':
      return listBalanceTicks(table, items, verdict);
    case 'score':
      return listScoreTicks(table, items, ageYears);
    case 'columns':
      return listColumnTicks(table, items);
  }
}

function listBalanceTicks(table: BalanceTable, items: Items, verdict: Verdict): readonly Tick[] {
  const lifting = verdict.level === 'extreme' ? table.lifts.anyOf : [];
  const deciding = [...(table.decisive?.anyOf ?? []), ...lifting];
  return table.rows.flatMap((row) => {
    const holding = row.anyOf.find((c) => conditionHolds(c, items));
    if (!holding) return [];
    const decisive = row.role === 'disease' || deciding.some((c) => c.item === row.item && conditionHolds(c, items));
    return [{ item: holding.item, role: row.role, decisive, weight: 1, source: row.source }];
  });
}

function listScoreTicks(table: ScoreTable, items: Items, ageYears: number): readonly Tick[] {
  return table.lines
    .filter((line) => isInAgeRange(line, ageYears))
    .flatMap((line): readonly Tick[] => {
      const scored = line.cases.find((c) => isInAgeRange(c, ageYears) && conditionHolds(c.when, items));
      if (scored) {
        const role = upwardRole(table, scored.when);
        return [{ item: scored.when.item, role, decisive: scored.points === 10, weight: scored.points, source: line.source }];
      }
      const isFavourable = table.items[line.item]?.role === 'protective' && items[line.item] === true;
      return isFavourable ? [{ item: line.item, role: 'protective', decisive: false, weight: 0, source: line.source }] : [];
    });
}

function listColumnTicks(table: ColumnsTable, items: Items): readonly Tick[] {
  const weights = { high: 2, moderate: 1, low: 0 };
  return table.rows.flatMap((row): readonly Tick[] => {
    const holding = row.anyOf.find((c) => conditionHolds(c, items));
    if (!holding) return [];
    const role = row.column === 'low' ? 'protective' : upwardRole(table, holding);
    return [{ item: holding.item, role, decisive: row.decisive, weight: weights[row.column], source: row.source }];
  });
}

/** Whatever pushes up is disease or risk; the absence of something favourable is a risk. */
function upwardRole(table: ProtocolTable, condition: Condition): ItemRole {
  return table.items[condition.item]?.role === 'disease' ? 'disease' : 'risk';
}

function rank(ticks: readonly Tick[]): readonly Tick[] {
  const place = (t: Tick) => (t.decisive ? 0 : 2) + (t.role === 'disease' ? 0 : 1);
  return [...ticks].sort((a, b) => place(a) - place(b) || b.weight - a.weight);
}

function toDriver(table: ProtocolTable, { item, role, decisive, source }: Tick): Driver {
  return { item, role, decisive, changeable: table.items[item]?.changeable === 'person', source };
}

function judgementSources(table: ProtocolTable): readonly SourceRef[] {
  if (table.kind === 'balance') return [table.defaults.source];
  return table.kind === 'columns' ? [table.judgement] : [];
}

const withoutNote = keepByTable(({ key, status }: SourceRef) => ({ name: `${key} ${status}`, plain: { key, status } }));

/** One entry for each key and status, in the order of first use. */
export function uniqueSources(sources: readonly SourceRef[]): readonly SourceRef[] {
  const byKey = new Map<string, SourceRef>();
  for (const source of sources) {
    const { name, plain } = withoutNote(source);
    if (!byKey.has(name)) byKey.set(name, plain);
  }
  return [...byKey.values()];
}
