// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { requireEwma } from './ewmaChart.ts';
import { gaussLegendre } from './gaussLegendre.ts';
import { normalCdf } from './normal.ts';
import { stepsToExit } from './stepsToExit.ts';

export interface EwmaDesign {
  /** Weight of the newest point, 0.001 to 1. */
  readonly lambda: number;
  /** In sd of the average in the long run (asymptotic limits), above 0 up to 10. */
  readonly limit: number;
  /** 1 watches for a rise only; nothing then holds the average up from below. */
  readonly sides: 1 | 2;
}

/**
 * Average run length of an exponentially weighted average that starts at 0, limits asymptotic, for normal values whose mean has shifted.
 * Integral equation on Gauss-Legendre nodes; the start is a state of its own.
 * @param shiftSd  shift of the mean in sd, any sign
 * @param nodes    for studies of accuracy; by default as many as the accuracy below needs
 * @returns at least 1; Infinity where a double cannot hold it
 * @throws RangeError naming lambda, limit or shiftSd
 * @accuracy relative 1e-10 against refined nodes over lambda 0.01 to 1, limit 1 to 5, shifts -3 to 4
 * @source crowder1987
 */
export function ewmaRunLength({ lambda, limit, sides }: EwmaDesign, shiftSd: number, nodes?: number): number {
  requireEwma(lambda, limit);
  if (!(lambda >= 0.001)) throw new RangeError(`lambda must be at least 0.001: ${lambda}`);
  if (!(limit <= 10)) throw new RangeError(`limit must be at most 10: ${limit}`);
  if (!Number.isFinite(shiftSd)) throw new RangeError(`shiftSd must be finite: ${shiftSd}`);
  const sdOfAverage = Math.sqrt(lambda / (2 - lambda));
  const high = limit * sdOfAverage;
  const low = sides === 2 ? -high : Math.min(0, shiftSd) - FAR_BELOW * sdOfAverage;
  const width = (high - low) / lambda;
  const rule = gaussLegendre(nodes ?? Math.ceil(8 + 1.75 * width));
  const size = rule.nodes.length + 1;

  const at = new Float64Array(size);
  for (let j = 1; j < size; j++) at[j] = low + ((high - low) / 2) * (1 + rule.nodes[j - 1]!);
  const moves = new Float64Array(size * size);
  const leaves = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const mean = (1 - lambda) * at[i]! + lambda * shiftSd;
    leaves[i] = normalCdf((mean - high) / lambda) + (sides === 2 ? normalCdf((low - mean) / lambda) : 0);
    for (let j = 1; j < size; j++) {
      moves[i * size + j] =
        ((width / 2) * rule.weights[j - 1]! * Math.exp(-0.5 * ((at[j]! - mean) / lambda) ** 2)) / Math.sqrt(2 * Math.PI);
    }
  }
  return stepsToExit({ size, moves, leaves });
}

/** In sd of the average: lower than this a one-sided average comes less than once in 1e18 points. */
const FAR_BELOW = 9;
