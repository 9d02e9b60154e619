import type { Interval } from '../interval.ts';
import { type AnovaRow, type TestedRow, testedRow } from './anovaRow.ts';
import { componentInterval, mapNames, rawComponent, sharesOf, truncateNegatives, type Variances } from './componentEstimate.ts';
import { type CrossedAnova, crossedAnova } from './crossedAnova.ts';
import { type CrossedObservation, crossedCells } from './crossedCells.ts';
import { distinctCategories } from './distinctCategories.ts';
import type { MeanSquareTerm } from './mlsInterval.ts';
import { varianceInterval } from './varianceInterval.ts';

type Single = 'repeatability' | 'operator' | 'part';
/** Gauge = repeatability and reproducibility together; total = gauge and part. */
type Sum = 'reproducibility' | 'gauge' | 'total';

/** Without an interaction of its own: its sum of squares counts as error. */
export interface PooledComponents {
  readonly anova: { readonly part: TestedRow; readonly operator: TestedRow; readonly error: AnovaRow };
  readonly rawComponents: Variances<Single>;
  readonly components: Variances<Single>;
  readonly intervals: Readonly<Record<Single | 'gauge' | 'total', Interval>>;
}

export interface CrossedComponents {
  readonly anova: CrossedAnova;
  /** As estimated: may be negative. */
  readonly rawComponents: Variances<Single | 'interaction'>;
  /** Negative ones set to 0. */
  readonly components: Variances<Single | 'interaction'>;
  /** Exact for repeatability, modified large-sample for the others. */
  readonly intervals: Readonly<Record<Single | 'interaction' | Sum, Interval>>;
  readonly pooled: PooledComponents;
  /** p of the interaction above 0.25: then the four below come from the pooled form. */
  readonly poolsAt25Percent: boolean;
  /** Of the total variance; they sum to 1. */
  readonly shares: Variances<Single | 'interaction'>;
  /** Of the standard deviation of all readings of the study: they do not sum to 1. */
  readonly studyVariation: Variances<Single | 'reproducibility' | 'gauge'>;
  readonly variances: Variances<Sum>;
  readonly distinctCategories: number;
}

/** Above this p an interaction is taken for noise and pooled with the error. A custom of the trade, not a law. */
const POOLING_P = 0.25;

/**
 * Variance components of a balanced study in which each operator measures each part several times, both taken at random.
 * Estimates by the expected mean squares; on readings of a meter give natural logs.
 * @param observations  finite values; at least two parts, two operators, two repeats in every cell
 * @param level         of the intervals, default 0.95
 * @throws RangeError saying what is missing and what would make the study work
 * @accuracy relative 1e-8 against R 4.2.2 and lme4 1.1-31 (crossedComponents.test.ts)
 * @source aiag-msa4; burdick2005
 */
export function crossedComponents(observations: readonly CrossedObservation[], level = 0.95): CrossedComponents {
  const study = crossedCells(observations);
  const { parts, operators, repeats } = study;
  return componentsOfCrossed(crossedAnova(study), { parts: parts.length, operators: operators.length, repeats }, level);
}

/** How many of each a crossed study has. */
export interface CrossedSizes {
  readonly parts: number;
  readonly operators: number;
  readonly repeats: number;
}

/** The same from the table of a study that may not have been taken yet. */
export function componentsOfCrossed(anova: CrossedAnova, sizes: CrossedSizes, level = 0.95): CrossedComponents {
  const full = fullForm(anova, sizes, level);
  const pooled = pooledForm(anova, sizes, level);
  const poolsAt25Percent = (anova.interaction.p ?? 0) > POOLING_P;
  const used = poolsAt25Percent ? { interaction: 0, ...pooled.components } : full.components;
  const reproducibility = used.operator + used.interaction;
  const gauge = used.repeatability + reproducibility;
  const total = gauge + used.part;
  return {
    anova,
    ...full,
    pooled,
    poolsAt25Percent,
    shares: sharesOf(used),
    studyVariation: mapNames(
      { repeatability: used.repeatability, operator: used.operator, reproducibility, gauge, part: used.part },
      (variance) => Math.sqrt(variance / total),
    ),
    variances: { reproducibility, gauge, total },
    distinctCategories: distinctCategories(used.part, gauge),
  };
}

type Form<Name extends string> = Readonly<Record<Name, readonly MeanSquareTerm[]>>;

function fullForm(anova: CrossedAnova, { parts: p, operators: o, repeats: r }: CrossedSizes, level: number) {
  const terms = (part: number, operator: number, interaction: number, error: number): readonly MeanSquareTerm[] => [
    { coefficient: part, row: anova.part },
    { coefficient: operator, row: anova.operator },
    { coefficient: interaction, row: anova.interaction },
    { coefficient: error, row: anova.error },
  ];
  const [perPart, perOperator, perCell] = [1 / (o * r), 1 / (p * r), 1 / r];
  const single: Form<'interaction' | 'operator' | 'part'> = {
    interaction: terms(0, 0, perCell, -perCell),
    operator: terms(0, perOperator, -perOperator, 0),
    part: terms(perPart, 0, -perPart, 0),
  };
  const sums: Form<Sum> = {
    reproducibility: terms(0, perOperator, perCell - perOperator, -perCell),
    gauge: terms(0, perOperator, perCell - perOperator, 1 - perCell),
    // In a 2 x 2 study the coefficient of the interaction is 0, which rounding must not turn into a difference.
    total: terms(perPart, perOperator, (p * o - p - o) / (p * o * r), 1 - perCell),
  };
  const rawComponents = { repeatability: anova.error.meanSquare, ...mapNames(single, rawComponent) };
  return {
    rawComponents,
    components: truncateNegatives(rawComponents),
    intervals: {
      repeatability: varianceInterval(anova.error, level),
      ...mapNames({ ...single, ...sums }, (list) => componentInterval(list, level)),
    },
  };
}

function pooledForm(anova: CrossedAnova, { parts: p, operators: o, repeats: r }: CrossedSizes, level: number): PooledComponents {
  const sumSquares = anova.interaction.sumSquares + anova.error.sumSquares;
  const df = anova.interaction.df + anova.error.df;
  const error = { sumSquares, df, meanSquare: sumSquares / df };
  const terms = (part: number, operator: number, rest: number): readonly MeanSquareTerm[] => [
    { coefficient: part, row: anova.part },
    { coefficient: operator, row: anova.operator },
    { coefficient: rest, row: error },
  ];
  const [perPart, perOperator] = [1 / (o * r), 1 / (p * r)];
  const single: Form<'operator' | 'part'> = { operator: terms(0, perOperator, -perOperator), part: terms(perPart, 0, -perPart) };
  const sums: Form<'gauge' | 'total'> = {
    gauge: terms(0, perOperator, 1 - perOperator),
    total: terms(perPart, perOperator, (p * o * r - p - o) / (p * o * r)),
  };
  const rawComponents = { repeatability: error.meanSquare, ...mapNames(single, rawComponent) };
  return {
    anova: { part: testedRow(anova.part, error), operator: testedRow(anova.operator, error), error },
    rawComponents,
    components: truncateNegatives(rawComponents),
    intervals: {
      repeatability: varianceInterval(error, level),
      ...mapNames({ ...single, ...sums }, (list) => componentInterval(list, level)),
    },
  };
}
