import { expect, test } from 'vitest';
import { fourLevel2019 } from '../../content/protocols/fourLevel2019.ts';
import { scoredListOver6 } from '../../content/protocols/scoredListOver6.ts';
import { evaluateProtocol } from './evaluateProtocol.ts';
import { levelSentence } from './levelSentence.ts';
import type { ProtocolTable } from './protocol.ts';
import type { Items } from './types.ts';

const settings = { lowSalivaMeansExtreme: false };
const say = (items: Items, table: ProtocolTable = fourLevel2019) =>
  levelSentence(evaluateProtocol(table, items, 40, settings), (item) => table.items[item]?.label ?? item);

test('low is withheld while a disease item is unknown', () => {
  expect(say({}, scoredListOver6)).toBe(
    'Not yet assessable by Scored list, over 6: moderate and high not excluded. Not known: New lesions and fillings for decay in 36 months; Tooth lost to decay within the look-back.',
  );
});

test('a level that unknown items could move says so, and names those that could, three at most', () => {
  expect(say({ lesion_white_spot_smooth_new: true })).toBe(
    'High proposed by Four-level, 2019, to be confirmed; extreme not excluded. Not known: Saliva flow measured low, or clearly too little on looking.',
  );
  expect(say({})).toBe(
    'Moderate proposed by Four-level, 2019, to be confirmed; low, high and extreme not excluded. Not known: New cavity, or a lesion in dentine on a radiograph; New white spot on a smooth surface; New lesion between teeth, in enamel only, on a radiograph; and 1 more.',
  );
});

test('a level that nothing unknown could move stands alone', () => {
  expect(say({ lesion_white_spot_smooth_new: true, saliva_flow_reduced_measured: false })).toBe('High proposed by Four-level, 2019.');
  const known = Object.fromEntries(
    Object.values(fourLevel2019.items).map((item) => [item.id, item.valueType === 'count' ? 0 : item.role === 'protective']),
  );
  expect(say(known)).toBe('Low proposed by Four-level, 2019, by judgement: to be confirmed.');
});
