import { centredValues } from '../centredValues.ts';
import { compensatedSum } from '../compensatedSum.ts';
import { type AnovaRow, anovaRow, type TestedRow, testedRow } from './anovaRow.ts';

export interface OneWayAnova {
  readonly between: TestedRow;
  readonly within: AnovaRow;
  /** Without a mean square of its own: sum of squares and degrees of freedom of all values about their mean. */
  readonly total: AnovaRow;
  readonly groupMeans: readonly number[];
}

/**
 * One-way analysis of variance; groups may differ in size.
 * Two passes over values from which the first one was taken off, with compensated sums: a naive sum of squares has no digits left
 * where readings share their leading ones.
 * @param groups  at least two, none empty, at least one value more than groups; finite values
 * @throws RangeError otherwise
 * @accuracy log relative error against the certified NIST sets is printed by oneWayAnova.test.ts
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova {
  const n = groups.reduce((sum, group) => sum + group.length, 0);
  if (groups.length < 2) throw new RangeError(`groups must be at least two: ${groups.length}`);
  if (!(n > groups.length)) throw new RangeError('groups must hold more values than there are groups');
  const origin = groups[0]?.[0] ?? 0;
  const centred = groups.map((group) => centredValues(group.map((value) => value - origin)));
  const grand = compensatedSum(centred.map(({ mean }, i) => mean * (groups[i]?.length ?? 0))) / n;
  const deviations = centred.flatMap((group) => group.deviations);
  const within = anovaRow(deviations, 1, n - groups.length);
  const weighted = centred.map(({ mean }, i) => Math.sqrt(groups[i]?.length ?? 0) * (mean - grand));
  const between = testedRow(anovaRow(weighted, 1, groups.length - 1), within);
  const sumSquares = between.sumSquares + within.sumSquares;
  return {
    between,
    within,
    total: { sumSquares, df: n - 1, meanSquare: sumSquares / (n - 1) },
    groupMeans: centred.map(({ mean }) => origin + mean),
  };
}
