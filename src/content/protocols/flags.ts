/** Words for the remarks that a result carries (`RiskResult.flags`). */
export const riskFlags: Readonly<Record<string, string>> = {
  judgement: 'The list leaves this step to judgement; the numbers used here are our proposal.',
  'measure-saliva': 'Dry mouth is to be expected and normal saliva has not been shown: measure saliva.',
  'low-saliva-alone': 'Extreme because saliva is low, by the setting of this practice; the list itself asks for high first.',
  'ten-moderate-lines': 'Ten points from moderate lines only: high if read literally, moderate in the edition without points.',
  'cavity-present': 'A cavity is present. An earlier edition of this list would say high.',
  'nothing-ticked': 'Nothing is ticked on this list: moderate until something is known.',
  'special-needs-low': 'Limits to daily mouth care alone read low on this list and high on others: compare before you decide.',
};
