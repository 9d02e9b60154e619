import type { UnknownKind } from '../visit/answer.ts';
import { monthAfter, sayMonth } from '../visit/dateOrMonth.ts';
import type { MouthDecision } from '../visit/types.ts';
import { findOldBitewings } from './intervals.ts';
import type { PlanSettings, RegimenTables } from './tables.ts';
import type { ConfirmedLevel, PersonFacts, Plan } from './types.ts';

/** ISO day or month, "never", or why it is not known. */
export type LastBitewings = { readonly on: string } | { readonly unknown: UnknownKind };

export interface BitewingsInput {
  readonly confirmed?: ConfirmedLevel | undefined;
  readonly mouth?: Pick<MouthDecision, 'kind' | 'reasons'> | undefined;
  readonly facts: Pick<PersonFacts, 'ageYears'>;
  readonly settings: PlanSettings;
  readonly tables: Pick<RegimenTables, 'oldBitewings'>;
  /** Absent = not asked. */
  readonly lastBitewings?: LastBitewings | undefined;
  /** ISO local date of the visit; absent = nothing is called due. */
  readonly onDate?: string | undefined;
}

type BitewingPlan = Pick<Plan, 'bitewings' | 'bitewingsDue' | 'bitewingsSentence' | 'bitewingsOldTable'>;

export const NEVER = 'never';
const NONE: BitewingPlan = { bitewings: null, bitewingsDue: null, bitewingsSentence: '', bitewingsOldTable: null };
const KINDS: Readonly<Record<UnknownKind, string>> = {
  'not-asked': 'not asked',
  'does-not-know': 'not known to the patient',
  declined: 'declined',
  'out-of-date': 'out of date',
};
const DECIDES = 'the dentist decides';

/**
 * Bitewings by the practice's own setting alone; the old table is beside it and never instead of it. Said to the month, and never before
 * a level is confirmed. Without teeth, or with roots alone, there is nothing that bitewings show.
 */
export function planBitewings(input: BitewingsInput): BitewingPlan {
  const { confirmed, mouth, facts, settings, tables } = input;
  if (mouth?.kind === 'level-does-not-apply' || mouth?.reasons.includes('overdenture-roots')) return NONE;
  const last = input.lastBitewings ?? { unknown: 'not-asked' };
  if (!confirmed) return { ...NONE, bitewingsSentence: sentence(sayLast(last), 'next: the level is not confirmed yet') };
  const bitewingsOldTable = findOldBitewings(confirmed.level, facts.ageYears, tables.oldBitewings);
  const months = settings.bitewingMonths?.[confirmed.level];
  if (!months) {
    return { ...NONE, bitewingsOldTable, bitewingsSentence: sentence(sayLast(last), "next: the practice's own interval is not set") };
  }
  const [fromMonths, toMonths] = months;
  const bitewings = { fromMonths, toMonths, basis: 'practice-setting' } as const;
  const due = dueFrom(last, months, input.onDate);
  return { bitewings, bitewingsDue: due, bitewingsOldTable, bitewingsSentence: sentence(sayLast(last), sayNext(due, months)) };
}

function dueFrom(last: LastBitewings, [from, to]: readonly [number, number], onDate: string | undefined): Plan['bitewingsDue'] {
  if (!('on' in last) || last.on === NEVER) return null;
  const fromMonth = monthAfter(last.on, from);
  return { last: last.on, fromMonth, toMonth: monthAfter(last.on, to), isDue: onDate !== undefined && onDate.slice(0, 7) >= fromMonth };
}

function sayLast(last: LastBitewings): string {
  if ('unknown' in last) return `Last bitewings: date not known (${KINDS[last.unknown]})`;
  return last.on === NEVER ? 'Bitewings: never taken' : `Last bitewings: ${sayMonth(last.on)}`;
}

function sayNext(due: Plan['bitewingsDue'], [from, to]: readonly [number, number]): string {
  const every = from === to ? `${from} months` : `${from} to ${to} months`;
  if (!due) return `every ${every} by the practice's own setting; ${DECIDES}`;
  const until = due.fromMonth === due.toMonth ? '' : ` to ${sayMonth(due.toMonth)}`;
  const next = due.isDue ? `due since ${sayMonth(due.fromMonth)}` : `next in ${sayMonth(due.fromMonth)}${until}`;
  return `${next}, ${every} by the practice's own setting; ${DECIDES}`;
}

const sentence = (last: string, next: string): string => `${last}; ${next}.`;
