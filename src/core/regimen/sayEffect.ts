import type { Certainty, Effect, Measure } from './agentFacts.ts';

const MEASURES: Readonly<Record<Measure, { readonly name: string; readonly isShare: boolean }>> = {
  'prevented-fraction': { name: 'Prevented fraction', isShare: true },
  'lower-risk': { name: 'Lower by', isShare: true },
  'share-arrested': { name: 'Arrested', isShare: true },
  'risk-difference': { name: 'Difference in points', isShare: true },
  'risk-ratio': { name: 'Risk ratio', isShare: false },
  'rate-ratio': { name: 'Rate ratio', isShare: false },
  'odds-ratio': { name: 'Odds ratio', isShare: false },
  'mean-difference': { name: 'Mean difference', isShare: false },
  'standardised-mean-difference': { name: 'Standardised mean difference', isShare: false },
};
const CERTAINTIES: Readonly<Record<Certainty, string>> = {
  high: 'certainty high',
  moderate: 'certainty moderate',
  low: 'certainty low',
  'very-low': 'certainty very low',
  insufficient: 'evidence insufficient',
  'not-rated': 'certainty not rated',
};
const PERCENT = 100;

/**
 * A figure of the evidence as one line: "Prevented fraction 23 % (19 to 27): paste of 1,000 to 1,250 ppm against placebo, permanent teeth,
 * children to 16, 66 trials, certainty not rated".
 */
export function sayEffect({ what, outcome, measure, estimate, interval, people, trials, certainty, remark }: Effect): string {
  const { name, isShare } = MEASURES[measure];
  const say = (value: number) => String(isShare ? Number((value * PERCENT).toPrecision(3)) : value).replace('-', '−');
  const range = interval === undefined ? '' : ` (${say(interval[0])} to ${say(interval[1])})`;
  const unit = isShare && measure !== 'risk-difference' ? ' %' : '';
  const figure = estimate === null ? 'No figure' : `${name} ${say(estimate)}${unit}${range}`;
  const counted = trials === undefined ? 'number of trials not told' : trials === 1 ? '1 trial' : `${trials} trials`;
  const remarks = remark === undefined ? '' : `; ${remark}`;
  return `${figure}: ${what}, ${outcome}, ${people}, ${counted}, ${CERTAINTIES[certainty]}${remarks}.`;
}
