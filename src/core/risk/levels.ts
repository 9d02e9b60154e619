import type { Level } from './types.ts';

/** All levels, lowest first. */
export const LEVELS: readonly Level[] = ['low', 'moderate', 'high', 'extreme'];

/** Negative when a is the lower level. */
export function compareLevels(a: Level, b: Level): number {
  return LEVELS.indexOf(a) - LEVELS.indexOf(b);
}

/** Each level once, lowest first. */
export function sortLevels(levels: Iterable<Level>): readonly Level[] {
  return [...new Set(levels)].sort(compareLevels);
}
