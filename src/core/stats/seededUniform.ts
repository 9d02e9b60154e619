/**
 * Uniform numbers from a seed, for resampling and simulation: xoshiro128** started by splitmix32, the same on every machine.
 * Not for secrets.
 * @param seed  whole number
 * @returns 0 up to but not including 1, in steps of 2^-32
 * @throws RangeError for a seed that is not a whole number
 * @source blackmanVigna2021
 */
export function seededUniform(seed: number): () => number {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed must be a whole number: ${seed}`);
  let start = seed | 0;
  const next = () => {
    start = (start + 0x9e3779b9) | 0;
    let mixed = Math.imul(start ^ (start >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return mixed ^ (mixed >>> 16);
  };
  let [a, b, c, d] = [next(), next(), next(), next()];
  return () => {
    const fives = Math.imul(b, 5);
    const result = Math.imul((fives << 7) | (fives >>> 25), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return (result >>> 0) / 2 ** 32;
  };
}
