/**
 * The six control rules by their codes, in the order in which a screen counts them ("control rule 2 of 6"). The codes stay in JSON.
 * `1-2s` is a warning; each of the others says that the chart is out.
 */
export const MULTI_RULES = ['1-2s', '1-3s', '2-2s', 'R-4s', '4-1s', '10-x'] as const;
export type MultiRule = (typeof MULTI_RULES)[number];

/** The rules that stop the work; `1-2s` alone does not. */
export const STOP_RULES = MULTI_RULES.filter((rule) => rule !== '1-2s');

/** What the rules remember of the points so far; small whole numbers, so that the states of the chart can be listed. */
export interface RunState {
  /** Side of the last point; 0 before the first and after a point exactly on the mean. */
  readonly side: -1 | 0 | 1;
  /** How many of the last points lie on that side without a break, at most 10; then those beyond 1 sd (at most 4) and 2 sd (at most 2). */
  readonly onSide: number;
  readonly beyond1: number;
  readonly beyond2: number;
}

export const NO_RUNS: RunState = { side: 0, onSide: 0, beyond1: 0, beyond2: 0 };

/**
 * The runs after one more point. A run counts at its last point and at each later point that prolongs it.
 * @param z  distance from the mean in sd
 */
export function nextRuns(before: RunState, z: number): RunState {
  const side = z > 0 ? 1 : z < 0 ? -1 : 0;
  const distance = Math.abs(z);
  const same = side === before.side;
  const prolong = (run: number, holds: boolean, most: number) => (holds ? Math.min((same ? run : 0) + 1, most) : 0);
  return {
    side,
    onSide: prolong(before.onSide, side !== 0, 10),
    beyond1: prolong(before.beyond1, distance > 1, 4),
    beyond2: prolong(before.beyond2, distance > 2, 2),
  };
}

/**
 * Whether a rule fires at a point: `before` are the runs before it, `after` those with it. All limits are strict inequalities.
 * R-4s looks at two consecutive points, one beyond +2 sd and one beyond -2 sd, since a practice has one control in a run.
 */
export function firesRule(rule: MultiRule, before: RunState, after: RunState, z: number): boolean {
  switch (rule) {
    case '1-2s':
      return Math.abs(z) > 2;
    case '1-3s':
      return Math.abs(z) > 3;
    case '2-2s':
      return after.beyond2 >= 2;
    case 'R-4s':
      return after.beyond2 >= 1 && before.beyond2 >= 1 && after.side !== before.side;
    case '4-1s':
      return after.beyond1 >= 4;
    case '10-x':
      return after.onSide >= 10;
  }
}

/**
 * Which control rules fire at which points of a chart.
 * @param z  each point's distance from its target in sd, finite, oldest first
 * @returns the indexes (from 0) at which each rule fires, ascending
 * @throws RangeError for a value that is not finite
 * @accuracy exact; equal on every point to an independent program (multiRules.test.ts)
 * @source westgard1981
 */
export function multiRuleFlags(z: readonly number[]): Readonly<Record<MultiRule, readonly number[]>> {
  const flags: Record<MultiRule, number[]> = { '1-2s': [], '1-3s': [], '2-2s': [], 'R-4s': [], '4-1s': [], '10-x': [] };
  let runs = NO_RUNS;
  for (const [i, value] of z.entries()) {
    if (!Number.isFinite(value)) throw new RangeError(`z.${i} must be finite: ${value}`);
    const after = nextRuns(runs, value);
    for (const rule of MULTI_RULES) if (firesRule(rule, runs, after, value)) flags[rule].push(i);
    runs = after;
  }
  return flags;
}
