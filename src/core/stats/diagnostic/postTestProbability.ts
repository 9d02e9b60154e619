/**
 * Chance of the outcome after a test: odds before times the likelihood ratio of its result (Bayes).
 * @param preTestProbability  0..1
 * @param likelihoodRatio     0 or more, finite
 * @returns 0..1; 0 and 1 stay what they are
 * @throws RangeError outside these ranges, and for a chance of 1 with a ratio of 0, which contradict each other
 */
export function postTestProbability(preTestProbability: number, likelihoodRatio: number): number {
  if (!(preTestProbability >= 0 && preTestProbability <= 1)) throw new RangeError(`preTestProbability must be 0..1: ${preTestProbability}`);
  if (!(likelihoodRatio >= 0 && likelihoodRatio < Number.POSITIVE_INFINITY))
    throw new RangeError(`likelihoodRatio must be 0 or more and finite: ${likelihoodRatio}`);
  if (preTestProbability === 1 && likelihoodRatio === 0)
    throw new RangeError('likelihoodRatio must not be 0 where the outcome was certain before');
  const withIt = preTestProbability * likelihoodRatio;
  return withIt / (withIt + (1 - preTestProbability));
}
