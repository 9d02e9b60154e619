import type { SourceRef } from '../../visit/answer.ts';
import type { RegimenTables } from '../tables.ts';
import type { ConfirmedLevel } from '../types.ts';
import type { BenefitRow, LevelOutcome } from './benefitTables.ts';
import { numberNeededToTreat, wholePeople } from './numberNeededToTreat.ts';

export interface BenefitInput {
  readonly agentId: string;
  readonly ageYears: number;
  readonly confirmed?: ConfirmedLevel | undefined;
  readonly tables: Pick<RegimenTables, 'benefit'>;
}

export interface Benefit {
  /** For clinicians, in order: figure, number needed to treat or why none, what is not shown. Never for a patient. */
  readonly says: readonly string[];
  readonly sources: readonly SourceRef[];
}

/**
 * What an agent prevented in trials, and how many would have to be given it at this level. One pooled figure stands for one agent: effects
 * of different trials are never multiplied. Nothing is worked out while a part of it is from memory, or where a level's outcome does not
 * count what the trials counted.
 * @returns null for an agent without a figure at any age
 */
export function benefitOf(input: BenefitInput): Benefit | null {
  const { agentId, ageYears, tables } = input;
  const rows = tables.benefit.rows.filter((r) => r.agentId === agentId);
  if (rows.length === 0) return null;
  const row = rows.find((r) => ageYears >= r.fromAgeYears && ageYears < r.belowAgeYears);
  if (!row) return { says: ['No pooled figure for this age was read.'], sources: [] };
  const parts = [figureOf(row), numberOf(row, input), ...publishedOf(row)];
  return { says: parts.flatMap((p) => p.says), sources: parts.flatMap((p) => p.sources) };
}

/** Known well enough to stand on a screen as a figure. */
const isRead = ({ status }: SourceRef): boolean => status === 'read' || status === 'derived';
const notShown = (what: string, { status }: SourceRef): Benefit => ({
  says: [`Not shown: the figure of ${what} is ${status === 'mixed' ? 'partly ' : ''}from memory.`],
  sources: [],
});

function figureOf({ figure: { of, says, source } }: BenefitRow): Benefit {
  return isRead(source) ? { says: [says], sources: [source] } : notShown(of, source);
}

function numberOf(row: BenefitRow, { confirmed, ageYears, tables }: BenefitInput): Benefit {
  if (!isRead(row.figure.source)) return { says: [], sources: [] };
  if (!confirmed) return { says: ['Number needed to treat: the level is not confirmed.'], sources: [] };
  const outcome = tables.benefit.outcomes.find(
    (o) => o.protocols.includes(confirmed.protocol) && ageYears >= o.fromAgeYears && ageYears < o.belowAgeYears,
  );
  const baseline = outcome?.byLevel[confirmed.level];
  const { prevented } = row.figure;
  const mayCombine = row.combine?.outcomeId === outcome?.id && row.combine?.levels.includes(confirmed.level);
  const said = outcome && baseline !== undefined ? sayOutcome(outcome, baseline, confirmed) : undefined;
  if (!outcome || baseline === undefined || !prevented || !row.combine || !mayCombine) {
    return { says: [...(said?.says ?? []), `No number needed to treat is worked out: ${row.notCombined}`], sources: said?.sources ?? [] };
  }
  if (!isRead(outcome.source)) return notShown(`level ${confirmed.level}`, outcome.source);
  return { says: [...(said?.says ?? []), sayNumber(baseline, prevented), row.combine.caveat], sources: [outcome.source] };
}

const PERCENT = 100;

function sayOutcome({ unit, says, source }: LevelOutcome, baseline: number, { level }: ConfirmedLevel): Benefit {
  if (!isRead(source)) return notShown(`what became of level ${level}`, source);
  const figure = unit === 'share-of-people' ? `${Math.round(baseline * PERCENT)} in 100` : String(baseline);
  return { says: [`At level ${level}, ${says.replace('#', figure)}`], sources: [source] };
}

/** "Number needed to treat 41 (26 to 99)". An interval that reaches nothing prevented has no end. */
export function sayNumber(
  baseline: number,
  { at, range }: { readonly at: number; readonly range?: readonly [number, number] | undefined },
): string {
  const say = (prevented: number) => {
    const number = numberNeededToTreat(baseline, prevented);
    return number === null ? 'no end' : String(wholePeople(number));
  };
  return `Number needed to treat ${say(at)}${range ? ` (${say(range[1])} to ${say(range[0])})` : ', without an interval'}.`;
}

const publishedOf = ({ published = [] }: BenefitRow): Benefit[] =>
  published.map(({ says, source }) => (isRead(source) ? { says: [says], sources: [source] } : notShown(says, source)));
