import type { BlendedPart, MeterNoise } from './blendNoise.ts';
import { changeParts, knownParts, READING_PARTS, type Shared, unknownParts } from './noiseSums.ts';
import type { NoiseTable } from './noiseTable.ts';
import { sayNumber } from './sayRlu.ts';
import type { NoisePart } from './types.ts';

/** "14 %", of a fraction. */
export const sayPercent = (fraction: number): string => `${sayNumber(Math.round(100 * fraction))} %`;

/** A variance of ln RLU as the coefficient of variation that people know. */
export const cvOfLogVariance = (variance: number): number => Math.sqrt(Math.expm1(variance));

const sayVariance = (variance: number): string => sayPercent(cvOfLogVariance(variance));

/** "a, b and c" */
const listOf = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** "repeatability 15 % (own study of 60 swabs, 93 % of the weight; the rest assumed, 30 %)" */
function sayPart(table: NoiseTable, { part, variance, prior, own, ownWeight }: BlendedPart): string {
  const figure = `${table.parts[part].name} ${sayVariance(variance ?? prior.variance)}`;
  const from = prior.from === 'assumed' ? 'assumed' : 'measured';
  if (own === null) return `${figure} (${from})`;
  const studies = own.studies === 1 ? 'own study' : `${own.studies} own studies`;
  const swabs = own.readings === null ? '' : ` of ${sayNumber(own.readings)} ${part === 'repeatability' ? 'swabs' : 'readings'}`;
  const typed = prior.from === 'assumed' ? 'assumed' : 'typed as measured';
  return `${figure} (${studies}${swabs}, ${sayPercent(ownWeight)} of the weight; the rest ${typed}, ${sayVariance(prior.variance)})`;
}

/** Each part that is in it with where it comes from. */
const sayKnown = (table: NoiseTable, noise: MeterNoise, parts: readonly NoisePart[]): string =>
  listOf(knownParts(noise, parts).map((part) => sayPart(table, part)));

/** "Differences between hands and between swab lots are not known here and not in it." */
function sayLeftOut(table: NoiseTable, noise: MeterNoise, parts: readonly NoisePart[]): string[] {
  const left = unknownParts(noise, parts).map(({ part }) => table.parts[part].between);
  return left.length === 0 ? [] : [`Differences ${listOf(left)} are not known here and not in it.`];
}

/** What the chance of one reading allows for. */
export function sayReadingNoise(table: NoiseTable, noise: MeterNoise): string {
  const { own, prior, variance } = noise.repeatability;
  const isPlain = own === null && knownParts(noise, READING_PARTS).length === 1;
  const said = isPlain
    ? `Swab noise of ${sayVariance(variance ?? prior.variance)} is ${prior.from === 'assumed' ? 'assumed, not measured here' : 'as measured here'}.`
    : `Swab noise here: ${sayKnown(table, noise, READING_PARTS)}.`;
  return [said, ...sayLeftOut(table, noise, READING_PARTS)].join(' ');
}

/** "repeatability 25 % (assumed) and day-to-day variation 35 % (assumed). Differences between hands ..." */
export function sayChangeNoise(table: NoiseTable, noise: MeterNoise, shared: Shared): string {
  const parts = changeParts(shared);
  return [`${sayKnown(table, noise, parts)}.`, ...sayLeftOut(table, noise, parts)].join(' ');
}

/** How often a limit is passed by noise alone, looking again at each visit. */
export function sayLooks({ looks }: NoiseTable): string {
  const oneIn = sayNumber(Math.round(1 / looks.chance));
  return `Over ${looks.visits} readings in a row, noise alone passes a limit at least once in at most 1 of ${oneIn} people, if the noise is as said.`;
}
