import type { DayEnd, HeldFood, PlaqueState } from '../types.ts';
import { MADE, stateLength, tailAt } from './layout.ts';
import { releaseAt } from './phases.ts';

/**
 * Sugar from held food, mmol/L of saliva and second, that no longer counts. Even asleep, where a swallow takes minutes, it keeps the sugar
 * in saliva below 0.02 mmol/L, a fiftieth of that at which plaque works at half its speed.
 */
export const LEAST_RELEASE = 1e-5;

/** The end of a day, counted from there. */
export function endOfDay(values: Float64Array, releases: readonly HeldFood[], minutes: number): DayEnd {
  const ended = values.slice();
  const held = releases.map((release) => ({ ...release, fromS: release.fromS - minutes * 60 }));
  return { values: ended, held: held.filter((release) => releaseAt([release], 0) >= LEAST_RELEASE) };
}

/** A day begins with what another ended with; its sums for the balance of protons begin anew. */
export function startOf({ values, held }: DayEnd): PlaqueState {
  const begun = values.slice();
  const cells = cellsOf(values);
  begun.fill(0, tailAt(cells) + MADE);
  return { minute: 0, values: begun, held };
}

/** Layers of a state, from its length. */
export function cellsOf({ length }: Float64Array): number {
  const perLayer = stateLength(2) - stateLength(1);
  return (length - stateLength(0)) / perLayer;
}
