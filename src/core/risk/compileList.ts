import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import { anyHolds, appliesAtAge, conditionHolds, isInAgeRange, listValueClasses, type ValueClass } from './conditions.ts';
import type { BalanceTable, ColumnsTable, Condition, ProtocolTable, RiskSettings, ScoreTable } from './protocol.ts';
import type { Items, Level } from './types.ts';

/** Sums over the rules of one list; what each place means is the list's own affair. Small whole numbers, never above 31 once settled. */
export type Tally = readonly number[];

/** One thing that a list adds up. Rules read known values only, so an unknown item adds nothing. */
export interface Rule {
  readonly conditions: readonly Condition[];
  add(items: Items, tally: number[]): void;
}

export interface Verdict {
  readonly level: Level;
  /** False where the level rests on numbers or choices that the source leaves to judgement. */
  readonly published: boolean;
  readonly flags: readonly string[];
}

/**
 * A list for one age, in a form that is added up rule by rule: the level is a function of the sums alone.
 * That is what makes every search over unknown items exact and quick.
 */
export interface CompiledList extends SummedRules {
  /** Every item that a rule reads, in the order of the list. */
  readonly reads: ReadonlyMap<string, ItemReading>;
}

/** What the rules of a list make of one item. */
export interface ItemReading {
  readonly rules: readonly Rule[];
  /** What these rules read, this item included. */
  readonly readWith: readonly string[];
  /** Values that no rule can tell apart; empty for an item without a definition. */
  readonly classes: readonly ValueClass[];
}

interface SummedRules {
  readonly size: number;
  readonly rules: readonly Rule[];
  verdict(tally: Tally): Verdict;
  /** A tally that leads to the same level whatever is added afterwards. */
  settle(tally: Tally): Tally;
  counts(tally: Tally): Readonly<Record<string, number>>;
}

/**
 * @throws RangeError when the list is not for this age
 */
export function compileList(table: ProtocolTable, ageYears: number, settings: RiskSettings): CompiledList {
  if (!appliesAtAge(table, ageYears)) {
    const { fromAgeYears, belowAgeYears } = table.applies;
    const range = belowAgeYears === null ? `${fromAgeYears} and over` : `${fromAgeYears} to below ${belowAgeYears}`;
    throw new RangeError(`ageYears ${ageYears} is outside the ages of ${table.screenName}: ${range}`);
  }
  return compiledOf(table)(table.kind === 'score' ? ageYears : settings.lowSalivaMeansExtreme);
}

/** Compiled once for each table and for what its kind depends on: a score list on the age, the others on the setting at most. */
const compiledOf = keepByTable((table: ProtocolTable) =>
  keepByKey((variant: number | boolean): CompiledList => {
    const rules = compileRules(table, variant);
    return { ...rules, reads: listReads(rules.rules, table) };
  }),
);

function compileRules(table: ProtocolTable, variant: number | boolean): SummedRules {
  switch (table.kind) {
    case 'balance':
      return compileBalance(table, variant === true);
    case 'score':
      return compileScore(table, Number(variant));
    case 'columns':
      return compileColumns(table);
  }
}

function listReads(rules: readonly Rule[], { items }: ProtocolTable): ReadonlyMap<string, ItemReading> {
  const conditions = rules.flatMap((rule) => rule.conditions);
  const ids = [...new Set(conditions.map(({ item }) => item))];
  return new Map(
    ids.map((id) => {
      const definition = items[id];
      const own = rules.filter((rule) => rule.conditions.some(({ item }) => item === id));
      const readWith = [...new Set(own.flatMap((rule) => rule.conditions.map(({ item }) => item)))];
      return [id, { rules: own, readWith, classes: definition ? listValueClasses(definition, conditions) : [] }];
    }),
  );
}

/** The sums of all rules on these items. */
export function tallyOf(list: CompiledList, items: Items): Tally {
  return sumRules(list.rules, items, list.size);
}

/** The sums of some rules on these items. */
export function sumRules(rules: readonly Rule[], items: Items, size: number): Tally {
  const tally = new Array<number>(size).fill(0);
  for (const rule of rules) rule.add(items, tally);
  return tally;
}

/** A rule that adds 1 at `place` when any of the conditions holds. */
function tick(place: number, conditions: readonly Condition[]): Rule {
  return {
    conditions,
    add(items, tally) {
      if (anyHolds(conditions, items)) tally[place] = (tally[place] ?? 0) + 1;
    },
  };
}

const BALANCE_PLACES = { disease: 0, risk: 1, protective: 2, decisive: 3, lift: 4, bar: 5, suspicion: 6 } as const;

