import type { LocalCutoffResult, LocalCutoffStudy } from '../../../../core/meter/localCutoffStudy.ts';
import { formatNumber, plural } from '../../../format.ts';

/** How many there are of either kind, and what is missing for a figure. */
export function sayGroups({ withLesion, without, notEnough, stillNeeded }: LocalCutoffStudy): string {
  const groups = `${plural(withLesion, 'person', 'people')} with a new lesion, ${without} without.`;
  if (notEnough === null) return groups;
  const group = notEnough === 'too-few-with-lesion' ? 'with a new lesion' : 'without';
  return `${groups} Too few for a figure: ${stillNeeded} more ${group} ${stillNeeded === 1 ? 'is' : 'are'} needed.`;
}

/** What the figures say, the answer first. */
export function sayCutoff({ auc, tellsApart, best, atPresentCutoff: present }: LocalCutoffResult): readonly string[] {
  const chance = `Of two people, one with and one without, the one with a new lesion had the higher reading ${inHundred(auc.auc)}`;
  const range = auc.interval ? ` (95 % interval ${Math.round(100 * auc.interval.low)} to ${Math.round(100 * auc.interval.high)})` : '';
  const { sensitivity, specificity, cutoffRlu } = present;
  return [
    tellsApart
      ? 'In this practice readings told the two apart better than chance.'
      : 'In this practice readings did not tell the two apart better than chance.',
    `${chance}${range}; chance alone gives 50.`,
    `At the present cut-off of ${formatNumber(cutoffRlu)} RLU: ${inHundred(sensitivity.estimate)} with a new lesion were at or above it (95 % interval ${span(sensitivity)}), ${inHundred(specificity.estimate)} without were below (${span(specificity)}).`,
    `The two would part best at ${formatNumber(best.cutoff)} RLU (95 % interval ${formatNumber(best.cutoffInterval.low)} to ${formatNumber(best.cutoffInterval.high)}). That is chosen on these people and will do less well on others. The meter's cut-off stays as its instructions give it.`,
  ];
}

const inHundred = (share: number): string => `${Math.round(100 * share)} times in 100`;

const span = ({ low, high }: { readonly low: number; readonly high: number }): string =>
  `${Math.round(100 * low)} to ${Math.round(100 * high)}`;
