import type { Level } from '../../risk/types.ts';
import type { SourceRef } from '../../visit/answer.ts';
import type { Finding } from '../../visit/types.ts';
import { findCareRow } from '../careNeeds.ts';
import { atPlace } from '../places.ts';
import type { RegimenTables } from '../tables.ts';
import type { ConfirmedLevel, Jurisdiction, PersonFacts } from '../types.ts';
import { type Given, PATHWAY_TOPICS, type Pathway, type PathwayRow, type PathwayTopic } from './pathway.ts';
import { sayDifferences } from './sayDifferences.ts';

export interface ComparePathwaysInput {
  readonly facts: PersonFacts;
  readonly confirmed?: ConfirmedLevel | undefined;
  readonly findings: readonly Finding[];
  readonly jurisdiction: Jurisdiction;
  readonly tables: RegimenTables;
}

export interface GivenHere extends Given {
  readonly topic: PathwayTopic;
  /** Rules of age that stop something it names, at this place and age: "under 16 years (C05)". */
  readonly tooYoung: readonly string[];
}

export interface PathwayView {
  readonly id: string;
  readonly name: string;
  readonly edition: string;
  /** The practice's own list takes its care from it. */
  readonly isOwn: boolean;
  /** What it calls its row. */
  readonly called: string;
  readonly gives: readonly GivenHere[];
  readonly source: SourceRef;
}

export interface PathwayComparison {
  readonly level: Level;
  /** The practice's own first, then in the order of the table. */
  readonly pathways: readonly PathwayView[];
  /** Those that say nothing for this age and level, and why. */
  readonly silent: readonly { readonly name: string; readonly because: string }[];
  /** One sentence for each topic on which they differ. */
  readonly differences: readonly string[];
}

/**
 * What each published pathway would give at this age and confirmed level, side by side. It knows no reading: the swab has no part in a
 * pathway. Nothing here enters a plan, and no pathway lifts a rule; what the label ages of the place stop is said beside what names it.
 * @returns null before a level is confirmed
 */
export function comparePathways(input: ComparePathwaysInput): PathwayComparison | null {
  const { confirmed, tables } = input;
  if (!confirmed) return null;
  const own = findCareRow({ ...input, result: null })?.table;
  const views = tables.pathways.flatMap((pathway) => {
    const row = findRow(pathway, input, confirmed.level);
    return row ? [viewOf(pathway, row, pathway.name === own, input)] : [];
  });
  const pathways = [...views.filter((v) => v.isOwn), ...views.filter((v) => !v.isOwn)];
  const silent = tables.pathways
    .filter(({ id }) => !views.some((v) => v.id === id))
    .map(({ name, speaksOf }) => ({ name, because: `it speaks of ${speaksOf}` }));
  return { level: confirmed.level, pathways, silent, differences: sayDifferences(pathways) };
}

function findRow({ rows }: Pathway, { facts: { ageYears }, findings }: ComparePathwaysInput, level: Level): PathwayRow | undefined {
  const hasRootLesion = findings.some((f) => f.kind === 'root-lesion' && f.activity !== 'inactive');
  const fitting = rows.filter((r) => r.levels.includes(level) && ageYears >= r.fromAgeYears && ageYears < r.belowAgeYears);
  const forRoots = hasRootLesion ? fitting.find((r) => r.withRootLesion) : undefined;
  return forRoots ?? fitting.find((r) => !r.withRootLesion);
}

function viewOf({ id, name, edition }: Pathway, row: PathwayRow, isOwn: boolean, input: ComparePathwaysInput): PathwayView {
  const gives = PATHWAY_TOPICS.flatMap((topic): GivenHere[] => {
    const given = row.gives[topic];
    return given ? [{ topic, ...given, tooYoung: tooYoungFor(given, input) }] : [];
  });
  return { id, name, edition, isOwn, called: row.called, gives, source: row.source };
}

function tooYoungFor({ agentIds = [] }: Given, { facts, jurisdiction, tables }: ComparePathwaysInput): readonly string[] {
  return tables.rules.flatMap(({ id, level, trigger: { ageBelowYears }, traits, appliesOnlyIfTrait, ...rule }) => {
    if (level !== 'stop' || !ageBelowYears || (traits && appliesOnlyIfTrait)) return [];
    const years = atPlace(ageBelowYears, jurisdiction);
    const isNamed = agentIds.some((agentId) => rule.agentIds.includes(agentId));
    return isNamed && facts.ageYears < years ? [`under ${years} years (${id})`] : [];
  });
}
