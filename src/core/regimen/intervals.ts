import type { Level } from '../risk/types.ts';
import type { OldBitewingRow, RecallRow } from './tables.ts';
import type { ConfirmedLevel, Interval, Plan } from './types.ts';

/**
 * Months to the next routine visit, by the table of the list that the level was confirmed on; for a list without a table, the bounds for
 * the age, or null where there is none.
 */
export function findRecall({ level, protocol }: ConfirmedLevel, ageYears: number, rows: readonly RecallRow[]): Interval | null {
  const fitting = rows.filter((r) => ageYears >= r.fromAgeYears && ageYears < r.belowAgeYears);
  const row = fitting.find((r) => r.protocols.includes(protocol) && r.level === level) ?? fitting.find((r) => r.protocols.length === 0);
  return row ? { fromMonths: row.fromMonths, toMonths: row.toMonths, table: row.table, source: row.source } : null;
}

/** The superseded table of bitewings, to be shown as such; every level but low is its "increased risk" column. */
export function findOldBitewings(level: Level, ageYears: number, rows: readonly OldBitewingRow[]): Plan['bitewingsOldTable'] {
  const row = rows.find((r) => ageYears >= r.fromAgeYears && ageYears < r.belowAgeYears && r.raised === (level !== 'low'));
  return row ? { fromMonths: row.fromMonths, toMonths: row.toMonths, label: row.label, source: row.source } : null;
}
