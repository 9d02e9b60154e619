import { normalCdf } from './normal.ts';

/**
 * Average run length of a chart of single values with limits at ± `limit` sd (or only above), for normal values whose mean has shifted.
 * @param limit    in sd, above 0
 * @param sides    1 watches for a rise only
 * @param shiftSd  shift of the mean in sd, any sign
 * @returns at least 1; Infinity where a double cannot hold it
 * @throws RangeError naming limit or shiftSd
 * @accuracy relative 1e-13: closed form
 * @source montgomery2013
 */
export function shewhartRunLength(limit: number, sides: 1 | 2, shiftSd: number): number {
  if (!(limit > 0 && Number.isFinite(limit))) throw new RangeError(`limit must be above 0: ${limit}`);
  if (!Number.isFinite(shiftSd)) throw new RangeError(`shiftSd must be finite: ${shiftSd}`);
  return 1 / (normalCdf(shiftSd - limit) + (sides === 2 ? normalCdf(-shiftSd - limit) : 0));
}
