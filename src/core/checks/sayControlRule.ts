import { MULTI_RULES, type MultiRule } from '../stats/multiRules.ts';

/** What each rule has seen, on one side. A rule about both sides says so itself. */
const SEEN: Readonly<Record<MultiRule, (side: 'high' | 'low') => string>> = {
  '1-2s': (side) => `one ${side}, beyond the usual band`,
  '1-3s': (side) => `one far too ${side}`,
  '2-2s': (side) => `two in a row ${side}`,
  'R-4s': () => 'one high and one low in a row',
  '4-1s': (side) => `four in a row on the ${side} side`,
  '10-x': (side) => `ten in a row on the ${side} side`,
};

/** "control rule 3 of 6: two in a row high". The trade's codes stay in JSON. */
export function sayControlRule(rule: MultiRule, z: number): string {
  return `control rule ${MULTI_RULES.indexOf(rule) + 1} of ${MULTI_RULES.length}: ${SEEN[rule](z < 0 ? 'low' : 'high')}`;
}

const NAMES: Readonly<Record<MultiRule, string>> = {
  '1-2s': 'one beyond the usual band: another look',
  '1-3s': 'one far from the target',
  '2-2s': 'two in a row beyond the band, on one side',
  'R-4s': 'one high and one low in a row',
  '4-1s': 'four in a row on one side, well off the target',
  '10-x': 'ten in a row on one side',
};

/** "rule 3, two in a row beyond the band, on one side", for a list of rules to choose from. */
export const sayControlRuleName = (rule: MultiRule): string => `rule ${MULTI_RULES.indexOf(rule) + 1}, ${NAMES[rule]}`;
