import type { StoredReading } from '../../api/bundles.ts';
import type { Meter } from '../../core/reading/types.ts';
import { formatNumber } from '../format.ts';

/** The meter of a reading, as far as its record tells it. */
export function meterOf(reading: Omit<StoredReading, 'id' | 'takenAt' | 'rlu'>): Meter {
  const { meterId, meterName, cutoffRlu, lowestRlu, highestRlu, cvAnalytical, cvAnalyticalAssumed, cvWithinPerson, cvWithinPersonAssumed } =
    reading;
  const noise = { cvAnalytical, cvAnalyticalAssumed, cvWithinPerson, cvWithinPersonAssumed, ...(reading.own && { own: reading.own }) };
  return { id: meterId, name: meterName, cutoffRlu, lowestRlu, highestRlu, countdownS: 0, ...noise };
}

export const isCounted = ({ state }: Pick<StoredReading, 'state'>): boolean => state === 'valid' || state === 'flagged';

/** "5,150", "40 or less". */
export function sayRlu({ rlu, bound }: Pick<StoredReading, 'rlu' | 'bound'>): string {
  if (rlu === null) return 'none';
  const limit = bound === 'at-most' ? ' or less' : bound === 'at-least' ? ' or more' : '';
  return `${formatNumber(rlu)}${limit}`;
}
