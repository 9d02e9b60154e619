import { centredValues } from '../centredValues.ts';
import { type AnovaRow, anovaRow, type TestedRow, testedRow } from './anovaRow.ts';
import type { NestedCells } from './nestedCells.ts';

export interface NestedAnova {
  /** Tested against the members. */
  readonly group: TestedRow;
  /** Tested against the residual. */
  readonly member: TestedRow;
  readonly residual: AnovaRow;
  readonly total: AnovaRow;
}

/** Analysis of variance of a balanced study of members nested in groups, with repeats; both factors random. */
export function nestedAnova({ cells, groups, members, repeats }: NestedCells): NestedAnova {
  const [a, b, n] = [groups.length, members, repeats];
  const origin = cells[0]?.[0]?.[0] ?? 0;
  const centred = cells.map((row) => row.map((cell) => centredValues(cell.map((value) => value - origin))));
  const inGroups = centred.map((row) => centredValues(row.map(({ mean }) => mean)));
  const overall = centredValues(inGroups.map(({ mean }) => mean));
  const residual = anovaRow(
    centred.flat().flatMap(({ deviations }) => deviations),
    1,
    a * b * (n - 1),
  );
  const member = anovaRow(
    inGroups.flatMap(({ deviations }) => deviations),
    n,
    a * (b - 1),
  );
  const group = anovaRow(overall.deviations, b * n, a - 1);
  const sumSquares = group.sumSquares + member.sumSquares + residual.sumSquares;
  const df = a * b * n - 1;
  return {
    group: testedRow(group, member),
    member: testedRow(member, residual),
    residual,
    total: { sumSquares, df, meanSquare: sumSquares / df },
  };
}
