/** Throws a RangeError that names the parameter unless the value is finite and above 0. */
export function requirePositive(value: number, name: string): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) throw new RangeError(`${name} must be a number above 0: ${value}`);
}

/** Throws a RangeError that names the parameter unless the value is a whole number of at least 1. */
export function requireCount(value: number, name: string): void {
  if (!(Number.isSafeInteger(value) && value >= 1)) throw new RangeError(`${name} must be a whole number of at least 1: ${value}`);
}
