import { FEWEST_PER_GROUP, type LocalCutoffResult, type LocalCutoffStudy } from '../../../../core/meter/localCutoffStudy.ts';
import { formatNumber, plural } from '../../../format.ts';

/** How many there are of either kind, and how many more it takes for a figure. */
export function sayGroups({ withLesion, without, notEnough }: LocalCutoffStudy): string {
  const groups = `${plural(withLesion, 'person', 'people')} with a new lesion, ${without} without.`;
  if (notEnough === null) return groups;
  const more = [
    ...(withLesion < FEWEST_PER_GROUP ? [`${FEWEST_PER_GROUP - withLesion} more with a new lesion`] : []),
    ...(without < FEWEST_PER_GROUP ? [`${FEWEST_PER_GROUP - without} more without`] : []),
  ];
  return `${groups} Too few for a figure, which takes ${FEWEST_PER_GROUP} of each: ${more.join(' and ')}.`;
}

/** Where there are too few: how people come to count. */
export function sayWhoCounts(months: number): string {
  return `Somebody counts with a new lesion when a closed visit within ${months} months of the reading notes one, and without when a closed visit after these ${months} months had looked at all teeth and none was noted in that time. So new findings, and whether the whole mouth was examined, are answered at each visit; nothing else is needed.`;
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
