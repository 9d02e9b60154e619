import { expect, it, test } from 'vitest';
import { demoShelf } from '../../content/demo/shelf.ts';
import { interactions } from '../../content/safetyRules.ts';
import { checkTogether } from './checkTogether.ts';
import type { ShelfItem } from './types.ts';

const itemOf = (id: string): ShelfItem => {
  const item = demoShelf.find((i) => i.id === id);
  if (!item) throw new Error(`${id} is not on the demo shelf`);
  return item;
};
const bleach: ShelfItem = { ...itemOf('rinse-chlorhexidine-plain'), id: 'bleach', agentId: 'NAOCL', traits: [], pH: 11 };
const silver: ShelfItem = { ...itemOf('gel-apf'), id: 'silver', agentId: 'SDF38', traits: ['silver'], pH: 10 };
const iodine: ShelfItem = { ...itemOf('gel-apf'), id: 'iodine', agentId: 'PVPI', traits: ['iodine'], pH: 7 };
const read = (a: ShelfItem, b: ShelfItem) => checkTogether(a, b, interactions).map((m) => `${m.interaction.id} ${m.verdict}`);

// Rules of test/reference/regimen/data.json, interactions; what is only about one day is forbidden only when both are used at the visit.
test.each([
  [itemOf('rinse-chlorhexidine-plain'), bleach, ['I02 never-both', 'I03 never-both']],
  [bleach, itemOf('gel-apf'), ['I03 never-both']],
  [bleach, silver, ['I03 never-both']],
  [bleach, itemOf('paste-naf-1450'), []],
  [itemOf('paste-naf-2800'), itemOf('paste-naf-5000'), ['I13 never-both']],
  [itemOf('paste-naf-5000'), itemOf('gel-snf2'), ['I07 mind', 'I13 never-both']],
  [itemOf('varnish-naf-plain'), itemOf('gel-apf'), ['I06 never-both']],
  [itemOf('varnish-naf-plain'), itemOf('paste-naf-5000'), ['I06 mind', 'I07 mind']],
  [iodine, silver, ['I11 never-both']],
  [itemOf('rinse-chlorhexidine-plain'), itemOf('paste-naf-1450'), ['I01 mind']],
  [itemOf('rinse-naf-005'), itemOf('paste-casein'), []],
])('%o and %o', (a, b, expected) => {
  expect(read(a, b)).toEqual(expected);
  expect(read(b, a)).toEqual(expected);
});

it('does not take an unknown pH for a harmless one', () => {
  expect(read(bleach, { ...itemOf('rinse-naf-005'), pH: undefined })).toEqual(['I03 never-both']);
});
