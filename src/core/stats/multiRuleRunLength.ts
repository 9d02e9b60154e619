// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { keepByKey } from '../keep/keepByKey.ts';
import { firesRule, MULTI_RULES, type MultiRule, NO_RUNS, nextRuns, type RunState } from './multiRules.ts';
import { normalCdf } from './normal.ts';
import { stepsToExit } from './stepsToExit.ts';

/**
 * Average run length of several control rules watched together, from a chart without history, for normal values whose mean has shifted.
 * Exact: the rules only ask in which band a point lies, so the chart is a chain with finitely many states, made from the same two
 * functions that flag a real chart.
 * @param rules    at least one of the six, in any order; the run ends when the first of them fires
 * @param shiftSd  shift of the mean in sd, any sign
 * @returns at least 1; Infinity where a double cannot hold it
 * @throws RangeError naming rules or shiftSd
 * @accuracy relative 1e-12; within 4 standard errors of seeded simulations of the flagged chart (multiRuleRunLength.test.ts)
 * @source champ-woodall1987
 */
export function multiRuleRunLength(rules: readonly MultiRule[], shiftSd: number): number {
  if (rules.length === 0) throw new RangeError('rules must name at least one rule');
  if (!Number.isFinite(shiftSd)) throw new RangeError(`shiftSd must be finite: ${shiftSd}`);
  const { size, targets } = chainOf(MULTI_RULES.filter((rule) => rules.includes(rule)).join(' '));
  const chances = BANDS.map(({ low, high }) => chanceBetween(low - shiftSd, high - shiftSd));
  const moves = new Float64Array(size * size);
  const leaves = new Float64Array(size);
  for (const [i, ofState] of targets.entries()) {
    for (const [band, target] of ofState.entries()) {
      if (target === undefined) leaves[i]! += chances[band]!;
      else moves[i * size + target]! += chances[band]!;
    }
  }
  return stepsToExit({ size, moves, leaves });
}

/** Between whole numbers of sd nothing changes for any rule; `inside` stands for every point of the band. */
const BANDS = [-3, -2, -1, 0, 1, 2, 3, Number.POSITIVE_INFINITY].map((high, i) => ({
  low: i === 0 ? Number.NEGATIVE_INFINITY : i - 4,
  high,
  inside: i - 3.5,
}));

/** P(low < Z < high), from the tail on whose side the band lies, so that small chances keep their digits. */
const chanceBetween = (low: number, high: number): number =>
  low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);

interface Chain {
  readonly size: number;
  /** For each state and band the next state, or undefined where a rule fires. */
  readonly targets: readonly (readonly (number | undefined)[])[];
}

/** All states that can be reached from the empty chart without a rule firing. */
const chainOf = keepByKey((names: string): Chain => {
  const rules = MULTI_RULES.filter((rule) => names.split(' ').includes(rule));
  const uses = (...some: readonly MultiRule[]) => some.some((rule) => rules.includes(rule));
  /** What no watched rule asks for is forgotten, which keeps the chain small. */
  const remembered = (runs: RunState): RunState => {
    const onSide = uses('10-x') ? runs.onSide : 0;
    const beyond1 = uses('4-1s') ? runs.beyond1 : 0;
    const beyond2 = uses('2-2s', 'R-4s') ? runs.beyond2 : 0;
    return { side: onSide + beyond1 + beyond2 > 0 ? runs.side : 0, onSide, beyond1, beyond2 };
  };
  const keyOf = ({ side, onSide, beyond1, beyond2 }: RunState) => `${side} ${onSide} ${beyond1} ${beyond2}`;
  const states = [NO_RUNS];
  const indexByKey = new Map([[keyOf(NO_RUNS), 0]]);
  const indexOf = (runs: RunState): number => {
    const known = indexByKey.get(keyOf(runs));
    if (known !== undefined) return known;
    indexByKey.set(keyOf(runs), states.length);
    return states.push(runs) - 1;
  };
  const targets: (number | undefined)[][] = [];
  // The list grows while it is walked.
  for (const before of states) {
    targets.push(
      BANDS.map(({ inside }) => {
        const after = nextRuns(before, inside);
        return rules.some((rule) => firesRule(rule, before, after, inside)) ? undefined : indexOf(remembered(after));
      }),
    );
  }
  return { size: states.length, targets };
});
