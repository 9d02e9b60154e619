import { expect, test } from 'vitest';
import { cautions } from '../../content/cautions.ts';
import { demoShelf } from '../../content/demo/shelf.ts';
import { listCautions } from './listCautions.ts';

const itemOf = (agentId: string) => {
  const item = demoShelf.find((i) => i.agentId === agentId);
  if (!item) throw new Error(`no ${agentId} on the shelf`);
  return item;
};
const idsFor = (...agentIds: readonly string[]) => listCautions(agentIds.map(itemOf), 40, cautions).map((c) => c.id);

test('strong paste beside varnish starts the day after; either alone does not say so', () => {
  expect(idsFor('F_VARNISH', 'F_PASTE_5000')).toContain('strong-after-varnish');
  expect(idsFor('F_VARNISH', 'F_PASTE_STD')).not.toContain('strong-after-varnish');
  expect(idsFor('F_PASTE_5000')).not.toContain('strong-after-varnish');
});

test('no items, no cautions; an age limit holds to the birthday', () => {
  expect(listCautions([], 40, cautions)).toEqual([]);
  const at = (ageYears: number) => listCautions([itemOf('F_PASTE_STD')], ageYears, cautions).map((c) => c.id);
  expect([at(6).includes('adult-helps'), at(7).includes('adult-helps')]).toEqual([true, false]);
});
