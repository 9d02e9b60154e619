import type { MeterNoise } from '../../../../core/reading/blendNoise.ts';
import { cvOfLogVariance, sayPercent } from '../../../../core/reading/sayNoise.ts';
import type { NoisePart } from '../../../../core/reading/types.ts';
import { joinWords, plural } from '../../../format.ts';
import { FIGURES } from './planDraft.ts';
import { CHANCE_OF_SAME, type Sizing, type Wish } from './sizeStudy.ts';
import type { PlannedKind } from './studyWords.ts';

const points = (width: number): string => `${Math.round(100 * width)} percentage points`;

/** "3 members, 5 solutions, 2 swabs of each by everybody: 30 swabs." */
export function saySize(wish: Wish, { parts, repeats, swabs }: Sizing): string {
  const all = plural(swabs, 'swab');
  if (wish.kind === 'hands')
    return `${wish.hands} members, ${plural(parts, 'solution')}, ${plural(repeats, 'swab')} of each by everybody: ${all}.`;
  if (wish.kind === 'lots') return `${wish.lots} lots, one solution, ${plural(repeats, 'swab')} of each lot: ${all}.`;
  if (wish.kind !== 'paired-days')
    return `${plural(parts, 'solution')}, each read ${repeats === 1 ? 'once' : `${repeats} times`} with both ${wish.kind === 'meters' ? 'meters' : 'lots'}: ${all}.`;
  return `${parts} people, each swabbed on two days: ${all}.`;
}

/** How wide the interval will be, and where that is not what was wanted, what would help. */
export function sayWidth(wish: Wish, sizing: Sizing): readonly string[] {
  if (wish.kind === 'new-lot' || wish.kind === 'meters') return sayPairs(wish, sizing);
  const name = FIGURES[wish.kind].find(({ id }) => id === wish.of)?.name ?? wish.of;
  const expected = sizing.widths[wish.of] ?? Number.NaN;
  if (sizing.reached)
    return [`The 95 % interval of ${name} is then expected to be about ${points(expected)} wide; ${points(wish.width)} were wanted.`];
  return [
    `An interval of ${points(wish.width)} for ${name} is out of reach with ${plural(wish.mostSwabs, 'swab')}. The best is about ${points(expected)}.`,
    sayWhatHelps(wish, sizing),
  ];
}

function sayPairs({ kind, width, mostSwabs }: Wish, { reached, pairsNeeded }: Sizing): readonly string[] {
  const both = kind === 'meters' ? 'meters' : 'lots';
  const within = sayPercent(width);
  if (reached)
    return [`Where both ${both} read alike, so many pairs say so within ${within} about ${Math.round(10 * CHANCE_OF_SAME)} times in 10.`];
  const needed =
    pairsNeeded === undefined
      ? `No number of pairs that anybody would take is enough.`
      : `That takes about ${plural(2 * pairsNeeded, 'swab')}.`;
  return [
    `${plural(mostSwabs, 'swab')} are too few to say within ${within}, ${Math.round(10 * CHANCE_OF_SAME)} times in 10, that two ${both} read alike. ${needed}`,
    'More swabs or a wider limit would help.',
  ];
}

function sayWhatHelps(wish: Wish, { handsOrLots }: Sizing): string {
  if (wish.kind === 'paired-days') return 'Only more people would narrow it.';
  if (wish.of === 'swabs') return 'More swabs would narrow it.';
  const what = wish.kind === 'hands' ? 'hands' : 'lots';
  const unit = wish.kind === 'hands' ? 'members' : 'lots';
  const needed =
    typeof handsOrLots === 'number'
      ? `About ${handsOrLots} ${unit} would reach it.`
      : `Even 12 ${unit} would not reach it: so few ${what} say little of how ${what} differ.`;
  return `Only more ${what} would narrow it, more swabs would not. ${needed}`;
}

const PARTS: Readonly<Record<PlannedKind, readonly NoisePart[]>> = {
  hands: ['repeatability', 'operator'],
  lots: ['repeatability', 'lot'],
  'paired-days': ['repeatability', 'withinPerson'],
  'new-lot': ['repeatability'],
  meters: ['repeatability'],
};
const PART_NAMES: Readonly<Record<NoisePart, string>> = {
  repeatability: 'one swab after another',
  operator: 'hands',
  lot: 'lots',
  meter: 'meters',
  withinPerson: 'day to day',
};

/** "Reckoned with one swab after another 25 % (assumed) and hands 15 % (assumed)." */
export function sayThought(kind: PlannedKind, noise: MeterNoise): string {
  const said = PARTS[kind].map((part) => {
    const { variance, prior, own } = noise[part];
    const from = own ? 'own study' : prior.from === 'assumed' ? 'assumed' : 'typed as measured';
    return `${PART_NAMES[part]} ${sayPercent(cvOfLogVariance(variance ?? prior.variance))} (${from})`;
  });
  return `Reckoned with ${joinWords(said)}. If the noise is another, so is the width.`;
}

/** "Besides: hands about 60, hands and swabs together about 58 percentage points." Empty where the kind has one figure. */
export function sayPlannedWidths(wish: Wish, { widths }: Sizing): string {
  const others = FIGURES[wish.kind].filter(({ id }) => id !== wish.of);
  if (others.length === 0) return '';
  const said = others.map(({ id, name }) => `of ${name} about ${points(widths[id] ?? Number.NaN)}`);
  return `The interval ${joinWords(said)} wide.`;
}
