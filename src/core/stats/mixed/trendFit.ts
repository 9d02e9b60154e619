import { lowestRatio } from './lowestRatio.ts';
import { type RestrictedLikelihood, restrictedLikelihood, type VarianceRatios } from './restrictedLikelihood.ts';
import { dot, type Matrix, multiply } from './symmetricMatrix.ts';
import { type OperatorEffect, type TrendDesign, type TrendObservation, trendDesign } from './trendDesign.ts';

/** How one subject's line differs from the common one. */
export interface SubjectEffect {
  readonly subject: string;
  readonly n: number;
  /** Best linear unbiased prediction, shrunk towards 0. */
  readonly effect: number;
  /** Over the residual variance: what stays unknown of the effect when the fixed effects are known. */
  readonly unscaledVariance: number;
  /** What the prediction takes from each fixed effect. */
  readonly shrinkage: readonly number[];
}

export interface TrendFit {
  /** At time 0, of the average operator where operators are in the model. */
  readonly intercept: number;
  /** Per unit of time. */
  readonly slope: number;
  readonly interceptSe: number;
  readonly slopeSe: number;
  /** `operator` is 0 unless operators are random. */
  readonly variance: { readonly subject: number; readonly operator: number; readonly residual: number };
  /** Restricted, with every constant. */
  readonly logLikelihood: number;
  readonly n: number;
  readonly operatorEffect: OperatorEffect;
  readonly subjects: readonly SubjectEffect[];
  /** Difference from the average operator; predictions, shrunk towards 0, where operators are random. */
  readonly operators: readonly { readonly operator: string; readonly effect: number }[];
  /** For the band: fixed effects with time and value centred, and their covariance. */
  readonly centred: {
    readonly meanTime: number;
    readonly meanValue: number;
    readonly effects: readonly number[];
    readonly covariance: Matrix;
  };
}

/** With fewer operators their variance cannot be estimated, so each has an effect of its own. */
const LEAST_RANDOM_OPERATORS = 5;

/**
 * Common trend of several subjects, each with a level of its own, by restricted maximum likelihood:
 * value = intercept + slope x time + subject + residual.
 * @param observations  finite; at least two subjects, two times, and more repeats than the line takes up
 * @throws RangeError beginning with `observations`, saying what is missing and what would make it work
 * @accuracy relative 1e-6 in the variances and 1e-9 in the log-likelihood against lme4 1.1-31 (trendFit.test.ts)
 * @source patterson-thompson1971; henderson1975
 */
export function randomInterceptTrend(observations: readonly TrendObservation[]): TrendFit {
  return fitTrend(observations, 'none');
}

/**
 * The same with operators, each of whom reads several subjects: value = intercept + slope x time + subject + operator + residual.
 * With five operators or more they are a random effect, with fewer fixed ones.
 * @param observations  as above, each with its operator, at least two operators
 * @throws RangeError as above
 * @source patterson-thompson1971; henderson1975
 */
export function crossedOperatorTrend(observations: readonly TrendObservation[]): TrendFit {
  const bare = observations.findIndex(({ operator }) => operator === undefined);
  if (bare >= 0) throw new RangeError(`observations.${bare}.operator must be given, as in the other observations`);
  const operators = new Set(observations.map(({ operator }) => operator)).size;
  if (operators < 2) throw new RangeError('observations must be by at least two operators: leave the operator out where there is one');
  return fitTrend(observations, operators < LEAST_RANDOM_OPERATORS ? 'fixed' : 'random');
}

function fitTrend(observations: readonly TrendObservation[], operatorEffect: OperatorEffect): TrendFit {
  if (observations.length === 0) throw new RangeError('observations must not be empty');
  const design = trendDesign(observations, operatorEffect);
  requireTwoTimes(observations);
  requireRepeats(design);
  const ratios = bestRatios(design, operatorEffect);
  const best = restrictedLikelihood(design, ratios);
  if (!best) throw new RangeError(NO_SCATTER);
  return describeFit(design, { ratios, best, operatorEffect });
}

const NO_SCATTER =
  'observations must scatter about the lines: every subject lies exactly on one line, so the noise cannot be estimated. Enter the values with all their digits';

function requireTwoTimes(observations: readonly TrendObservation[]): void {
  const first = observations[0]?.time;
  if (observations.every(({ time }) => time === first)) {
    throw new RangeError('observations must lie at two different times at least: a trend needs a later reading');
  }
}

/** Enough left over, within subjects for the residual and between them for the subjects, once the line has taken its part. */
function requireRepeats({ n, subjects, within, fixed }: TrendDesign): void {
  if (subjects.length < 2) {
    throw new RangeError(
      `observations must be of at least two subjects: ${subjects.length}. The spread between subjects needs a second one`,
    );
  }
  const varyWithin = within.slice(1, fixed).filter((row, i) => (row[i + 1] ?? 0) > 0).length;
  const left = n - subjects.length - varyWithin;
  if (!(left >= 1)) {
    throw new RangeError(
      `observations must repeat more: ${n} of ${subjects.length} subjects. ${1 - left} more of subjects already seen would do`,
    );
  }
  const leftBetween = subjects.length - 1 - (fixed - 1 - varyWithin);
  if (!(leftBetween >= 1)) {
    throw new RangeError(
      `observations must be of more subjects: ${subjects.length}, each at one time only. Add subjects, or read the same ones again at another time`,
    );
  }
}

