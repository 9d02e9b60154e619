import { keepByKey } from '../keep/keepByKey.ts';
import { chiSquareQuantile } from '../stats/chiSquare.ts';
import { type AnovaRow, testedRow } from '../stats/variance/anovaRow.ts';
import { type CrossedSizes, componentsOfCrossed } from '../stats/variance/crossedComponents.ts';
import { componentsOfOneWay } from '../stats/variance/oneWayComponents.ts';
import { daysFigures } from './daysFigures.ts';
import { type HandsFigures, handsFigures } from './handsFigures.ts';
import { type LotsFigures, lotsFigures } from './lotsFigures.ts';
import { widthAsCv } from './noiseFigure.ts';

/** Variances of ln RLU that a planned study is thought to find. */
export interface ThoughtNoise {
  readonly repeatability: number;
  readonly operator: number;
  readonly lot: number;
  readonly withinPerson: number;
}

export type Widths<Name extends string> = Readonly<Record<Name, number>>;

/** Equal steps of probability in which each mean square goes through its distribution: more than ten move no width by a hundredth. */
const STEPS = 10;

/**
 * How wide the 95 % intervals of a study of hands will be: the median over what chance may bring, each mean square going through its
 * chi-square distribution in equal steps and through the same analysis that the study will get, pooling included.
 * @param sizes   solutions (parts), hands (operators) and swabs of each hand on each solution (repeats), each at least 2
 * @param noise   above 0 for repeatability
 * @param steps  equal steps of probability for each mean square; fewer are quicker and coarser
 * @returns widths as coefficients of variation (0.1 = ten percentage points)
 * @accuracy within 10 % of simulated studies (test/property/studyWidths.test.ts)
 */
export function predictHands(sizes: CrossedSizes, { repeatability, operator }: ThoughtNoise, steps = STEPS): Widths<keyof HandsFigures> {
  const { parts: p, operators: o, repeats: r } = sizes;
  const expected = [repeatability + p * r * operator, repeatability, repeatability];
  const dfs = [o - 1, (p - 1) * (o - 1), p * o * (r - 1)];
  const seen = chanceOf(expected, dfs, steps).map(([operators, mixed, error]) => {
    const errorRow = rowOf(error);
    const interaction = testedRow(rowOf(mixed), errorRow);
    // What lies between the solutions enters no width.
    const part = { sumSquares: 0, df: p - 1, meanSquare: 0, f: null, p: null };
    const total = { sumSquares: 1, df: p * o * r - 1, meanSquare: 1 };
    const anova = { part, operator: testedRow(rowOf(operators), interaction), interaction, error: errorRow, total };
    return handsFigures(componentsOfCrossed(anova, sizes));
  });
  const width = (name: keyof HandsFigures) => middleOf(seen.map((figures) => widthAsCv(figures[name])));
  return { swabs: width('swabs'), hands: width('hands'), together: width('together') };
}

/** The same for swabs within lots; both at least 2. */
export function predictLots(
  { lots, swabs }: { readonly lots: number; readonly swabs: number },
  { repeatability, lot }: ThoughtNoise,
): Widths<keyof LotsFigures> {
  const seen = chanceOf([repeatability + swabs * lot, repeatability], [lots - 1, lots * (swabs - 1)]).map(([between, within]) => {
    const residual = rowOf(within);
    const group = rowOf(between);
    const df = group.df + residual.df;
    const sumSquares = group.sumSquares + residual.sumSquares;
    const total = { sumSquares, df, meanSquare: sumSquares / df };
    return lotsFigures(componentsOfOneWay({ between: testedRow(group, residual), within: residual, total, groupMeans: [] }, swabs));
  });
  return { swabs: middleOf(seen.map((s) => widthAsCv(s.swabs))), lots: middleOf(seen.map((s) => widthAsCv(s.lots))) };
}

/** The same for people swabbed on two days each, at least 2. */
export function predictDays({ people }: { readonly people: number }, { repeatability, withinPerson }: ThoughtNoise): Widths<'days'> {
  const seen = chanceOf([repeatability + withinPerson], [people]).map(([within]) => daysFigures(rowOf(within)).days);
  return { days: middleOf(seen.map(widthAsCv)) };
}

interface MeanSquare {
  readonly meanSquare: number;
  readonly df: number;
}

const rowOf = (seen: MeanSquare | undefined): AnovaRow => {
  if (!seen) throw new RangeError('a mean square is missing');
  return { ...seen, sumSquares: seen.meanSquare * seen.df };
};

/** Every combination of what the mean squares may come out as, all equally likely. */
function chanceOf(expected: readonly number[], dfs: readonly number[], steps = STEPS): (readonly MeanSquare[])[] {
  return expected.reduce<(readonly MeanSquare[])[]>(
    (sofar, mean, i) => {
      const df = dfs[i] ?? 0;
      const values = quantilesOf(`${df} ${steps}`).map((factor) => ({ meanSquare: mean * factor, df }));
      return sofar.flatMap((squares) => values.map((value) => [...squares, value]));
    },
    [[]],
  );
}

const quantilesOf = keepByKey((key: string): readonly number[] => {
  const [df = Number.NaN, steps = Number.NaN] = key.split(' ').map(Number);
  return Array.from({ length: steps }, (_, i) => chiSquareQuantile((i + 0.5) / steps, df) / df);
});

function middleOf(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  return ((sorted[middle] ?? 0) + (sorted[(sorted.length - 1) >> 1] ?? 0)) / 2;
}
