import type { Interval } from '../interval.ts';
import { type MeanSquareTerm, mlsInterval } from './mlsInterval.ts';

/** Any set of variances by name. */
export type Variances<Name extends string> = Readonly<Record<Name, number>>;

/** sum of coefficient x mean square; may be negative for a difference. */
export const rawComponent = (terms: readonly MeanSquareTerm[]): number =>
  terms.reduce((sum, { coefficient, row }) => sum + coefficient * row.meanSquare, 0);

/** A negative estimate of a variance means "none seen" and counts as 0; the raw one stays beside it. */
export function truncateNegatives<Name extends string>(raw: Variances<Name>): Variances<Name> {
  return mapNames(raw, (value) => Math.max(0, value));
}

/** Modified large-sample limits of a variance, no lower than 0. */
export function componentInterval(terms: readonly MeanSquareTerm[], level: number): Interval {
  const { low, high } = mlsInterval(terms, level);
  return { low: Math.max(0, low), high: Math.max(0, high) };
}

/** Each variance as a share of their sum, which must be above 0. */
export function sharesOf<Name extends string>(components: Variances<Name>): Variances<Name> {
  const total = Object.values<number>(components).reduce((sum, value) => sum + value, 0);
  return mapNames(components, (value) => value / total);
}

export function mapNames<Name extends string, From, To>(
  record: Readonly<Record<Name, From>>,
  change: (value: From) => To,
): Readonly<Record<Name, To>> {
  // Object.entries widens the names to string.
  return Object.fromEntries(Object.entries<From>(record).map(([name, value]) => [name, change(value)])) as Record<Name, To>;
}
