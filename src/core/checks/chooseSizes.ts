import type { CrossedSizes } from '../stats/variance/crossedComponents.ts';
import type { HandsFigures } from './handsFigures.ts';
import type { LotsFigures } from './lotsFigures.ts';
import { predictDays, predictHands, predictLots, type ThoughtNoise, type Widths } from './predictWidths.ts';

/** A study that can be planned: how many of each, how many swabs that takes, and how wide its intervals will be. */
export interface SizedStudy<Sizes, Name extends string> {
  readonly sizes: Sizes;
  readonly swabs: number;
  readonly widths: Widths<Name>;
}

/** `reached` = the smallest study whose interval is as narrow as wanted; otherwise `study` is the best of those within the limits. */
export interface ChosenStudy<Sizes, Name extends string> {
  readonly reached: boolean;
  readonly study: SizedStudy<Sizes, Name>;
}

export interface Wanted<Name extends string> {
  /** The figure whose interval is meant. */
  readonly of: Name;
  /** Width of its 95 % interval as a coefficient of variation, above 0 (0.1 = ten percentage points). */
  readonly width: number;
  /** More swabs than this are too many. */
  readonly mostSwabs: number;
  readonly noise: ThoughtNoise;
}

/** More solutions than this nobody keeps apart, and more swabs of one hand on one solution tire it: our proposal. */
const MOST_PARTS = 10;
const MOST_REPEATS = 5;
/** For looking around; what is answered is computed with all steps. */
const FEW_STEPS = 5;

/**
 * How many solutions and swabs a study of these hands needs for the width that is wanted.
 * @param operators  pairs of hands that take part, at least 2
 * @throws RangeError for fewer hands, a width that is not above 0, or fewer swabs than the smallest study takes
 */
export function chooseHandsSizes(operators: number, wanted: Wanted<keyof HandsFigures>): ChosenStudy<CrossedSizes, keyof HandsFigures> {
  if (!(operators >= 2))
    throw new RangeError(`operators must be at least two: ${operators}. With one person, hands and swabs cannot be told apart`);
  const candidates = range(2, MOST_PARTS).flatMap((parts) => range(2, MOST_REPEATS).map((repeats) => ({ parts, operators, repeats })));
  return choose(candidates, wanted, {
    swabsOf: ({ parts, repeats }) => parts * operators * repeats,
    quick: (sizes) => predictHands(sizes, wanted.noise, FEW_STEPS),
    exact: (sizes) => predictHands(sizes, wanted.noise),
  });
}

/** The same for swabs within lots. @param lots  lots in the house, at least 2 */
export function chooseLotsSizes(
  lots: number,
  wanted: Wanted<keyof LotsFigures>,
): ChosenStudy<{ lots: number; swabs: number }, keyof LotsFigures> {
  if (!(lots >= 2)) throw new RangeError(`lots must be at least two: ${lots}. Wait for the next lot, or compare two packs`);
  const candidates = range(2, Math.max(2, Math.floor(wanted.mostSwabs / lots))).map((swabs) => ({ lots, swabs }));
  const predict = (sizes: { lots: number; swabs: number }) => predictLots(sizes, wanted.noise);
  return choose(candidates, wanted, { swabsOf: ({ swabs }) => lots * swabs, quick: predict, exact: predict });
}

/** The same for people swabbed on two days each. */
export function chooseDaysSizes(wanted: Wanted<'days'>): ChosenStudy<{ people: number }, 'days'> {
  const candidates = range(2, Math.max(2, Math.floor(wanted.mostSwabs / 2))).map((people) => ({ people }));
  const predict = (sizes: { people: number }) => predictDays(sizes, wanted.noise);
  return choose(candidates, wanted, { swabsOf: ({ people }) => 2 * people, quick: predict, exact: predict });
}

interface Prediction<Sizes, Name extends string> {
  swabsOf(sizes: Sizes): number;
  quick(sizes: Sizes): Widths<Name>;
  exact(sizes: Sizes): Widths<Name>;
}

function choose<Sizes extends object, Name extends string>(
  candidates: readonly Sizes[],
  { of, width, mostSwabs }: Wanted<Name>,
  prediction: Prediction<Sizes, Name>,
): ChosenStudy<Sizes, Name> {
  if (!(width > 0)) throw new RangeError(`width must be above 0: ${width}`);
  const allowed = candidates
    .filter((sizes) => prediction.swabsOf(sizes) <= mostSwabs)
    .sort((a, b) => prediction.swabsOf(a) - prediction.swabsOf(b));
  const [first] = allowed;
  const fewest = Math.min(...candidates.map((sizes) => prediction.swabsOf(sizes)));
  if (first === undefined) throw new RangeError(`mostSwabs must be at least ${fewest} for such a study: ${mostSwabs}`);
  const sized = (sizes: Sizes) => ({ sizes, swabs: prediction.swabsOf(sizes), widths: prediction.exact(sizes) });
  let best = first;
  let narrowest = Number.POSITIVE_INFINITY;
  for (const sizes of allowed) {
    const expected = prediction.quick(sizes)[of];
    if (expected <= width) {
      const study = sized(sizes);
      if (study.widths[of] <= width) return { reached: true, study };
    }
    if (expected < narrowest) [best, narrowest] = [sizes, expected];
  }
  return { reached: false, study: sized(best) };
}

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);
