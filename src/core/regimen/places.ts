import type { Jurisdiction } from './types.ts';

/** A number that labels print differently by place. A place without one of its own takes `unknown`, the strictest of all published. */
export type ByPlace = Readonly<Record<'US' | 'UK' | 'unknown', number>> & Readonly<Partial<Record<Jurisdiction, number>>>;

export const atPlace = (byPlace: ByPlace, place: Jurisdiction): number => byPlace[place] ?? byPlace.unknown;