function bestRatios(design: TrendDesign, operatorEffect: OperatorEffect): VarianceRatios {
  if (!restrictedLikelihood(design, { subject: 1, operator: 0 })) {
    const singular = operatorEffect === 'fixed' ? OPERATORS_CONFOUNDED : NO_SCATTER;
    throw new RangeError(singular);
  }
  const subjectAt = (operator: number) =>
    lowestRatio((subject) => {
      const found = restrictedLikelihood(design, { subject, operator });
      return found && { value: found.deviance, slope: found.slope.subject };
    });
  const operator =
    operatorEffect === 'random'
      ? lowestRatio((ratio) => {
          const subject = subjectAt(ratio);
          const found = subject === undefined ? undefined : restrictedLikelihood(design, { subject, operator: ratio });
          return found && { value: found.deviance, slope: found.slope.operator };
        })
      : 0;
  const subject = operator === undefined ? undefined : subjectAt(operator);
  if (operator === undefined || subject === undefined) throw new RangeError(NO_SCATTER);
  return { subject, operator };
}

const OPERATORS_CONFOUNDED =
  'observations cannot tell the operators from the times, or do not scatter: let operators read the same subjects at the same times now and then';

interface Fitted {
  readonly ratios: VarianceRatios;
  readonly best: RestrictedLikelihood;
  readonly operatorEffect: OperatorEffect;
}

function describeFit(design: TrendDesign, { ratios, best, operatorEffect }: Fitted): TrendFit {
  const { fixed, meanTime, meanValue, operators } = design;
  const { residualVariance, fixedEffects: effects, unscaledCovariance } = best;
  const covariance = unscaledCovariance.map((row) => row.map((value) => residualVariance * value));
  const se = (contrast: readonly number[]) => Math.sqrt(dot(contrast, multiply(covariance, contrast)));
  const atZero = averageOperatorAt(-meanTime, fixed);
  const slopeOnly = effects.map((_, i) => (i === 1 ? 1 : 0));
  return {
    intercept: meanValue + dot(atZero, effects),
    slope: effects[1] ?? 0,
    interceptSe: se(atZero),
    slopeSe: se(slopeOnly),
    variance: {
      subject: ratios.subject * residualVariance,
      operator: ratios.operator * residualVariance,
      residual: residualVariance,
    },
    logLikelihood: -best.deviance / 2,
    n: design.n,
    operatorEffect,
    subjects: subjectEffects(design, ratios, best),
    operators: operators.map((operator, k) => ({ operator, effect: operatorEffectOf(k, { ratios, best, operatorEffect }) })),
    centred: { meanTime, meanValue, effects, covariance },
  };
}

/** Weights of the fixed effects for the line at a time, of the average of the fixed operators. */
export function averageOperatorAt(centredTime: number, fixed: number): number[] {
  const operators = fixed - 1;
  return Array.from({ length: fixed }, (_, i) => (i === 0 ? 1 : i === 1 ? centredTime : 1 / operators));
}

function operatorEffectOf(k: number, { ratios, best, operatorEffect }: Fitted): number {
  if (operatorEffect === 'random') return ratios.operator * (best.operatorResiduals[k] ?? 0);
  const toFirst = [0, ...best.fixedEffects.slice(2)];
  return (toFirst[k] ?? 0) - toFirst.reduce((sum, x) => sum + x, 0) / toFirst.length;
}

function subjectEffects(design: TrendDesign, ratios: VarianceRatios, best: RestrictedLikelihood): SubjectEffect[] {
  const { subjects, counts, means, columns, fixed } = design;
  const hasOperators = columns > fixed + 1;
  return subjects.map((subject, s) => {
    const n = counts[s] ?? 0;
    const weight = n / (1 + n * ratios.subject);
    const mean = (c: number) => means[s * columns + c] ?? 0;
    const marks = hasOperators ? Array.from(means.subarray(s * columns + fixed + 1, (s + 1) * columns)) : NONE;
    /** Z'V^-1 of a column, Z = the mark of this subject. */
    const reduced = (c: number) => weight * (mean(c) - (hasOperators ? ratios.operator * dot(best.loadings[c] ?? NONE, marks) : 0));
    const shrinkage: number[] = [];
    let residual = reduced(fixed);
    for (const [c, effect] of best.fixedEffects.entries()) {
      const own = reduced(c);
      residual -= effect * own;
      shrinkage.push(ratios.subject * own);
    }
    const takenByOperators = hasOperators ? ratios.operator * dot(marks, best.solveOperators(marks)) : 0;
    const known = weight - weight ** 2 * takenByOperators;
    return { subject, n, effect: ratios.subject * residual, unscaledVariance: ratios.subject - ratios.subject ** 2 * known, shrinkage };
  });
}

const NONE: readonly number[] = [];
