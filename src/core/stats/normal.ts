import stdlibCdf from '@stdlib/stats-base-dists-normal-cdf';
import stdlibLogCdf from '@stdlib/stats-base-dists-normal-logcdf';
import stdlibLogPdf from '@stdlib/stats-base-dists-normal-logpdf';
import stdlibQuantile from '@stdlib/stats-base-dists-normal-quantile';

/** Standard normal distribution function, accurate in the lower tail: for the upper tail take the cdf of -z. */
export const normalCdf = (z: number): number => stdlibCdf(z, 0, 1);

/** Natural log of the standard normal distribution function; stays finite far below where the cdf itself is 0. */
export const normalLogCdf = (z: number): number => stdlibLogCdf(z, 0, 1);

/** Natural log of the standard normal density. */
export const normalLogPdf = (z: number): number => stdlibLogPdf(z, 0, 1);

/** density / distribution function at z (inverse Mills ratio): the slope of the log cdf; about -z far below zero. */
export const inverseMills = (z: number): number => Math.exp(normalLogPdf(z) - normalLogCdf(z));

/** Below this tail the library's quantile has lost its digits (it works on 2p - 1), so the asymptotic start is used instead. */
const FAR_TAIL = 1e-8;

/**
 * Standard normal quantile, z with cdf(z) = p.
 * The library's value is refined by Newton steps on the log cdf, which is concave, so a small p keeps full relative accuracy.
 * @param p  probability, strictly between 0 and 1
 * @returns  z, antisymmetric about p = 0.5
 * @throws RangeError outside (0, 1), NaN included
 * @accuracy relative 1e-12 in p for p from 1e-300 to 0.5 (cdf(z) against p)
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`p must be between 0 and 1, exclusive: ${p}`);
  if (p > 0.5) return -normalQuantile(1 - p);
  if (p === 0.5) return 0;
  const target = Math.log(p);
  let z = p > FAR_TAIL ? stdlibQuantile(p, 0, 1) : -Math.sqrt(-2 * target - Math.log(-4 * Math.PI * target));
  for (let i = 0; i < 4; i++) z -= (normalLogCdf(z) - target) / inverseMills(z);
  return z;
}

/** The two-sided 95 % point, 1.959963984540054. */
export const Z_95 = normalQuantile(0.975);
