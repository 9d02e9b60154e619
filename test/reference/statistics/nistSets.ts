import { readFileSync } from 'node:fs';

/** Many of the sets are one value followed by two others in turn, and are kept so. */
type Values = readonly number[] | { readonly first: number; readonly thenInTurn: readonly [number, number]; readonly count: number };
interface Sets {
  readonly oneWay: Readonly<
    Record<
      string,
      { readonly certified: Readonly<Record<'ssBetween' | 'ssWithin' | 'f' | 'r2', number>>; readonly groups: readonly Values[] }
    >
  >;
  readonly univariate: Readonly<
    Record<string, { readonly certified: Readonly<Record<'mean' | 'sd' | 'lagOne', number>>; readonly values: Values }>
  >;
}

/** The certified sets of nist.json. */
export const nistSets: Sets = JSON.parse(readFileSync('test/reference/statistics/nist.json', 'utf8'));

export const listValues = (values: Values): number[] =>
  'count' in values
    ? Array.from({ length: values.count }, (_, i) => (i === 0 ? values.first : (values.thenInTurn[(i - 1) % 2] ?? Number.NaN)))
    : [...values];

/** Correct digits: minus the log10 of the relative error, 15 where there is none (what a double can hold). */
export const correctDigits = (got: number, certified: number): number =>
  got === certified ? 15 : Math.min(15, -Math.log10(Math.abs((got - certified) / certified)));
