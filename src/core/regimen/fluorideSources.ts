import { type FluorideSource, fluorideIntake } from './fluorideIntake.ts';
import { itemPpm } from './itemTraits.ts';
import type { RegimenTables } from './tables.ts';
import type { OtherFluoride, PersonFacts, PlanLine, ShelfItem } from './types.ts';

/** An item as it would stand in a plan: with the amount for the age, and whether it is in use already. */
export interface PlannedUse {
  readonly item: ShelfItem;
  readonly use: ShelfItem['use'];
  readonly state: PlanLine['state'];
}

const ML_PER_L = 1_000;
const DAYS_PER_YEAR = 365;
/** Swallowed on purpose, all of it. */
const SWALLOWED = { perDay: 1, swallowedFraction: 1, isNoAccident: true } as const;

export function holdsFluoride(item: ShelfItem, tables: RegimenTables): boolean {
  return tables.agents.find((a) => a.id === item.agentId)?.ppmRange !== undefined || (itemPpm(item) ?? 0) > 0;
}

/** One pack as a source. What is put on at the practice counts by its days of a year. */
export function sourceOf({ item, use }: Pick<PlannedUse, 'item' | 'use'>, facts: PersonFacts, tables: RegimenTables): FluorideSource {
  const pack = { name: item.form, ppm: itemPpm(item), amountG: use.amountG, amountMl: use.amountMl };
  if (use.atVisit === true) return visitSource(pack, item, tables);
  const isPaste = tables.agents.find((a) => a.id === item.agentId)?.meets.includes('fluoride-base') === true;
  const amount = isPaste ? findByAge(tables.pasteAmounts, facts.ageYears) : undefined;
  return {
    ...pack,
    perDay: use.timesPerDay,
    ...(item.agentId === 'F_SUPP' && { swallowedFraction: 1 }),
    ...(amount && { sources: [amount.source] }),
  };
}

function visitSource(pack: FluorideSource, { agentId }: ShelfItem, { fluoride }: RegimenTables): FluorideSource {
  const row = fluoride.atVisit.find((r) => r.agentId === agentId);
  const common = {
    swallowedFraction: 1,
    isNoAccident: true,
    perDay: row && row.timesPerYear / DAYS_PER_YEAR,
    sources: row && [row.source],
  };
  const most = row?.mostMgSwallowed;
  return most === undefined ? { ...pack, ...common } : { name: pack.name, mgPerUse: most, ...common };
}

/**
 * What the person takes besides the packs of the plan: water, salt, tablets; and of what a pack takes the place of, as much as there was
 * more of it before, so that together the larger of the two counts.
 */
export function sourcesBesides(
  uses: readonly Pick<PlannedUse, 'item' | 'use'>[],
  facts: PersonFacts,
  tables: RegimenTables,
): readonly FluorideSource[] {
  const rest = othersOf(facts, tables).flatMap(({ source, replacedBy }) => {
    const instead = uses.filter(({ item }) => item.agentId === replacedBy);
    if (instead.length === 0) return [source];
    const of = (sources: readonly FluorideSource[]) => swallowedMg(sources, facts, tables);
    const more = of([source]) - of(instead.map((use) => sourceOf(use, facts, tables)));
    return more > 0 ? [{ ...SWALLOWED, name: source.name, mgPerUse: more, sources: source.sources }] : [];
  });
  return [waterSource(facts), ...rest];
}

/** mg F a day that a pack of this agent takes the place of; what is not known of it counts as nothing. */
export function mgReplacedBy(agentId: string, facts: PersonFacts, tables: RegimenTables): number {
  const before = othersOf(facts, tables).filter(({ replacedBy }) => replacedBy === agentId);
  return swallowedMg(
    before.map(({ source }) => source),
    facts,
    tables,
  );
}

/** mg F a day; what is not known counts as nothing. */
export function swallowedMg(sources: readonly FluorideSource[], { ageMonths }: PersonFacts, { fluoride }: RegimenTables): number {
  return fluorideIntake({ ageMonths, sources, tables: fluoride }).mgPerDay;
}

const othersOf = (facts: PersonFacts, tables: RegimenTables): readonly Other[] => [
  ...otherSources(facts, tables),
  ...varnishSource(facts, tables).map((source) => ({ source, replacedBy: 'F_VARNISH' })),
];

interface Other {
  readonly source: FluorideSource;
  readonly replacedBy?: string;
}

/** Nobody asked: one source that is not known. */
function otherSources(facts: PersonFacts, tables: RegimenTables): readonly Other[] {
  const { otherFluoride } = facts;
  if (otherFluoride === undefined) return [{ source: { name: 'other fluoride at home', ...SWALLOWED } }];
  return otherFluoride.map((kind) => otherSource(kind, facts, tables));
}

function otherSource(kind: OtherFluoride, facts: PersonFacts, { fluoride }: RegimenTables): Other {
  switch (kind) {
    case 'fluoridated-salt':
      return { source: saltSource(facts) };
    case 'fluoride-tablets-or-drops':
      return { source: { name: 'fluoride tablets or drops', mgPerUse: facts.supplementFluorideMgPerDay, ...SWALLOWED } };
    case 'naf-rinse-daily': {
      const { ppm, amountMl, source } = fluoride.homeRinse;
      return { source: { name: 'the rinse used already', ppm, amountMl, perDay: 1, sources: [source] }, replacedBy: 'F_RINSE_005' };
    }
    case 'professional-gel':
      return { source: { name: 'gel or foam at the practice', ...SWALLOWED }, replacedBy: 'F_GEL_APF' };
    case 'other':
      return { source: { name: 'something else used at home', ...SWALLOWED } };
  }
}

function saltSource({ saltFluorideMgPerKg: ppm, saltGPerDay: amountG }: PersonFacts): FluorideSource {
  const name =
    ppm === undefined && amountG !== undefined
      ? 'fluoride in the salt'
      : ppm !== undefined && ppm > 0 && amountG === undefined
        ? 'amount of salt eaten'
        : 'salt with fluoride';
  return { name, ppm, amountG, ...SWALLOWED };
}

function varnishSource({ varnishDaysPerYear: days, ageYears }: PersonFacts, tables: RegimenTables): readonly FluorideSource[] {
  if (days === 0) return [];
  const row = findByAge(tables.varnishAmounts, ageYears);
  const amount = { amountMl: row?.amountMl, ppm: tables.fluoride.varnishMgPerMl * ML_PER_L };
  const sources = row && [row.source];
  const perDay = days === undefined ? undefined : days / DAYS_PER_YEAR;
  return [{ name: 'varnish at the practice', ...amount, perDay, swallowedFraction: 1, isNoAccident: true, sources }];
}

function waterSource({ waterFluorideMgPerL: ppm, waterLitresPerDay: litres }: PersonFacts): FluorideSource {
  const isKnown = ppm === 0 || (ppm !== undefined && litres !== undefined);
  const name = isKnown || ppm === undefined ? 'water' : 'amount of water drunk';
  return { name, ppm, amountMl: litres === undefined ? undefined : litres * ML_PER_L, ...SWALLOWED };
}

function findByAge<T extends { readonly fromAgeYears: number; readonly belowAgeYears: number }>(
  rows: readonly T[],
  ageYears: number,
): T | undefined {
  return rows.find((r) => ageYears >= r.fromAgeYears && ageYears < r.belowAgeYears);
}
