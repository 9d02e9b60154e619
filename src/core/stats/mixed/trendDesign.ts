import { compensatedSum } from '../compensatedSum.ts';

export interface TrendObservation {
  readonly subject: string;
  /** Any unit; the slope is per unit of it. */
  readonly time: number;
  /** On the scale of the model: natural logs for readings of a meter. */
  readonly value: number;
  readonly operator?: string | undefined;
}

/** Subjects with the same number of observations enter every formula through one sum. */
export interface SizeClass {
  readonly size: number;
  readonly subjects: number;
  /** Sum over these subjects of m m', m = a subject's means of all columns. */
  readonly products: readonly Float64Array[];
}

/**
 * What a fit needs of the data, made in two passes over them; afterwards nothing depends on how many there are.
 * Columns, in this order: fixed effects (1, time - its mean, a mark for each operator but the first if operators are fixed), value - its
 * mean, a mark for each operator if they are random.
 */
export interface TrendDesign {
  readonly n: number;
  readonly fixed: number;
  readonly columns: number;
  readonly meanTime: number;
  readonly meanValue: number;
  readonly subjects: readonly string[];
  readonly counts: readonly number[];
  /** Means of all columns, subject after subject. */
  readonly means: Float64Array;
  /** Sums of products of the deviations from the subjects' means. */
  readonly within: readonly Float64Array[];
  readonly sizes: readonly SizeClass[];
  /** Sorted; empty where operators are not in the model. */
  readonly operators: readonly string[];
}

export type OperatorEffect = 'none' | 'fixed' | 'random';

/**
 * Time and value are centred first, and sums of squares are those of deviations, so that dates and large values cost no digits.
 * @param observations  at least one; finite; with an operator each unless `operatorEffect` is `none`
 */
export function trendDesign(observations: readonly TrendObservation[], operatorEffect: OperatorEffect): TrendDesign {
  const times = centredColumn(observations, ({ time }) => time);
  const values = centredColumn(observations, ({ value }) => value);
  const names = operatorEffect === 'none' ? [] : observations.map(({ operator = '' }) => operator);
  const operators = [...new Set(names)].sort();
  const fixed = operatorEffect === 'fixed' ? 1 + operators.length : 2;
  const columns = fixed + 1 + (operatorEffect === 'random' ? operators.length : 0);
  const { subjects, owner, counts } = groupBySubject(observations);
  const rows = {
    owner,
    times: times.deviations,
    values: values.deviations,
    fixed,
    columns,
    marks: marksOf(names, { operators, effect: operatorEffect, fixed }),
  };
  const means = subjectMeans(rows, counts);
  return {
    n: observations.length,
    fixed,
    columns,
    meanTime: times.mean,
    meanValue: values.mean,
    subjects,
    counts,
    means,
    within: withinProducts(rows, counts, means),
    sizes: sizeClasses(counts, means, columns),
    operators,
  };
}

/** As centredValues, in a flat array. */
function centredColumn(observations: readonly TrendObservation[], pick: (observation: TrendObservation) => number) {
  const deviations = new Float64Array(observations.length);
  const first = observations[0] ? pick(observations[0]) : 0;
  let i = 0;
  for (const observation of observations) deviations[i++] = pick(observation) - first;
  const shiftedMean = compensatedSum(deviations) / deviations.length;
  for (i = 0; i < deviations.length; i++) add(deviations, i, -shiftedMean);
  return { mean: first + shiftedMean, deviations };
}

function groupBySubject(observations: readonly TrendObservation[]) {
  const indexOf = new Map<string, number>();
  const counts: number[] = [];
  const owner = new Int32Array(observations.length);
  for (let i = 0; i < owner.length; i++) {
    const name = observations[i]?.subject ?? '';
    let index = indexOf.get(name);
    if (index === undefined) {
      index = counts.length;
      indexOf.set(name, index);
      counts.push(0);
    }
    owner[i] = index;
    add(counts, index, 1);
  }
  return { subjects: [...indexOf.keys()], owner, counts };
}

interface Rows {
  readonly owner: Int32Array;
  readonly times: Float64Array;
  readonly values: Float64Array;
  readonly fixed: number;
  readonly columns: number;
  /** The column that marks the operator of each observation, -1 for none. */
  readonly marks: Int32Array;
}

