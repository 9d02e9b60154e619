import type { StoredReading } from '../../api/bundles.ts';
import { logVarianceOfCv } from '../../core/reading/logSdOfCv.ts';
import { Z_95 } from '../../core/stats/normal.ts';

type Noise = Pick<StoredReading, 'cvAnalytical' | 'cvWithinPerson'>;

/** Standard deviation of ln(reading) of one occasion: swab noise and day-to-day variation together. */
const sdLogOf = ({ cvAnalytical, cvWithinPerson }: Noise) =>
  Math.sqrt(logVarianceOfCv(cvAnalytical, 'cvAnalytical') + logVarianceOfCv(cvWithinPerson, 'cvWithinPerson'));

/** 95 % band about a reading from its noise alone, RLU. */
export function noiseBand(reading: Noise & { readonly rlu: number }): [low: number, high: number] {
  const reach = Math.exp(Z_95 * sdLogOf(reading));
  return [reading.rlu / reach, reading.rlu * reach];
}
