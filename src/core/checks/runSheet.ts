import { shuffler } from 'd3-array';
import type { CrossedSizes } from '../stats/variance/crossedComponents.ts';

/** One swab of a run sheet before it is numbered. */
export interface SheetRun {
  readonly part?: string | undefined;
  readonly operator?: string | undefined;
  readonly lotId?: string | undefined;
  /** Where two meters are compared. */
  readonly meterId?: string | undefined;
  readonly replicate: number;
}

/**
 * Run sheet of a study of hands: in each round every hand swabs every solution once, in an order of chance, so that a solution that
 * decays or a meter that warms up is shared by all.
 * @param parts    names of the solutions
 * @param operators names of the members
 * @param random   0 up to 1, seeded by the caller
 */
export function handsSheet(
  { parts, operators, repeats }: { readonly parts: readonly string[]; readonly operators: readonly string[]; readonly repeats: number },
  random: () => number,
): SheetRun[] {
  const shuffle = shuffler(random);
  return rounds(repeats).flatMap((replicate) =>
    shuffle(operators.flatMap((operator) => parts.map((part) => ({ part, operator, replicate })))),
  );
}

/** Run sheet of a study of lots: in each round one swab of every lot, in an order of chance. */
export function lotsSheet(lotIds: readonly string[], swabs: number, random: () => number): SheetRun[] {
  const shuffle = shuffler(random);
  return rounds(swabs).flatMap((replicate) => shuffle(lotIds.map((lotId) => ({ lotId, replicate }))));
}

/** Two days for each person, who stands there under a number: the first day of all comes before the second. */
export function daysSheet(people: number): SheetRun[] {
  return rounds(2).flatMap((replicate) => Array.from({ length: people }, (_, i) => ({ part: `Person ${i + 1}`, replicate })));
}

/** The two lots, or the two meters. */
export type BothWays = readonly [Pick<SheetRun, 'lotId' | 'meterId'>, Pick<SheetRun, 'lotId' | 'meterId'>];

/** Each solution with the old and with the new lot or meter, one right after the other, which of them first left to chance. */
export function pairsSheet(
  { parts, repeats, both }: { readonly parts: readonly string[]; readonly repeats: number; readonly both: BothWays },
  random: () => number,
): SheetRun[] {
  const shuffle = shuffler(random);
  return rounds(repeats).flatMap((replicate) =>
    shuffle([...parts]).flatMap((part) => shuffle([...both]).map((one) => ({ part, replicate, ...one }))),
  );
}

/** How many of each a sheet holds. */
export function sizesOfSheet(runs: readonly SheetRun[]): CrossedSizes {
  const count = (of: (run: SheetRun) => unknown) => new Set(runs.map(of).filter((value) => value !== undefined)).size;
  return { parts: count((r) => r.part), operators: count((r) => r.operator), repeats: count((r) => r.replicate) };
}

const rounds = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);