/** Random operators have a column each; fixed ones too but for the first, to whom the others are compared. */
function marksOf(
  names: readonly string[],
  { operators, effect, fixed }: { readonly operators: readonly string[]; readonly effect: OperatorEffect; readonly fixed: number },
): Int32Array {
  const first = effect === 'random' ? fixed + 1 : 1;
  const columnOf = new Map(operators.map((name, k) => [name, effect === 'fixed' && k === 0 ? -1 : first + k]));
  return Int32Array.from(names, (name) => columnOf.get(name) ?? -1);
}

// The loops below run over all data, so they index flat arrays instead of making small ones.

const at = (list: ArrayLike<number>, i: number): number => list[i] ?? 0;
const add = (list: { [i: number]: number }, i: number, value: number): void => {
  list[i] = (list[i] ?? 0) + value;
};

function subjectMeans({ owner, times, values, fixed, columns, marks }: Rows, counts: readonly number[]): Float64Array {
  const means = new Float64Array(counts.length * columns);
  for (let i = 0; i < owner.length; i++) {
    const start = at(owner, i) * columns;
    add(means, start + 1, at(times, i));
    add(means, start + fixed, at(values, i));
    const mark = marks[i] ?? -1;
    if (mark >= 0) add(means, start + mark, 1);
  }
  counts.forEach((count, s) => {
    means[s * columns] = 1;
    for (let c = 1; c < columns; c++) means[s * columns + c] = at(means, s * columns + c) / count;
  });
  return means;
}

function withinProducts({ owner, times, values, fixed, columns, marks }: Rows, counts: readonly number[], means: Float64Array) {
  let [tt, ty, yy] = [0, 0, 0];
  const timeByMark = new Float64Array(columns);
  const valueByMark = new Float64Array(columns);
  const marked = new Float64Array(columns);
  for (let i = 0; i < owner.length; i++) {
    const start = at(owner, i) * columns;
    const t = at(times, i) - at(means, start + 1);
    const y = at(values, i) - at(means, start + fixed);
    tt += t * t;
    ty += t * y;
    yy += y * y;
    const mark = marks[i] ?? -1;
    if (mark < 0) continue;
    add(timeByMark, mark, t);
    add(valueByMark, mark, y);
    add(marked, mark, 1);
  }
  const within = markProducts(counts, means, marked);
  timeByMark[1] = tt;
  timeByMark[fixed] = ty;
  valueByMark[1] = ty;
  valueByMark[fixed] = yy;
  within[1] = timeByMark;
  within[fixed] = valueByMark;
  return within.map((row, c) => {
    row[1] = at(timeByMark, c);
    row[fixed] = at(valueByMark, c);
    return row;
  });
}

/** Products of the marks of operators with each other: counts less what the subjects' means hold. */
function markProducts(counts: readonly number[], means: Float64Array, marked: Float64Array): Float64Array[] {
  const columns = marked.length;
  const products = emptyProducts(columns);
  const present = [...marked.keys()].filter((c) => at(marked, c) > 0);
  for (const c of present) products[c]?.fill(at(marked, c), c, c + 1);
  if (present.length === 0) return products;
  counts.forEach((count, s) => {
    const start = s * columns;
    const own = present.filter((c) => means[start + c] !== 0);
    addProducts(products, { means, start, present: own, times: -count });
  });
  return products;
}

function sizeClasses(counts: readonly number[], means: Float64Array, columns: number): SizeClass[] {
  const bySize = new Map<number, { subjects: number; products: Float64Array[] }>();
  counts.forEach((size, s) => {
    const found = bySize.get(size) ?? { subjects: 0, products: emptyProducts(columns) };
    bySize.set(size, found);
    found.subjects += 1;
    const start = s * columns;
    const present: number[] = [];
    for (let c = 0; c < columns; c++) if (means[start + c] !== 0) present.push(c);
    addProducts(found.products, { means, start, present, times: 1 });
  });
  return [...bySize].map(([size, { subjects, products }]) => ({ size, subjects, products }));
}

interface OneSubject {
  readonly means: Float64Array;
  readonly start: number;
  /** Columns whose mean is not 0. */
  readonly present: readonly number[];
  readonly times: number;
}

function addProducts(products: readonly Float64Array[], { means, start, present, times }: OneSubject): void {
  for (const a of present) {
    const row = products[a];
    const scaled = times * at(means, start + a);
    if (row) for (const b of present) add(row, b, scaled * at(means, start + b));
  }
}

const emptyProducts = (columns: number): Float64Array[] => Array.from({ length: columns }, () => new Float64Array(columns));
