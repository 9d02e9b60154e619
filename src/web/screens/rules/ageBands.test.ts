import { expect, test } from 'vitest';
import { content } from '../../content.ts';
import { fitsBand, joinBands, sayAges, splitBands } from './ageBands.ts';

const tables = content.protocols;
const begun = [
  { fromAgeYears: 0, belowAgeYears: 6, protocol: 'four_level_0_5_2010' },
  { fromAgeYears: 6, belowAgeYears: null, protocol: 'four_level_6plus_2019' },
];

test('cut where a list begins or ends, and joined again unchanged', () => {
  const bands = splitBands(begun, tables);
  expect(bands.map(sayAges)).toEqual(['age 0 to under 6', 'age 6', 'age 7 to under 19', 'age 19 and over']);
  expect(joinBands(bands)).toEqual(begun);
});

test('every band has a list that fits', () => {
  for (const band of splitBands(begun, tables)) expect(tables.filter((t) => fitsBand(t, band)).length).toBeGreaterThan(0);
});

test('a list for 6 to 18 leaves the others to another list', () => {
  const bands = splitBands(begun, tables).map((b) =>
    b.fromAgeYears === 6 || b.fromAgeYears === 7 ? { ...b, protocol: 'child_list_6plus' } : b,
  );
  expect(joinBands(bands)).toEqual([
    begun[0],
    { fromAgeYears: 6, belowAgeYears: 19, protocol: 'child_list_6plus' },
    { fromAgeYears: 19, belowAgeYears: null, protocol: 'four_level_6plus_2019' },
  ]);
});

test('a list that is not meant for the ages is not taken over, and an age without a method stays without one', () => {
  const odd = [{ fromAgeYears: 0, belowAgeYears: null, protocol: 'four_level_6plus_2019' }];
  expect(splitBands(odd, tables)[0]).toMatchObject({ protocol: '' });
  expect(joinBands(splitBands(odd, tables))).toEqual([{ fromAgeYears: 6, belowAgeYears: null, protocol: 'four_level_6plus_2019' }]);
  expect(joinBands(splitBands([], tables))).toEqual([]);
});

test('limits of the practice itself are kept', () => {
  const own = [
    { fromAgeYears: 0, belowAgeYears: 6, protocol: 'child_list_0_5' },
    { fromAgeYears: 6, belowAgeYears: 65, protocol: 'four_level_6plus_2019' },
    { fromAgeYears: 65, belowAgeYears: null, protocol: 'scored_list_over6' },
  ];
  expect(joinBands(splitBands(own, tables))[1]).toEqual(own[1]);
});

test('two bands of one list with an age between them stay two', () => {
  const gap = [
    { fromAgeYears: 6, belowAgeYears: 7, protocol: 'four_level_6plus_2019' },
    { fromAgeYears: 19, belowAgeYears: null, protocol: 'four_level_6plus_2019' },
  ];
  expect(joinBands(gap)).toEqual(gap);
});
