import type { Level } from '../../risk/types.ts';
import type { CheckView } from '../checkItem.ts';
import type { Agent, RegimenTables } from '../tables.ts';
import { type TriggerPart, triggerState } from '../triggerState.ts';
import type { NeedKind } from '../types.ts';

/**
 * A rule that a practice wrote itself for something that is never proposed by itself: for whom a dentist may choose it. It narrows; every
 * safety rule still holds. Only for hypochlorite it opens what is off without one.
 */
export interface LocalProtocol {
  readonly id: string;
  readonly name: string;
  /** Name of the member with the right to sign who wrote it. */
  readonly author: string;
  /** Local date, ISO, from which it holds. */
  readonly date: string;
  readonly agentId: string;
  /** Percent; absent = any strength, which hypochlorite never has. */
  readonly percentAtMost?: number | undefined;
  readonly timesPerWeekAtMost: number;
  readonly courseDaysAtMost: number;
  /** Confirmed levels that it is for. */
  readonly levels: readonly Level[];
  readonly needs: readonly NeedKind[];
  /** Completed years, half-open. */
  readonly fromAgeYears: number;
  readonly belowAgeYears?: number | undefined;
  readonly exclusions: LocalExclusions;
  /** Kept for the plans that were made under it. */
  readonly retired?: { readonly on: string; readonly by: string; readonly reason: string } | undefined;
}

/** Ids of the lists of conditions, medicines and allergies. */
export interface LocalExclusions {
  readonly conditions: readonly string[];
  readonly medicines: readonly string[];
  readonly allergies: readonly string[];
  readonly pregnant?: true | undefined;
}

/** How a plan line names it. */
export type ProtocolName = Pick<LocalProtocol, 'name' | 'author' | 'date'>;

export const HYPOCHLORITE = 'NAOCL';

/** Those that hold on a day: begun, and not retired on it or before. */
export function protocolsOn(protocols: readonly LocalProtocol[], onDate: string): readonly LocalProtocol[] {
  return protocols.filter(({ date, retired }) => date <= onDate && (retired === undefined || onDate < retired.on));
}

export type Ruling =
  /** No protocol that counts is about this agent. */
  | { readonly kind: 'none' }
  | { readonly kind: 'covers'; readonly protocol: LocalProtocol }
  /** What keeps this person or pack out of it, or has to be known first. */
  | { readonly kind: 'outside' | 'ask'; readonly protocol: LocalProtocol; readonly parts: readonly TriggerPart[] };

/** The protocol that is kindest to this person and pack: one that covers them, else one with something to ask, else the first. */
export function ruleByProtocol(view: CheckView, agent: Agent): Ruling {
  if (!agent.byChoiceOnly) return { kind: 'none' };
  const rulings = (view.localProtocols ?? [])
    .filter((p) => p.agentId === agent.id && doesCount(p, view.tables))
    .map((p) => ruleOf(p, view));
  const kindest = (['covers', 'ask', 'outside'] as const).map((kind) => rulings.find((r) => r.kind === kind));
  return kindest.find((r) => r !== undefined) ?? { kind: 'none' };
}

/** Named, signed and dated; for hypochlorite with a strength within the highest one. */
function doesCount({ name, author, date, agentId, percentAtMost }: LocalProtocol, { highestHypochloritePercent }: RegimenTables): boolean {
  if (name.trim() === '' || author.trim() === '' || !/^\d{4}-\d{2}-\d{2}$/.test(date)) return false;
  return agentId !== HYPOCHLORITE || (percentAtMost !== undefined && percentAtMost <= highestHypochloritePercent);
}

function ruleOf(protocol: LocalProtocol, view: CheckView): Ruling {
  const parts = outsideParts(protocol, view);
  const outside = parts.filter((p) => p.holds === true);
  if (outside.length > 0) return { kind: 'outside', protocol, parts: outside };
  const unknown = parts.filter((p) => p.holds === 'unknown');
  return unknown.length > 0 ? { kind: 'ask', protocol, parts: unknown } : { kind: 'covers', protocol };
}

const DAYS_PER_WEEK = 7;
/** Twice a week is typed as a fraction of a day. */
const ROUNDING = 1e-6;

function outsideParts(protocol: LocalProtocol, view: CheckView): readonly TriggerPart[] {
  const { fromAgeYears, belowAgeYears, levels, percentAtMost, timesPerWeekAtMost, courseDaysAtMost } = protocol;
  const { facts, level, item } = view;
  const { timesPerDay, courseDays } = item.use;
  const above = (value: number | undefined, most: number) => (value === undefined ? 'unknown' : value > most + ROUNDING);
  const onPack = (label: string, holds: TriggerPart['holds']): TriggerPart => ({ label, holds, ask: 'pack', private: false });
  const ofAge = (label: string, holds: boolean): TriggerPart => ({ label, holds, ask: 'ageYears', private: false });
  return [
    ofAge(`under ${fromAgeYears} years`, facts.ageYears < fromAgeYears),
    ...(belowAgeYears === undefined ? [] : [ofAge(`${belowAgeYears} years or more`, facts.ageYears >= belowAgeYears)]),
    {
      label: level === undefined ? 'confirmed level' : `level ${level}`,
      holds: level === undefined ? 'unknown' : !levels.includes(level),
      ask: 'level',
      private: false,
    },
    ...(percentAtMost === undefined ? [] : [onPack(`stronger than ${percentAtMost} %`, above(item.percent, percentAtMost))]),
    onPack(`more than ${timesPerWeekAtMost} times a week`, above(timesPerDay * DAYS_PER_WEEK, timesPerWeekAtMost)),
    // A use without an end is longer than any course.
    ...(item.use.atVisit
      ? []
      : [onPack(`longer than ${courseDaysAtMost} days`, above(courseDays ?? Number.POSITIVE_INFINITY, courseDaysAtMost))]),
    ...exclusionParts(protocol, view),
  ];
}

function exclusionParts(
  { exclusions: { conditions, medicines, allergies, pregnant } }: LocalProtocol,
  view: CheckView,
): readonly TriggerPart[] {
  return triggerState(
    {
      ...(conditions.length > 0 && { conditions }),
      ...(medicines.length > 0 && { medicines }),
      ...(allergies.length > 0 && { allergies }),
      ...(pregnant && { pregnant, breastfeeding: true }),
    },
    view,
  ).parts;
}

export const protocolNameOf = ({ name, author, date }: LocalProtocol): ProtocolName => ({ name, author, date });
