import type { StoredReading } from '../../../api/bundles.ts';
import { recomputeReading } from '../../../core/reading/recomputeReading.ts';
import { sayRlu } from '../../../core/reading/sayRlu.ts';
import { isCounted, meterOf } from '../../charts/storedReading.ts';
import { content } from '../../content.ts';

export interface SaidAgain {
  readonly id: string;
  readonly takenAt: string;
  readonly rlu: string;
  readonly sentence: string;
}

/** Readings that were told one thing and would be told another today, oldest first. */
export function sayRecomputed(readings: readonly StoredReading[]): readonly SaidAgain[] {
  return readings.flatMap((reading) => {
    const { id, takenAt, onDate, told } = reading;
    if (told === null || onDate === null || !isCounted(reading)) return [];
    const { sentence } = recomputeReading(told, { meter: meterOf(reading), table: content.readingNoise }, onDate);
    return sentence === null ? [] : [{ id, takenAt, rlu: sayRlu(told.rlu, told.bound), sentence }];
  });
}
