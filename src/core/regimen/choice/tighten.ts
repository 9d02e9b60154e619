// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
/** A sum of coefficient times variable, the variable named by its place, that stays at or below a bound. No coefficient is 0. */
export interface UpperRow {
  readonly places: readonly number[];
  readonly coefficients: readonly number[];
  readonly atMost: number;
}

/** The whole numbers between which each variable still lies. */
export interface Box {
  readonly least: number[];
  readonly most: number[];
}

/** As the solver keeps its rows: far above the rounding of a sum, far below any difference that means something. */
export const KEPT_WITHIN = 1e-8;

export const sumAt = ({ places, coefficients }: UpperRow, values: readonly number[]): number =>
  coefficients.reduce((sum, coefficient, k) => sum + coefficient * values[places[k]!]!, 0);

/**
 * Narrows a box, in place, to what each row by itself leaves of it, until no row narrows it further.
 * @returns false when no whole numbers in the box keep the rows
 */
export function tighten(rows: readonly UpperRow[], box: Box): boolean {
  for (let isNarrower = true; isNarrower; ) {
    isNarrower = false;
    for (const row of rows) {
      const room = row.atMost + KEPT_WITHIN - smallestSum(row, box);
      if (room < 0) return false;
      if (room < Number.POSITIVE_INFINITY && narrow(row, room, box)) isNarrower = true;
    }
  }
  return true;
}

function smallestSum({ places, coefficients }: UpperRow, { least, most }: Box): number {
  let sum = 0;
  for (let k = 0; k < places.length; k += 1) {
    const coefficient = coefficients[k]!;
    sum += coefficient * (coefficient > 0 ? least : most)[places[k]!]!;
  }
  return sum;
}

/** No variable may leave its end of the smallest sum by more than there is room. */
function narrow({ places, coefficients }: UpperRow, room: number, { least, most }: Box): boolean {
  let isNarrower = false;
  for (let k = 0; k < places.length; k += 1) {
    const i = places[k]!;
    const coefficient = coefficients[k]!;
    const steps = Math.floor(room / Math.abs(coefficient));
    if (steps >= most[i]! - least[i]!) continue;
    if (coefficient > 0) most[i] = least[i]! + steps;
    else least[i] = most[i]! - steps;
    isNarrower = true;
  }
  return isNarrower;
}
