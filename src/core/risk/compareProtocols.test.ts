import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { casesOf } from '../../../test/reference/risk/riskCases.ts';
import { childList0to5 } from '../../content/protocols/childList0to5.ts';
import { protocolTables } from '../../content/protocols/protocolTables.ts';
import { compareProtocols } from './compareProtocols.ts';
import { evaluateProtocol } from './evaluateProtocol.ts';

const settings = { lowSalivaMeansExtreme: false };

test.each([
  [0, ['four_level_0_5_2010', 'scored_list_0_6', 'child_list_0_5']],
  [5, ['four_level_0_5_2010', 'scored_list_0_6', 'child_list_0_5']],
  [6, ['four_level_6plus_2019', 'scored_list_0_6', 'child_list_6plus']],
  [7, ['four_level_6plus_2019', 'scored_list_over_6', 'child_list_6plus']],
  [18, ['four_level_6plus_2019', 'scored_list_over_6', 'child_list_6plus']],
  [19, ['four_level_6plus_2019', 'scored_list_over_6']],
])('the lists that fit at age %i', (ageYears, ids) => {
  const { results } = compareProtocols(protocolTables, {}, ageYears, settings);
  expect(results.map((r) => r.protocol)).toEqual(ids);
});

test('one lesion: decides on one list, raises on the other (d02)', () => {
  const items = {
    lesion_cavity_or_dentin_new: true,
    lesions_or_restorations_count_36m: 1,
    fluoride_any_exposure: true,
    toothpaste_f_once_daily: true,
  };
  const { results, partsOn } = compareProtocols(protocolTables, items, 40, settings);
  expect(results.map((r) => r.level)).toEqual(['high', 'moderate']);
  expect(partsOn).toEqual([
    { item: 'lesion_cavity_or_dentin_new', byProtocol: { four_level_6plus_2019: 'decides', scored_list_over_6: 'not-on-this-list' } },
    { item: 'toothpaste_f_once_daily', byProtocol: { four_level_6plus_2019: 'lowers', scored_list_over_6: 'not-on-this-list' } },
    { item: 'lesions_or_restorations_count_36m', byProtocol: { four_level_6plus_2019: 'not-on-this-list', scored_list_over_6: 'raises' } },
    { item: 'fluoride_any_exposure', byProtocol: { four_level_6plus_2019: 'not-on-this-list', scored_list_over_6: 'lowers' } },
  ]);
});

test('an item that shares a row with another is not called without effect (d46)', () => {
  const { partsOn } = compareProtocols(protocolTables, { chemo_radiotherapy: true, saliva_reducing_condition: true }, 58, settings);
  expect(partsOn.find((row) => row.item === 'chemo_radiotherapy')?.byProtocol).toEqual({
    four_level_6plus_2019: 'raises',
    scored_list_over_6: 'decides',
  });
});

it('gives each list what it gives alone, and no parting where the levels agree', () => {
  fc.assert(
    fc.property(casesOf(childList0to5, 30), ({ items, ageYears }) => {
      const { results, partsOn } = compareProtocols(protocolTables, items, ageYears, settings);
      for (const result of results) {
        const table = protocolTables.find((t) => t.id === result.protocol);
        expect(table && evaluateProtocol(table, items, ageYears, settings)).toEqual(result);
      }
      if (new Set(results.map((r) => r.levelUnknownNotTicked)).size === 1) expect(partsOn).toEqual([]);
      for (const row of partsOn) expect(new Set(Object.values(row.byProtocol)).size).toBeGreaterThan(1);
    }),
    { numRuns: 60 },
  );
});
