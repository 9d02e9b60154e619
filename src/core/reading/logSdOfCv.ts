/** Above this a "fraction" is almost certainly a percentage typed by mistake. */
const HIGHEST_CV = 10;

/**
 * Standard deviation of ln(x) for a log-normal x with the given coefficient of variation: sqrt(ln(1 + cv^2)).
 * @param cv    fraction (0.3 = 30 %), above 0 and at most 10
 * @param name  what to call it in the error
 * @throws RangeError outside the range, NaN included
 */
export function logSdOfCv(cv: number, name = 'cv'): number {
  if (!(cv > 0 && cv <= HIGHEST_CV)) throw new RangeError(`${name} must be a fraction above 0 and at most ${HIGHEST_CV}: ${cv}`);
  return Math.sqrt(Math.log1p(cv ** 2));
}

/** The same as a variance, 0 allowed: one part of a sum of variances may be nothing. */
export const logVarianceOfCv = (cv: number, name: string): number => (cv === 0 ? 0 : logSdOfCv(cv, name) ** 2);
