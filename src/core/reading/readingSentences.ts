import { noiseOfMeter } from './blendNoise.ts';
import { boundOnMeter } from './boundOnMeter.ts';
import type { MeterAndNoise, PastComparison } from './compareWithPast.ts';
import type { ReadingInterpretation } from './interpretReading.ts';
import { sayDate, type TakenAt } from './parseTakenAt.ts';
import { sayChangeNoise, sayLooks, sayPercent, sayReadingNoise } from './sayNoise.ts';
import { sayRlu } from './sayRlu.ts';
import type { Bound, ConditionResult, NotTakenReason, SwabReading } from './types.ts';

export const DECIDE_TODAY = 'Decide on findings today; swab again at the next planned visit.';
export const COMPLETE_WITHOUT = 'The visit is complete without a reading.';
export const FAILED_IS_NO_SWAB = 'A failed swab is not repeated: the next swab is for the next planned visit, 24 hours or more from now.';

const NOT_PREDICTIVE = 'The cut-off has not been shown to predict decay.';
const DAY_TO_DAY = 'Day-to-day change comes on top.';

const NOT_TAKEN: Readonly<Record<NotTakenReason, string>> = {
  declined: 'declined',
  'no-site': 'no tooth at the site',
  appliance: 'an appliance is in the way',
  bleeding: 'bleeding at the site',
  calculus: 'calculus at the site',
  'could-not-tolerate': 'not tolerated',
  'meter-out': 'meter not in use',
  'control-out': 'control out of limits',
  'no-stock': 'no swabs in stock',
  other: 'another reason',
};

export const sayNotTaken = (reason: NotTakenReason | undefined): string =>
  reason === undefined ? 'No swab today.' : `No swab today: ${NOT_TAKEN[reason]}.`;

/** The words beside "another reason": for the professional, so never part of the headline. */
export const sayNotTakenNote = (note: string | undefined): string[] => (note === undefined ? [] : [`Noted: ${note}.`]);

/** "Not counted: taken after cleaning, polishing or probing." */
export const sayNotCounted = (failing: readonly ConditionResult[]): string => `Not counted: ${failing.map((c) => c.says).join('; ')}.`;

/** Cautions of a counted reading, or undefined when there is none. */
export function sayCautions(cautions: readonly ConditionResult[]): string | undefined {
  return cautions.length === 0 ? undefined : `Counted, with caution: ${cautions.map((c) => c.says).join('; ')}.`;
}

/** "5,150 RLU. Too close to call." */
export function sayVerdict(rlu: number, bound: Bound, verdict: ReadingInterpretation['verdict']): string {
  const words = { below: 'Below the cut-off.', above: 'Above the cut-off.', 'too-close': 'Too close to call.' };
  const open = "At the meter's limit, which is too near the cut-off to call.";
  return `${sayRlu(rlu, bound)}. ${verdict === null ? open : words[verdict]}`;
}

/** What swabbing again could do, and what to do today. */
export function saySettling({ verdict, settleChance, daysToDecide }: ReadingInterpretation): string[] {
  if (verdict === 'above' || verdict === 'below') return [];
  const sentences: string[] = [];
  if (settleChance !== null) sentences.push(saySettleChance(settleChance));
  if (settleChance !== null && daysToDecide === null)
    sentences.push('If the level stays here, more than three swabs would be needed: swabbing will not settle this.');
  return [...sentences, DECIDE_TODAY];
}

/** As one time in a whole number of swabs; likelier than even, in thirds and quarters. */
function saySettleChance(chance: number): string {
  if (chance < 7 / 12) return `Another swab would settle it about 1 time in ${Math.round(1 / Math.min(chance, 0.5))}.`;
  return `Another swab would decide it about ${chance < 17 / 24 ? '2 times in 3' : '3 times in 4'}.`;
}

/** The chance for swab noise alone, or why there is none, always with what comes on top and what the cut-off does not do. */
export function sayChance(probabilityAbove: number | null, taken: TakenAt | undefined, { meter, table }: MeterAndNoise): string[] {
  if (probabilityAbove === null) return [`A number at the meter's limit gives no chance. ${DAY_TO_DAY} ${NOT_PREDICTIVE}`];
  const sampled = taken === undefined ? 'the plaque sampled' : `the plaque sampled at ${taken.localTime}`;
  const chance = `Allowing for swab noise alone, ${sayInHundred(probabilityAbove)} that ${sampled} was above this meter's cut-off.`;
  return [`${chance} ${DAY_TO_DAY} ${NOT_PREDICTIVE}`, sayReadingNoise(table, noiseOfMeter(table, meter))];
}

function sayInHundred(probability: number): string {
  const count = Math.round(100 * probability);
  if (count === 0) return 'less than 1 in 100';
  return count === 100 ? 'more than 99 in 100' : `${count} in 100`;
}

/**
 * Change since the last counted reading, never as "improved": first what is told, then the limit with its parts, what is assumed of them
 * and how often it errs.
 */
export function sayChange(comparison: PastComparison, { meter, table }: MeterAndNoise): string[] {
  if (comparison.kind === 'none') return [];
  if (comparison.kind === 'other-meter') return ['Earlier readings are from a different meter: no comparison.'];
  const { reading, at } = comparison.past;
  const since = `${sayDate(at.localDate)} (${sayRlu(reading.rlu, boundOnMeter(reading.rlu, reading.bound, meter))})`;
  if (comparison.kind === 'open') return [`No comparison with ${since}: a number at the meter's limit leaves the change open.`];
  const { verdict, riseFraction, fallFraction } = comparison.change;
  const parts = sayChangeNoise(table, noiseOfMeter(table, meter), comparison.shared);
  const reach = `Noise alone explains a rise of up to ${sayPercent(riseFraction)} or a fall of up to ${sayPercent(-fallFraction)}`;
  const limit = `${reach}: ${parts} ${sayLooks(table)}`;
  if (verdict === 'within-noise') return [`No change that this method can see since ${since}.`, limit];
  const direction = verdict === 'rise' ? 'Higher' : 'Lower';
  const sentence = `${direction} than on ${since}, by more than noise explains.`;
  const regression = 'High first readings tend to fall without treatment; part of this fall is that.';
  return verdict === 'fall' && reading.rlu >= meter.cutoffRlu ? [sentence, limit, regression] : [sentence, limit];
}

/** What the number is for and what it does not say: with every number, whether counted or not. */
export function sayPurpose({ site }: SwabReading): string[] {
  const where = {
    'lower-front-tongue-side': 'Sampled where decay is rarest; it says how active plaque is there.',
    other: 'Sampled at another site; it says how active plaque is there.',
    unknown: 'The site sampled was not noted; it says how active plaque is at one place.',
  };
  return [
    `${where[site ?? 'unknown']} It does not say decay.`,
    'It helps with one question, whether an antimicrobial belongs in the home care; it does not enter the risk level.',
  ];
}
