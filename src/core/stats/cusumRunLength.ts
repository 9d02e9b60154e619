// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { requireCusum } from './cusumChart.ts';
import { gaussLegendre } from './gaussLegendre.ts';
import { normalCdf } from './normal.ts';
import { stepsToExit } from './stepsToExit.ts';

export interface CusumDesign {
  /** Allowance in sd, 0 or more. */
  readonly k: number;
  /** Decision limit in sd, above 0 up to 200. */
  readonly h: number;
  /** 1 watches for a rise only. */
  readonly sides: 1 | 2;
}

/**
 * Average run length of a cumulative sum that starts at 0, for normal values whose mean has shifted.
 * Integral equation on Gauss-Legendre nodes, the atom at 0 being a state of its own; two sides by 1/ARL = 1/ARL+ + 1/ARL-, which is exact
 * for k >= 0, each side with its own sign of the shift.
 * @param shiftSd  shift of the mean in sd, any sign
 * @param nodes    for studies of accuracy; by default as many as the accuracy below needs
 * @returns at least 1; Infinity where a double cannot hold it
 * @throws RangeError naming k, h or shiftSd
 * @accuracy relative 1e-10 against refined nodes over k 0 to 2, h 0.1 to 20, shifts -3 to 4
 * @source page1954
 */
export function cusumRunLength({ k, h, sides }: CusumDesign, shiftSd: number, nodes = nodesFor(h)): number {
  requireCusum(k, h);
  if (!(h <= 200)) throw new RangeError(`h must be at most 200: ${h}`);
  if (!Number.isFinite(shiftSd)) throw new RangeError(`shiftSd must be finite: ${shiftSd}`);
  const rise = oneSided(k - shiftSd, h, nodes);
  return sides === 1 ? rise : 1 / (1 / rise + 1 / oneSided(k + shiftSd, h, nodes));
}

/** The kernel is one normal density wide, so the nodes that a given accuracy needs grow with h. */
const nodesFor = (h: number): number => Math.ceil(8 + 2 * h);

/** Run length to one side; `drop` is how far the sum falls in a step on average. State 0 is the sum at 0. */
function oneSided(drop: number, h: number, nodes: number): number {
  const rule = gaussLegendre(nodes);
  const size = nodes + 1;
  const at = new Float64Array(size);
  const weight = new Float64Array(size);
  for (let j = 0; j < nodes; j++) {
    at[j + 1] = (h / 2) * (1 + rule.nodes[j]!);
    weight[j + 1] = ((h / 2) * rule.weights[j]!) / Math.sqrt(2 * Math.PI);
  }
  const moves = new Float64Array(size * size);
  const leaves = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const mean = at[i]! - drop;
    moves[i * size] = normalCdf(-mean);
    leaves[i] = normalCdf(mean - h);
    for (let j = 1; j < size; j++) moves[i * size + j] = weight[j]! * Math.exp(-0.5 * (at[j]! - mean) ** 2);
  }
  return stepsToExit({ size, moves, leaves });
}
