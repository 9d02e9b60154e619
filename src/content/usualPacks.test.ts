import { expect, test } from 'vitest';
import { agents } from './agents.ts';
import { usualPacks } from './usualPacks.ts';

test('every agent has a usual pack, and no pack is without its agent', () => {
  expect(Object.keys(usualPacks).sort()).toEqual(agents.map(({ id }) => id).sort());
});
