import { centredValues } from '../centredValues.ts';
import { type AnovaRow, anovaRow, type TestedRow, testedRow } from './anovaRow.ts';
import type { CrossedCells } from './crossedCells.ts';

export interface CrossedAnova {
  /** Part and operator are tested against the interaction, the interaction against the error. */
  readonly part: TestedRow;
  readonly operator: TestedRow;
  readonly interaction: TestedRow;
  readonly error: AnovaRow;
  readonly total: AnovaRow;
}

/** Analysis of variance of a balanced part x operator study with repeats; both factors random. */
export function crossedAnova({ cells, parts, operators, repeats }: CrossedCells): CrossedAnova {
  const [p, o, r] = [parts.length, operators.length, repeats];
  const origin = cells[0]?.[0]?.[0] ?? 0;
  const centred = cells.map((row) => row.map((cell) => centredValues(cell.map((value) => value - origin))));
  const means = centred.map((row) => row.map(({ mean }) => mean));
  const byPart = centredValues(means.map((row) => centredValues(row).mean));
  const byOperator = centredValues(operators.map((_, j) => centredValues(means.map((row) => row[j] ?? 0)).mean));
  const mixed = means.flatMap((row, i) =>
    row.map((mean, j) => mean - byPart.mean - (byPart.deviations[i] ?? 0) - (byOperator.deviations[j] ?? 0)),
  );
  const inCells = centred.flat().flatMap(({ deviations }) => deviations);
  const error = anovaRow(inCells, 1, p * o * (r - 1));
  const interaction = anovaRow(mixed, r, (p - 1) * (o - 1));
  const part = anovaRow(byPart.deviations, o * r, p - 1);
  const operator = anovaRow(byOperator.deviations, p * r, o - 1);
  const sumSquares = part.sumSquares + operator.sumSquares + interaction.sumSquares + error.sumSquares;
  const df = p * o * r - 1;
  return {
    part: testedRow(part, interaction),
    operator: testedRow(operator, interaction),
    interaction: testedRow(interaction, error),
    error,
    total: { sumSquares, df, meanSquare: sumSquares / df },
  };
}