function compileBalance(table: BalanceTable, lowSalivaMeansExtreme: boolean): SummedRules {
  const { suspicion, defaults } = table;
  const rules = table.rows.map((row) => tick(BALANCE_PLACES[row.role], row.anyOf));
  for (const condition of table.decisive?.anyOf ?? []) rules.push(tick(BALANCE_PLACES.decisive, [condition]));
  for (const condition of table.lifts.anyOf) rules.push(tick(BALANCE_PLACES.lift, [condition]));
  for (const condition of table.barsLow) rules.push(tick(BALANCE_PLACES.bar, [condition]));
  if (suspicion) {
    rules.push({
      conditions: [...suspicion.anyOf, suspicion.settledBy],
      add(items, tally) {
        const isSuspected = anyHolds(suspicion.anyOf, items) && !conditionHolds(suspicion.settledBy, items);
        if (isSuspected) tally[BALANCE_PLACES.suspicion] = 1;
      },
    });
  }
  const liftAlone = lowSalivaMeansExtreme && table.liftAloneSource !== null;

  return {
    size: 7,
    rules,
    verdict(tally) {
      const [disease = 0, risk = 0, protective = 0, decisive = 0, lift = 0, bar = 0, suspicious = 0] = tally;
      const flags = suspicious > 0 && bar === 0 ? ['measure-saliva'] : [];
      if (disease > 0 || decisive > 0) return { level: lift > 0 ? 'extreme' : 'high', published: true, flags };
      if (liftAlone && lift > 0) return { level: 'extreme', published: true, flags: ['low-saliva-alone', ...flags] };
      const net = risk - protective;
      const isLow = risk <= defaults.lowMaxRisk && net <= defaults.lowMaxNet && bar === 0 && suspicious === 0;
      if (isLow) return { level: 'low', published: false, flags };
      const isHigh = risk >= defaults.highMinRisk && net >= defaults.highMinNet;
      if (isHigh)
        return { level: lift > 0 && table.lifts.alsoJudgedHigh ? 'extreme' : 'high', published: false, flags: ['judgement', ...flags] };
      return { level: 'moderate', published: false, flags };
    },
    settle(tally) {
      const [disease = 0, risk = 0, protective = 0, decisive = 0, lift = 0, bar = 0, suspicious = 0] = tally;
      const lifted = Math.min(lift, 1);
      if (disease > 0 || decisive > 0) return [1, 0, 0, 0, lifted, 0, 0];
      return [0, risk, protective, 0, lifted, Math.min(bar, 1), suspicious];
    },
    counts: ([disease = 0, risk = 0, protective = 0]) => ({ disease, risk, protective }),
  };
}

function compileScore(table: ScoreTable, ageYears: number): SummedRules {
  const rules = table.lines
    .filter((line) => isInAgeRange(line, ageYears))
    .map((line): Rule => {
      const cases = line.cases.filter((c) => isInAgeRange(c, ageYears));
      return {
        conditions: cases.map((c) => c.when),
        add(items, tally) {
          const points = cases.find((c) => conditionHolds(c.when, items))?.points ?? 0;
          tally[0] = (tally[0] ?? 0) + points;
          if (points === 10) tally[1] = (tally[1] ?? 0) + 1;
        },
      };
    });
  return {
    size: 2,
    rules,
    verdict([score = 0, highLines = 0]) {
      if (highLines > 0) return { level: 'high', published: true, flags: [] };
      if (score >= table.highFrom) return { level: 'high', published: true, flags: ['ten-moderate-lines'] };
      return { level: score >= table.moderateFrom ? 'moderate' : 'low', published: true, flags: [] };
    },
    settle: ([score = 0, highLines = 0]) => (highLines > 0 || score >= table.highFrom ? [table.highFrom, 1] : [score, 0]),
    counts: ([score = 0]) => ({ score }),
  };
}

const COLUMN_PLACES = { high: 0, moderate: 1, low: 2 } as const;
const DECISIVE_PLACE = 3;

function compileColumns(table: ColumnsTable): SummedRules {
  const rules = table.rows.flatMap((row) => [
    ...(row.countsAsTick ? [tick(COLUMN_PLACES[row.column], row.anyOf)] : []),
    ...(row.decisive ? [tick(DECISIVE_PLACE, row.anyOf)] : []),
  ]);
  return {
    size: 4,
    rules,
    verdict([high = 0, moderate = 0, low = 0, decisive = 0]) {
      if (decisive > 0) return { level: 'high', published: false, flags: [] };
      if (high + moderate + low === 0) return { level: 'moderate', published: false, flags: ['nothing-ticked'] };
      if (high >= moderate && high >= low) return { level: 'high', published: false, flags: [] };
      const isLow = low > moderate && high === 0;
      return { level: isLow ? 'low' : 'moderate', published: false, flags: [] };
    },
    settle: ([high = 0, moderate = 0, low = 0, decisive = 0]) => (decisive > 0 ? [0, 0, 0, 1] : [high, moderate, low, 0]),
    counts: ([high = 0, moderate = 0, low = 0]) => ({ high, moderate, low }),
  };
}
