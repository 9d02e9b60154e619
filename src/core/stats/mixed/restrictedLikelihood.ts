import { dot, factorOf, invert, logDeterminant, type Matrix, multiply, solve } from './symmetricMatrix.ts';
import type { SizeClass, TrendDesign } from './trendDesign.ts';

/** Variances of subjects and operators over the residual variance, 0 or more. */
export interface VarianceRatios {
  readonly subject: number;
  readonly operator: number;
}

export interface RestrictedLikelihood {
  /** -2 ln of the restricted likelihood, at the best residual variance for these ratios, with every constant. */
  readonly deviance: number;
  /** Its slope by each ratio. */
  readonly slope: VarianceRatios;
  readonly residualVariance: number;
  readonly fixedEffects: readonly number[];
  /** Times the residual variance: the covariance of the fixed effects. */
  readonly unscaledCovariance: Matrix;
  /** U'V^-1 of each fixed effect and of the value: empty rows without random operators. */
  readonly loadings: Matrix;
  /** M^-1 right, M = I + operators' ratio U'(subjects' V)^-1 U. */
  readonly solveOperators: (right: readonly number[]) => readonly number[];
  /** Z'V^-1 (y - X b) of the operators, which times their ratio are their effects. */
  readonly operatorResiduals: readonly number[];
}

/**
 * Restricted likelihood of value = fixed effects + subject + operator + residual at given variance ratios, and its slope.
 * V = I + a ZZ' (subjects) + b UU' (operators). Subjects are taken out analytically: for a subject with n observations the inverse of V
 * keeps deviations from the mean as they are and gives the mean the weight n / (1 + n a). Operators are few: one small matrix.
 * So a call costs the square of the number of columns, however many readings and people there are.
 * @returns undefined where the fixed effects cannot be told apart or nothing is left over of the values
 * @source patterson-thompson1971; henderson1975
 */
export function restrictedLikelihood(design: TrendDesign, ratios: VarianceRatios): RestrictedLikelihood | undefined {
  const { n, fixed, columns, sizes } = design;
  const [a, b] = [ratios.subject, ratios.operator];
  const all = weightedProducts(design, ({ size }) => size / (1 + size * a));
  const operatorBlock = all.slice(fixed + 1).map((row) => row.slice(fixed + 1));
  const operatorFactor = factorOf(operatorBlock.map((row, i) => row.map((value, j) => b * value + (i === j ? 1 : 0))));
  if (!operatorFactor) return undefined;
  const solveOperators = (right: readonly number[]) => solve(operatorFactor, right);
  // One row for each fixed effect and one for the value: U'V^-1 times that column.
  const loadings = all.slice(0, fixed + 1).map((row) => solveOperators(row.slice(fixed + 1)));
  const left = all
    .slice(0, fixed + 1)
    .map((row, i) => row.slice(0, fixed + 1).map((value, j) => value - b * dot(loadings[i] ?? [], all[j]?.slice(fixed + 1) ?? [])));
  const factor = factorOf(left.slice(0, fixed).map((row) => row.slice(0, fixed)));
  if (!factor) return undefined;
  const right = left.slice(0, fixed).map((row) => row[fixed] ?? 0);
  const effects = solve(factor, right);
  const residualSum = (left[fixed]?.[fixed] ?? 0) - dot(effects, right);
  if (!(residualSum > 0)) return undefined;

  const df = n - fixed;
  const residualVariance = residualSum / df;
  const unscaledCovariance = invert(factor);
  const contrast = [...effects.map((effect) => -effect), 1];
  const reduce = (means: readonly number[]) =>
    means.slice(0, fixed + 1).map((mean, i) => mean - b * dot(loadings[i] ?? [], means.slice(fixed + 1)));

  let [logDeterminantV, traceSubjects] = [logDeterminant(operatorFactor), 0];
  for (const { size, subjects } of sizes) {
    logDeterminantV += subjects * Math.log1p(size * a);
    traceSubjects += (subjects * size) / (1 + size * a);
  }
  // What the slope by the subjects' ratio needs of each subject is a square of its weighted means, so one sum over all will do.
  const squares = weightedProducts({ ...design, within: undefined }, ({ size }) => (size / (1 + size * a)) ** 2);
  const halfReduced = squares.map(reduce);
  const reduced = left.map((_, j) => reduce(halfReduced.map((row) => row[j] ?? 0)));
  const takenFromSubjects = columns > fixed + 1 ? b * traceOfSolved(solveOperators, squares, fixed + 1) : 0;
  const spread = dot(contrast, multiply(reduced, contrast)) / residualVariance;
  const subjectSlope = traceSubjects - takenFromSubjects - traceOfProduct(unscaledCovariance, reduced) - spread;

  const valueLoading = loadings[fixed] ?? [];
  const operatorResiduals = valueLoading.map((value, k) => value - effects.reduce((sum, x, i) => sum + x * (loadings[i]?.[k] ?? 0), 0));
  const loadingProducts = loadings.slice(0, fixed).map((row) => loadings.slice(0, fixed).map((other) => dot(row, other)));
  const operatorSlope =
    traceOfSolved(solveOperators, operatorBlock, 0) -
    traceOfProduct(unscaledCovariance, loadingProducts) -
    dot(operatorResiduals, operatorResiduals) / residualVariance;
  return {
    deviance: logDeterminantV + logDeterminant(factor) + df * (1 + Math.log(2 * Math.PI * residualVariance)),
    slope: { subject: subjectSlope, operator: operatorSlope },
    residualVariance,
    fixedEffects: effects,
    unscaledCovariance,
    loadings,
    solveOperators,
    operatorResiduals,
  };
}

/** Sum of products over all subjects, each with the weight of its size, on top of those within subjects if there are any. */
function weightedProducts(
  {
    columns,
    sizes,
    within,
  }: { readonly columns: number; readonly sizes: readonly SizeClass[]; readonly within: TrendDesign['within'] | undefined },
  weightOf: (size: SizeClass) => number,
): number[][] {
  const sums = Array.from({ length: columns }, (_, i) => Array.from(within?.[i] ?? new Float64Array(columns)));
  for (const size of sizes) {
    const weight = weightOf(size);
    sums.forEach((row, i) => {
      const products = size.products[i];
      if (products) for (let j = 0; j < columns; j++) row[j] = (row[j] ?? 0) + weight * (products[j] ?? 0);
    });
  }
  return sums;
}

const traceOfProduct = (a: Matrix, b: Matrix): number => a.reduce((sum, row, i) => sum + dot(row, b[i] ?? []), 0);

/** Trace of M^-1 B, B = the symmetric block of `matrix` from row and column `from` on. */
function traceOfSolved(solve: (right: readonly number[]) => number[], matrix: Matrix, from: number): number {
  return matrix.slice(from).reduce((sum, row, i) => sum + (solve(row.slice(from))[i] ?? 0), 0);
}
