export interface CrossedObservation {
  readonly part: string;
  readonly operator: string;
  readonly value: number;
}

/** cells[part][operator] holds the repeats; parts and operators in the order of their first appearance. */
export interface CrossedCells {
  readonly parts: readonly string[];
  readonly operators: readonly string[];
  /** The same in every cell, at least two. */
  readonly repeats: number;
  readonly cells: readonly (readonly (readonly number[])[])[];
}

/**
 * Sorts the readings of a part x operator study into its cells.
 * @throws RangeError saying what is missing and what would make the study work: one part or operator only, cells of different size,
 *   no repeats, no difference between any two repeats
 */
export function crossedCells(observations: readonly CrossedObservation[]): CrossedCells {
  const parts = [...new Set(observations.map(({ part }) => part))];
  const operators = [...new Set(observations.map(({ operator }) => operator))];
  if (parts.length < 2) {
    throw new RangeError(`observations must be of at least two parts: ${parts.length}. Measure a second part that differs from the first`);
  }
  if (operators.length < 2) {
    throw new RangeError(
      `observations must be by at least two operators: ${operators.length}. Let a second person measure the same parts; with one person, hands and swabs cannot be told apart`,
    );
  }
  const cells = parts.map(() => operators.map((): number[] => []));
  const row = new Map(parts.map((name, i) => [name, i]));
  const column = new Map(operators.map((name, j) => [name, j]));
  for (const { part, operator, value } of observations) cells[row.get(part) ?? 0]?.[column.get(operator) ?? 0]?.push(value);
  const repeats = Math.max(...cells.flat().map((cell) => cell.length));
  cells.forEach((cellsOfPart, i) => {
    cellsOfPart.forEach((cell, j) => {
      if (cell.length !== repeats) {
        throw new RangeError(
          `observations must be as many in every part by every operator: ${cell.length} of part "${parts[i]}" by operator "${operators[j]}", elsewhere up to ${repeats}. Take the missing ones, or leave that part out`,
        );
      }
    });
  });
  if (repeats < 2) {
    throw new RangeError(
      'observations must repeat: each operator measures each part at least twice, or repeatability cannot be told from interaction',
    );
  }
  requireSpreadWithin(cells.flat());
  return { parts, operators, repeats, cells };
}

/** @throws RangeError when the values of no cell differ */
export function requireSpreadWithin(cells: readonly (readonly number[])[]): void {
  if (cells.some((cell) => cell.some((value) => value !== cell[0]))) return;
  throw new RangeError(
    'observations must differ between repeats: every repeat gave the same value, so the repeatability cannot be estimated. Enter the readings with all their digits, or measure something nearer to real readings',
  );
}
