import type { Mouth, Plaque, Saliva, SourcedNumber } from '../types.ts';
import { buildDayModel, type DayModel, type DayTables } from './dayModel.ts';

const MOST_MODELS = 10_000;
/** Shares stay shares however far they are varied. */
const MOST_SHARE = 1;

type Spread = readonly [low: number, high: number];

/**
 * Draws of everything that is not known well: each tuned number of the model and of eating within its own range, and this mouth's saliva and
 * plaque by their factors. One draw in two lies below the usual value, one in two above, evenly on the logarithm; all are drawn
 * independently, which makes the band rather too wide than too narrow, since the tuned numbers were chosen together.
 * @param random  a stream of numbers from 0 up to, not including, 1; the same stream gives the same draws
 * @throws RangeError unless count is a whole number from 1 to 10,000
 */
export function drawModels(mouth: Mouth, tables: DayTables, count: number, random: () => number): readonly DayModel[] {
  if (!(Number.isInteger(count) && count >= 1 && count <= MOST_MODELS)) throw new RangeError(`count must be 1 to ${MOST_MODELS}: ${count}`);
  const usual = buildDayModel(mouth, tables);
  return Array.from({ length: count }, () => ({
    mouth: { saliva: drawSaliva(mouth.saliva, tables, random), plaque: drawPlaque(mouth.plaque, tables, random) },
    constants: drawNumbers(usual.constants, tables.constants, random),
    eating: drawNumbers(usual.eating, tables.eating, random),
  }));
}

/** From 0 at `low` by 0.5 at `value` to 1 at `high`, even on the logarithm on both sides. */
export function spreadAt(share: number, value: number, [low, high]: Spread): number {
  return share < 0.5 ? value * (low / value) ** (1 - 2 * share) : value * (high / value) ** (2 * share - 1);
}

function drawNumbers<K extends string>(
  usual: Readonly<Record<K, number>>,
  rows: Readonly<Record<K, SourcedNumber>>,
  random: () => number,
): Readonly<Record<K, number>> {
  const drawn: Record<K, number> = { ...usual };
  for (const [name, { value, low, high }] of Object.entries(rows) as [K, SourcedNumber][]) {
    if (low !== undefined && high !== undefined) drawn[name] = spreadAt(random(), value, [low, high]);
  }
  return drawn;
}

function drawPlaque(plaque: Plaque, { plaqueSpread }: DayTables, random: () => number): Plaque {
  const drawn = byFactors(plaque, plaqueSpread, random);
  return { ...drawn, aciduricShare: Math.min(drawn.aciduricShare, MOST_SHARE) };
}

/** The two volumes go together, so that the one at which a person swallows stays above the one that is left. */
function drawSaliva(saliva: Saliva, { salivaSpread }: DayTables, random: () => number): Saliva {
  const drawn = byFactors(saliva, salivaSpread, random);
  const ratio = saliva.swallowVolumeMl / saliva.residualVolumeMl;
  return { ...drawn, swallowVolumeMl: drawn.residualVolumeMl * ratio };
}

function byFactors<T extends { readonly [K in keyof T]: number }>(
  values: T,
  spread: Readonly<Record<keyof T, Spread>>,
  random: () => number,
): T {
  const entries = (Object.keys(spread) as (keyof T)[]).map((key) => [key, values[key] * spreadAt(random(), 1, spread[key])] as const);
  return { ...values, ...Object.fromEntries(entries) };
}
