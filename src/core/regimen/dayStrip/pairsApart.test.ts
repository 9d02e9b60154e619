import { expect, it } from 'vitest';
import { interactions } from '../../../content/safetyRules.ts';
import type { ShelfItem } from '../types.ts';
import { pairsApart } from './pairsApart.ts';

const item = (id: string, agentId: string, traits: readonly string[] = []): ShelfItem => ({
  id,
  name: id,
  leafletName: { en: id, es: id } as ShelfItem['leafletName'],
  agentId,
  form: 'rinse',
  traits,
  inStock: true,
  release: 'anyone',
  meets: [],
  use: { timesPerDay: 1, amount: '' },
});

it('keeps chlorhexidine 30 minutes from ordinary paste, in either order', () => {
  const both = [item('chx', 'CHX_RINSE'), item('paste', 'F_PASTE_STD', ['sodium lauryl sulfate'])];
  expect(pairsApart(both, interactions)).toEqual([{ pair: ['chx', 'paste'], minutes: 30, ruleId: 'I01' }]);
  expect(pairsApart(both.toReversed(), interactions)).toEqual([{ pair: ['paste', 'chx'], minutes: 30, ruleId: 'I01' }]);
});

it('takes the longest of several rules', () => {
  const rows = interactions.filter((r) => r.id === 'I01' || r.id === 'I09').map((r) => ({ ...r, apartMinutes: r.id === 'I09' ? 90 : 30 }));
  const [pair] = pairsApart([item('chx', 'CHX_RINSE'), item('paste', 'F_PASTE_STD')], rows);
  expect(pair).toMatchObject({ minutes: 90, ruleId: 'I09' });
});

it('leaves alone what no rule keeps apart', () => {
  expect(pairsApart([item('gum', 'POLYOL_GUM'), item('paste', 'F_PASTE_STD')], interactions)).toEqual([]);
});
