/** @throws RangeError unless p is strictly between 0 and 1 */
export function requireProbability(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`p must be between 0 and 1, exclusive: ${p}`);
  return p;
}

/** @throws RangeError unless the value is above 0 and finite */
export function requireAboveZero(value: number, name: string): number {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) throw new RangeError(`${name} must be above 0: ${value}`);
  return value;
}
