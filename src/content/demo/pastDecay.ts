import type { Chance } from './chance.ts';

/** How decay has gone in an age band, for drawing only: shares of people, and counts of teeth where there is any. */
export interface DecayBand {
  readonly belowAgeYears: number;
  /** Share of people with a tooth decayed, missing because of decay, or filled. */
  readonly any: number;
  /** Mean number of such teeth among them. */
  readonly meanIfAny: number;
  /** How unevenly the count is spread among them: shape of the negative binomial of what is beyond the first tooth. */
  readonly shape: number;
  /** Share of them with an untreated tooth, and the mean number of untreated teeth where there is one. */
  readonly untreated: number;
  readonly meanUntreated: number;
  /** Of the teeth that are not untreated, the share that is missing. */
  readonly missing: number;
}

/**
 * Surveys of the United States, whole population: prevalence and untreated share at 2 to 19 years, means where there is any at 20 to
 * 64. Means of children and of 65 and over, all shapes, and how untreated teeth share out are assumed.
 * The figures they are held against, with their sources, stand in test/reference/outcomes.
 */
const MILK: readonly DecayBand[] = [
  { belowAgeYears: 6, any: 0.23, meanIfAny: 1.43, shape: 0.8, untreated: 0.43, meanUntreated: 1.2, missing: 0 },
  { belowAgeYears: 9, any: 0.52, meanIfAny: 2.8, shape: 0.77, untreated: 0.31, meanUntreated: 1.4, missing: 0 },
];
const PERMANENT: readonly DecayBand[] = [
  { belowAgeYears: 6, any: 0, meanIfAny: 1, shape: 1, untreated: 0, meanUntreated: 1, missing: 0 },
  { belowAgeYears: 12, any: 0.17, meanIfAny: 2, shape: 1, untreated: 0.29, meanUntreated: 1.3, missing: 0 },
  { belowAgeYears: 16, any: 0.5, meanIfAny: 3.4, shape: 1, untreated: 0.29, meanUntreated: 1.5, missing: 0 },
  { belowAgeYears: 20, any: 0.64, meanIfAny: 4.5, shape: 1, untreated: 0.35, meanUntreated: 1.8, missing: 0 },
  { belowAgeYears: 35, any: 0.82, meanIfAny: 6.4, shape: 1.6, untreated: 0.32, meanUntreated: 2.5, missing: 0.125 },
  { belowAgeYears: 50, any: 0.94, meanIfAny: 8.5, shape: 2, untreated: 0.26, meanUntreated: 2.3, missing: 0.23 },
  { belowAgeYears: 65, any: 0.97, meanIfAny: 11.8, shape: 3, untreated: 0.2, meanUntreated: 2, missing: 0.335 },
  { belowAgeYears: 200, any: 0.96, meanIfAny: 15, shape: 5, untreated: 0.18, meanUntreated: 2, missing: 0.45 },
];

/** Teeth in the order in which decay takes them here, most often first: molars, then premolars and upper fronts, lower fronts last. */
const MILK_TEETH = '74 84 75 85 54 64 55 65 52 62 51 61'.split(' ');
const FIRST_TO_COME = '36 46 16 26 11 21'.split(' ');
const PERMANENT_TEETH = '36 46 16 26 37 47 17 27 25 15 24 14 35 45 12 22 34 44 11 21 13 23 43 33'.split(' ');

/** Teeth that decay has touched before anybody of this practice looked. FDI two-digit codes. */
export interface PastDecay {
  readonly untreated: readonly string[];
  readonly missing: readonly string[];
  readonly filled: readonly string[];
}

export const NO_PAST_DECAY: PastDecay = { untreated: [], missing: [], filled: [] };

/**
 * @param rank  0 to 1: where this person stands among people of the age, from least to most decay
 */
export function drawPastDecay(ageYears: number, rank: number, chance: Chance): PastDecay {
  const milk = ageYears < 9 ? drawTeeth(bandAt(MILK, ageYears), MILK_TEETH, rank, chance) : NO_PAST_DECAY;
  const come = ageYears < 6 ? [] : ageYears < 12 ? FIRST_TO_COME : PERMANENT_TEETH;
  const permanent = drawTeeth(bandAt(PERMANENT, ageYears), come, rank, chance);
  return {
    untreated: [...milk.untreated, ...permanent.untreated],
    missing: permanent.missing,
    filled: [...milk.filled, ...permanent.filled],
  };
}

function bandAt(bands: readonly DecayBand[], ageYears: number): DecayBand {
  const band = bands.find(({ belowAgeYears }) => ageYears < belowAgeYears);
  if (!band) throw new RangeError(`no band for an age of ${ageYears}`);
  return band;
}

function drawTeeth(band: DecayBand, order: readonly string[], rank: number, chance: Chance): PastDecay {
  const rankIfAny = (rank - (1 - band.any)) / band.any;
  if (!(rankIfAny > 0)) return NO_PAST_DECAY;
  const touched = order.slice(0, 1 + countAtRank(rankIfAny, band.meanIfAny - 1, band.shape));
  const open = chance.happens(band.untreated) ? 1 + chance.count(band.meanUntreated - 1) : 0;
  // Any of them may be the open one; the first of the rest are the oldest, and are missing more often than not evenly.
  const from = chance.whole(0, touched.length - 1);
  const untreated = [...touched.slice(from), ...touched.slice(0, from)].slice(0, open);
  const treated = touched.filter((tooth) => !untreated.includes(tooth));
  const missing = treated.filter(() => chance.happens(band.missing));
  return { untreated, missing, filled: treated.filter((tooth) => !missing.includes(tooth)) };
}

const MOST_TEETH = 32;

/** The count that a share `rank` of a negative binomial with this mean and shape does not exceed. */
function countAtRank(rank: number, mean: number, shape: number): number {
  const grow = mean / (mean + shape);
  let chanceOfCount = (1 - grow) ** shape;
  let left = rank - chanceOfCount;
  let count = 0;
  while (left > 0 && count < MOST_TEETH) {
    chanceOfCount *= ((shape + count) / (count + 1)) * grow;
    left -= chanceOfCount;
    count += 1;
  }
  return count;
}
