import { keepByKey } from '../keep/keepByKey.ts';

export interface Quadrature {
  /** In (-1, 1), ascending. */
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Nodes and weights of the n-point Gauss-Legendre rule on (-1, 1), by Newton's method on the Legendre polynomial. Kept by n.
 * @param n  whole number, 1 to 2000
 * @returns exact for polynomials up to degree 2n - 1; weights add up to 2
 * @throws RangeError for another n
 * @accuracy 1e-14 relative: moments up to degree 2n - 1, n to 200
 * @source stroud-secrest1966
 */
export const gaussLegendre = keepByKey((n: number): Quadrature => {
  if (!(Number.isInteger(n) && n >= 1 && n <= 2000)) throw new RangeError(`n must be a whole number from 1 to 2000: ${n}`);
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < (n + 1) / 2; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    // Newton is quadratic from this start: a step below 1e-10 leaves only rounding for the next.
    for (let step = Number.POSITIVE_INFINITY, last = false; !last; ) {
      last = Math.abs(step) < 1e-10;
      const at = legendre(n, x);
      slope = at.slope;
      step = at.value / slope;
      x -= step;
    }
    const weight = 2 / ((1 - x * x) * slope * slope);
    nodes[i] = -x;
    nodes[n - 1 - i] = x;
    weights[i] = weights[n - 1 - i] = weight;
  }
  if (n % 2 === 1) nodes[(n - 1) / 2] = 0;
  return { nodes, weights };
});

/** Legendre polynomial of degree n and its derivative, by the three-term recurrence. */
function legendre(n: number, x: number): { readonly value: number; readonly slope: number } {
  let [before, value] = [1, x];
  for (let degree = 2; degree <= n; degree++) [before, value] = [value, ((2 * degree - 1) * x * value - (degree - 1) * before) / degree];
  return { value, slope: (n * (x * value - before)) / (x * x - 1) };
}
