import type { StoredReading } from '../../../api/bundles.ts';
import { recomputeReading, type StoredVerdict, sayVerdictWord } from '../../../core/reading/recomputeReading.ts';
import { sayRlu } from '../../../core/reading/sayRlu.ts';
import { isCounted, meterOf } from '../../charts/storedReading.ts';
import { content } from '../../content.ts';

export interface SaidAgain {
  readonly id: string;
  readonly takenAt: string;
  readonly rlu: string;
  readonly sentence: string;
}

/** Readings that were told one thing and would be told another today, or count no more, oldest first. */
export function sayRecomputed(readings: readonly StoredReading[]): readonly SaidAgain[] {
  return readings.flatMap((reading) => {
    const { id, takenAt, onDate, told } = reading;
    if (told === null || onDate === null) return [];
    if (!isCounted(reading))
      return [{ id, takenAt, rlu: sayRlu(told.rlu, told.bound), sentence: sayNotCountedSince(told, reading.reasons) }];
    const { sentence } = recomputeReading(told, { meter: meterOf(reading), table: content.readingNoise }, onDate);
    return sentence === null ? [] : [{ id, takenAt, rlu: sayRlu(told.rlu, told.bound), sentence }];
  });
}

/** Told as counted, and put out of every decision later: the newest reason says by whom and why. */
const sayNotCountedSince = ({ verdict }: StoredVerdict, reasons: readonly string[]): string =>
  `Then: ${sayVerdictWord(verdict)}. Today: not counted${reasons.length === 0 ? '' : `, because ${reasons.at(-1)}`}.`;
