/** Sum of coefficient times variable. Variables are whole numbers, 0 or more. */
export type Terms = readonly (readonly [variable: string, coefficient: number])[];

/** A sum and the bounds that it keeps, both included. */
export interface Row {
  readonly terms: Terms;
  readonly atLeast?: number | undefined;
  readonly atMost?: number | undefined;
}

export const sumOf = (terms: Terms, values: ReadonlyMap<string, number>): number =>
  terms.reduce((sum, [variable, coefficient]) => sum + coefficient * (values.get(variable) ?? 0), 0);
