import { chooseDaysSizes, chooseHandsSizes, chooseLotsSizes } from '../../../../core/checks/chooseSizes.ts';
import type { HandsFigures } from '../../../../core/checks/handsFigures.ts';
import type { LotsFigures } from '../../../../core/checks/lotsFigures.ts';
import { predictHands, predictLots, type ThoughtNoise } from '../../../../core/checks/predictWidths.ts';
import { pairsForSame } from '../../../../core/meter/pairsNeeded.ts';

/** What a study is to find out, and how closely. `width` is that of the 95 % interval, as a coefficient of variation. */
export type Wish = { readonly width: number; readonly mostSwabs: number; readonly noise: ThoughtNoise } & (
  | { readonly kind: 'hands'; readonly of: keyof HandsFigures; readonly hands: number }
  | { readonly kind: 'lots'; readonly of: keyof LotsFigures; readonly lots: number }
  | { readonly kind: 'paired-days'; readonly of: 'days' }
  | PairWish
);

/** Two lots or two meters; `width` is how far apart still counts as the same. */
export interface PairWish {
  readonly kind: 'new-lot' | 'meters';
  readonly of: 'ratio';
  /** The noise of one swab was measured here, so that fewer pairs are enough. */
  readonly isKnown: boolean;
}

/** The study that is proposed. Solutions where the kind has them, else people or 1; repeats as swabs of one hand or lot on one solution. */
export interface Sizing {
  readonly reached: boolean;
  readonly parts: number;
  readonly repeats: number;
  readonly swabs: number;
  /** Expected width of each interval, in the order of the report. */
  readonly widths: Readonly<Record<string, number>>;
  /** So many hands or lots would reach the wish; null = not even the most that were tried, absent where they are not what is lacking. */
  readonly handsOrLots?: number | null | undefined;
  /** Of two lots or meters; absent = more than anybody would take. */
  readonly pairsNeeded?: number | undefined;
}

/** More hands or lots than this no practice has. */
const MOST_HANDS = 12;
const FEW_STEPS = 5;

/** @throws RangeError as the core does, where the smallest study already takes more swabs than allowed */
export function sizeStudy(wish: Wish): Sizing {
  if (wish.kind === 'hands') return sizeHands(wish);
  if (wish.kind === 'lots') return sizeLots(wish);
  if (wish.kind !== 'paired-days') return sizePairs(wish);
  const { reached, study } = chooseDaysSizes(wish);
  return { reached, parts: study.sizes.people, repeats: 2, swabs: study.swabs, widths: { ...study.widths } };
}

function sizeHands(wish: Extract<Wish, { kind: 'hands' }>): Sizing {
  const { reached, study } = chooseHandsSizes(wish.hands, wish);
  const { parts, repeats } = study.sizes;
  const sizing = { reached, parts, repeats, swabs: study.swabs, widths: { ...study.widths } };
  if (reached || wish.of === 'swabs') return sizing;
  const reaches = (operators: number) => predictHands({ parts, operators, repeats }, wish.noise, FEW_STEPS)[wish.of] <= wish.width;
  return { ...sizing, handsOrLots: firstAbove(wish.hands, reaches) };
}

function sizeLots(wish: Extract<Wish, { kind: 'lots' }>): Sizing {
  const { reached, study } = chooseLotsSizes(wish.lots, wish);
  const { swabs: repeats } = study.sizes;
  const sizing = { reached, parts: 1, repeats, swabs: study.swabs, widths: { ...study.widths } };
  if (reached || wish.of === 'swabs') return sizing;
  const reaches = (lots: number) => predictLots({ lots, swabs: repeats }, wish.noise)[wish.of] <= wish.width;
  return { ...sizing, handsOrLots: firstAbove(wish.lots, reaches) };
}

/** More solutions than this nobody keeps apart. */
const MOST_SOLUTIONS = 10;
/** Of the studies whose two lots or meters are alike, so many end by saying so: our proposal. */
export const CHANCE_OF_SAME = 0.8;

function sizePairs({ width, mostSwabs, noise, isKnown }: Extract<Wish, PairWish>): Sizing {
  const pairNoise = { sdLogSingle: Math.sqrt(noise.repeatability), isKnown };
  const needed = pairsForSame(pairNoise, { withinFraction: width, chance: CHANCE_OF_SAME });
  const most = Math.floor(mostSwabs / 2);
  const reached = needed.ok && needed.value.pairs <= most;
  const pairs = reached ? needed.value.pairs : most;
  const repeats = Math.ceil(pairs / MOST_SOLUTIONS);
  const parts = reached ? Math.ceil(pairs / repeats) : Math.floor(pairs / repeats);
  return { reached, parts, repeats, swabs: 2 * parts * repeats, widths: {}, ...(needed.ok ? { pairsNeeded: needed.value.pairs } : {}) };
}

function firstAbove(from: number, reaches: (count: number) => boolean): number | null {
  for (let count = from + 1; count <= MOST_HANDS; count++) if (reaches(count)) return count;
  return null;
}
