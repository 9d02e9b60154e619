/** Values of cases with and without the outcome, sorted into one table of distinct values: all that a ROC curve depends on. */
export interface OutcomeTable {
  /** Ascending, distinct. */
  readonly values: Float64Array;
  /** Cases with the outcome, and without, at each value. */
  readonly positives: Uint32Array;
  readonly negatives: Uint32Array;
  readonly nPositive: number;
  readonly nNegative: number;
}

/** Why there is no curve: one of the two groups is empty. */
export type OneClass = 'no-positives' | 'no-negatives';

/**
 * Sorts cases once, O(n log n), for everything that follows.
 * @param positives  values of the cases with the outcome, finite, any order
 * @param negatives  values of the cases without
 * @throws RangeError naming the value that is not finite
 */
export function outcomeTable(positives: ArrayLike<number>, negatives: ArrayLike<number>): OutcomeTable {
  const [withIt, without] = [sorted(positives, 'positives'), sorted(negatives, 'negatives')];
  const size = withIt.length + without.length;
  const [values, counts, others] = [new Float64Array(size), new Uint32Array(size), new Uint32Array(size)];
  let [i, j, distinct] = [0, 0, 0];
  while (i < withIt.length || j < without.length) {
    const one = i < withIt.length ? (withIt[i] as number) : Number.POSITIVE_INFINITY;
    const other = j < without.length ? (without[j] as number) : Number.POSITIVE_INFINITY;
    const value = Math.min(one, other);
    const [startI, startJ] = [i, j];
    while (i < withIt.length && withIt[i] === value) i++;
    while (j < without.length && without[j] === value) j++;
    values[distinct] = value;
    counts[distinct] = i - startI;
    others[distinct] = j - startJ;
    distinct++;
  }
  return {
    values: values.subarray(0, distinct),
    positives: counts.subarray(0, distinct),
    negatives: others.subarray(0, distinct),
    nPositive: withIt.length,
    nNegative: without.length,
  };
}

/** Why the table has no curve, or undefined when it has one. */
export function whyOneClass({ nPositive, nNegative }: OutcomeTable): OneClass | undefined {
  if (nPositive === 0) return 'no-positives';
  return nNegative === 0 ? 'no-negatives' : undefined;
}

function sorted(values: ArrayLike<number>, name: string): Float64Array {
  const copy = new Float64Array(values);
  for (let i = 0; i < copy.length; i++) if (!Number.isFinite(copy[i])) throw new RangeError(`${name}.${i} must be finite: ${copy[i]}`);
  // Without a comparison of its own a typed array sorts by number, natively.
  return copy.sort();
}
