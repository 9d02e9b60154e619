import { expect, test } from 'vitest';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { lighterLimit } from './lighterLimit.ts';

const [item] = demoShelf;
if (!item) throw new Error('the demonstration has no shelf');
const use = (timesPerDay: number, state: 'proposed' | 'waiting-for-signature' = 'proposed') => ({
  item: { ...item, agentId: 'XYLITOL', meets: ['sweetener' as const] },
  state,
  use: { ...item.use, timesPerDay },
});

test('half of the tasks, never fewer than four, and nothing where four or fewer are asked', () => {
  expect(lighterLimit([])).toBeUndefined();
  expect(lighterLimit([use(4)])).toBeUndefined();
  expect(lighterLimit([use(5)])).toBe(4);
  expect(lighterLimit([use(8)])).toBe(4);
  expect(lighterLimit([use(6), use(11)])).toBe(8);
});

test('what waits for a signature counts, and what is done at the visit does not', () => {
  expect(lighterLimit([use(4), use(6, 'waiting-for-signature')])).toBe(5);
  expect(lighterLimit([{ ...use(9), use: { ...item.use, timesPerDay: 9, atVisit: true } }])).toBeUndefined();
});
