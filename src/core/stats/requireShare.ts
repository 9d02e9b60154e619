/** @throws RangeError unless these are counts and the part is no larger than the whole, which is 1 or more */
export function requireShare(successes: number, trials: number): void {
  if (!(Number.isSafeInteger(trials) && trials >= 1)) throw new RangeError(`trials must be a whole number of at least 1: ${trials}`);
  if (!(Number.isSafeInteger(successes) && successes >= 0 && successes <= trials))
    throw new RangeError(`successes must be a whole number from 0 to ${trials}: ${successes}`);
}
