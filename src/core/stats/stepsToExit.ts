// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
/** A chain that moves between its states until it leaves them. */
export interface LeavingChain {
  readonly size: number;
  /** Row by row: chance (or quadrature weight) to go from state i to state j at [i · size + j]. The diagonal is not read. Overwritten. */
  readonly moves: Float64Array;
  /** Chance to leave from each state, 0 or more. Overwritten. */
  readonly leaves: Float64Array;
}

/**
 * Expected number of steps until a chain that begins in its first state leaves, the leaving step included.
 * States are taken out from the last to the first without a subtraction (after Grassmann, Taksar and Heyman): staying is what is left of
 * 1 after moves and leaving, so the relative accuracy is that of the entries, however rarely the chain leaves.
 * @returns at least 1; Infinity where a double cannot hold it or the chain never leaves
 * @accuracy relative 1e-14 per state, for means up to 1e300 (stepsToExit.test.ts)
 * @source grassmann1985
 */
export function stepsToExit({ size, moves, leaves }: LeavingChain): number {
  const steps = new Float64Array(size).fill(1);
  for (let k = size - 1; k > 0; k--) {
    const row = k * size;
    let out = leaves[k]!;
    for (let j = 0; j < k; j++) out += moves[row + j]!;
    if (out === 0) {
      // Nothing leads out of k: the mean is infinite for whoever can get there.
      steps[k] = Number.POSITIVE_INFINITY;
      out = 1;
    }
    const stay = steps[k]! / out;
    const leave = leaves[k]! / out;
    for (let j = 0; j < k; j++) moves[row + j]! /= out;
    for (let i = 0; i < k; i++) {
      const into = moves[i * size + k]!;
      if (into === 0) continue;
      steps[i]! += into * stay;
      leaves[i]! += into * leave;
      for (let j = 0, to = i * size; j < k; j++) moves[to + j]! += into * moves[row + j]!;
    }
  }
  return steps[0]! / leaves[0]!;
}
