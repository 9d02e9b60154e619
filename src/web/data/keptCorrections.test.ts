import { expect, test, vi } from 'vitest';
import { createKeptCorrections } from './keptCorrections.ts';

const mine = { visitId: 'v1', memberId: 'ines' };
const correction = { reason: 'heard wrong', changes: [{ path: 'answers.snacks_per_day', value: null }] };

test('a correction is kept for one visit and one member until it is dropped', () => {
  const kept = createKeptCorrections();
  kept.keep(mine, correction);
  expect(kept.find(mine)).toEqual(correction);
  expect(kept.find({ ...mine, memberId: 'una' })).toBeUndefined();
  expect(kept.find({ ...mine, visitId: 'v2' })).toBeUndefined();
  kept.keep(mine, { ...correction, level: 'high' });
  expect(kept.find(mine)?.level).toBe('high');
  expect(kept.places()).toEqual([mine]);
  kept.drop(mine);
  expect(kept.find(mine)).toBeUndefined();
  expect(kept.places()).toEqual([]);
});

test('the list of places stays the same object while only the words of a correction change, and listeners hear of the rest', () => {
  const kept = createKeptCorrections();
  const listener = vi.fn();
  kept.subscribe(listener);
  kept.keep(mine, correction);
  const places = kept.places();
  kept.keep(mine, { ...correction, reason: 'another' });
  expect(kept.places()).toBe(places);
  kept.drop(mine);
  kept.drop(mine);
  expect(listener).toHaveBeenCalledTimes(2);
});
