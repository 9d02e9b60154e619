import { normalCdf, Z_95 } from '../stats/normal.ts';
import { requirePositive } from './requirePositive.ts';

export interface ReadingChange {
  /** second / first */
  readonly ratio: number;
  readonly logRatio: number;
  readonly z: number;
  readonly pTwoSided: number;
  readonly ratioInterval: { readonly low: number; readonly high: number };
  readonly verdict: 'rise' | 'fall' | 'within-noise';
}

/**
 * Two readings of one person on one meter: is the change larger than the noise?
 * Log-normal, same noise both times, no trend in between (Fokkema's form of the reference change value, as a test).
 * @param firstRlu     relative light units, above 0
 * @param secondRlu    relative light units, above 0, same meter
 * @param sdLogSingle  sd of ln(reading) of one occasion: repeatability and day-to-day variation together, above 0
 * @returns ratio with 95 % interval; swapping the readings inverts it. `rise` or `fall` when the two-sided p is under 0.05
 * @throws RangeError naming the parameter
 * @source fokkema2006
 */
export function compareReadings(firstRlu: number, secondRlu: number, sdLogSingle: number): ReadingChange {
  requirePositive(firstRlu, 'firstRlu');
  requirePositive(secondRlu, 'secondRlu');
  requirePositive(sdLogSingle, 'sdLogSingle');
  const logRatio = Math.log(secondRlu) - Math.log(firstRlu);
  const sdOfDifference = Math.SQRT2 * sdLogSingle;
  const z = logRatio / sdOfDifference;
  const pTwoSided = Math.min(1, 2 * normalCdf(-Math.abs(z)));
  const reach = Z_95 * sdOfDifference;
  return {
    ratio: secondRlu / firstRlu,
    logRatio,
    z,
    pTwoSided,
    ratioInterval: { low: Math.exp(logRatio - reach), high: Math.exp(logRatio + reach) },
    verdict: pTwoSided >= 0.05 ? 'within-noise' : z > 0 ? 'rise' : 'fall',
  };
}
