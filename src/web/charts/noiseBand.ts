import type { StoredReading } from '../../api/bundles.ts';
import { compareReadings } from '../../core/reading/compareReadings.ts';
import { logVarianceOfCv } from '../../core/reading/logSdOfCv.ts';
import { Z_95 } from '../../core/stats/normal.ts';
import { formatDate } from '../format.ts';
import { isCounted, sayRlu } from './storedReading.ts';

type Noise = Pick<StoredReading, 'cvAnalytical' | 'cvWithinPerson'>;

/** Standard deviation of ln(reading) of one occasion: swab noise and day-to-day variation together. */
const sdLogOf = ({ cvAnalytical, cvWithinPerson }: Noise) =>
  Math.sqrt(logVarianceOfCv(cvAnalytical, 'cvAnalytical') + logVarianceOfCv(cvWithinPerson, 'cvWithinPerson'));

/** 95 % band about a reading from its noise alone, RLU. */
export function noiseBand(reading: Noise & { readonly rlu: number }): [low: number, high: number] {
  const reach = Math.exp(Z_95 * sdLogOf(reading));
  return [reading.rlu / reach, reading.rlu * reach];
}

/** What the last two counted readings on one meter say of change. Never "improved", never an arrow. */
export function sayLastChange(readings: readonly StoredReading[]): string {
  const exact = readings.filter((r) => isCounted(r) && r.rlu !== null && r.rlu > 0 && r.bound === 'exact');
  const last = exact.at(-1);
  const before = exact.filter((r) => r.meterId === last?.meterId).at(-2);
  if (!last || last.rlu === null) return 'No reading that counts yet.';
  if (!before || before.rlu === null) return 'One reading that counts on this meter: no change can be told yet.';
  const { verdict } = compareReadings(before.rlu, last.rlu, sdLogOf(last));
  const since = `${formatDate(before.takenAt)} (${sayRlu(before)} RLU)`;
  if (verdict === 'within-noise') return `No change that this method can see since ${since}.`;
  const sentence = `${verdict === 'rise' ? 'Higher' : 'Lower'} than on ${since}, by more than noise explains.`;
  const isFromHigh = verdict === 'fall' && before.rlu >= before.cutoffRlu;
  return isFromHigh ? `${sentence} High first readings tend to fall without treatment; part of this fall is that.` : sentence;
}
