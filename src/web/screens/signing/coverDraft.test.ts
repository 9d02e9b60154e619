import { expect, it, test } from 'vitest';
import { problemOfLine, readCover } from './coverDraft.ts';

const limits = { today: '2026-11-25', given: 0 };

test.each([
  ['', '', {}],
  [' 3 ', '2027 02 01', { packs: 3, until: '2027-02-01' }],
  ['100', '20261125', { packs: 100, until: '2026-11-25' }],
])('%j packs to %j', (packs, until, covers) => {
  expect(readCover({ packs, until }, limits)).toEqual({ covers, problems: {} });
});

test.each([
  ['0', '', limits, 'packs'],
  ['101', '', limits, 'packs'],
  ['2.5', '', limits, 'packs'],
  ['two', '', limits, 'packs'],
  ['-1', '', limits, 'packs'],
  ['', '20270230', limits, 'until'],
  ['', '20261124', limits, 'until'],
  ['', '', { ...limits, given: 1 }, 'packs'],
  ['2', '', { ...limits, given: 2 }, 'packs'],
  ['2', '', { ...limits, order: {} }, 'packs'],
  ['3', '', { ...limits, order: { packs: 2 } }, 'packs'],
  ['', '20270101', { ...limits, order: { until: '2026-12-31' } }, 'until'],
] as const)('%j packs to %j is asked back under its line', (packs, until, place, line) => {
  expect(Object.keys(readCover({ packs, until }, place).problems)).toEqual([line]);
});

it('takes what an order covers, to its last day', () => {
  const order = { packs: 2, until: '2026-12-31' };
  expect(readCover({ packs: '2', until: '20261231' }, { ...limits, order }).problems).toEqual({});
});

it('asks a number that is none back in words about numbers', () => {
  expect(readCover({ packs: '0', until: '' }, limits).problems).toEqual({
    packs: 'A whole number from 1 to 100, or nothing for one pack.',
  });
});

it('puts the words of the server under the line that they name', () => {
  expect(problemOfLine('until: 2026-11-24 lies before today.', 'until')).toBe('2026-11-24 lies before today.');
  expect(problemOfLine('until: 2026-11-24 lies before today.', 'packs')).toBeUndefined();
  expect(problemOfLine(null, 'packs')).toBeUndefined();
});
