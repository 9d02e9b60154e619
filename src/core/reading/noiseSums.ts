import type { BlendedPart, MeterNoise } from './blendNoise.ts';

/** Parts that one reading of the plaque sampled holds: another swab of it could have come from other hands or another lot. */
export const READING_PARTS = ['repeatability', 'operator', 'lot'] as const;
/** Parts that a reading on another day holds. Readings of two meters are never compared, so the part between meters is in neither. */
export const OCCASION_PARTS = ['repeatability', 'operator', 'lot', 'withinPerson'] as const;

/** What two readings of one person are known to share. */
export interface Shared {
  readonly sameOperator: boolean;
  readonly sameLot: boolean;
}

/** Hands and lots cancel in a difference only where they are known to be the same. */
export function changeParts({ sameOperator, sameLot }: Shared): readonly (typeof OCCASION_PARTS)[number][] {
  return OCCASION_PARTS.filter((part) => !(part === 'operator' && sameOperator) && !(part === 'lot' && sameLot));
}

/**
 * Sum of the parts that are known, a variance of ln RLU. Parts that nobody knows are not in it: whoever shows what rests on it names
 * them (`unknownParts`).
 */
export const sumOfParts = (noise: MeterNoise, parts: readonly BlendedPart['part'][]): number =>
  parts.reduce((sum, part) => sum + (noise[part].variance ?? 0), 0);

export const knownParts = (noise: MeterNoise, parts: readonly BlendedPart['part'][]): readonly BlendedPart[] =>
  parts.map((part) => noise[part]).filter(({ variance }) => variance !== null);

export const unknownParts = (noise: MeterNoise, parts: readonly BlendedPart['part'][]): readonly BlendedPart[] =>
  parts.map((part) => noise[part]).filter(({ variance }) => variance === null);

/** sd of ln(reading) about the plaque sampled. */
export const readingSdLog = (noise: MeterNoise): number => Math.sqrt(sumOfParts(noise, READING_PARTS));

/** sd of ln(reading) of one occasion about the person's level. */
export const occasionSdLog = (noise: MeterNoise): number => Math.sqrt(sumOfParts(noise, OCCASION_PARTS));
