import type { NewStudy } from '../../../../api/swabChecks.ts';
import type { ThoughtNoise } from '../../../../core/checks/predictWidths.ts';
import { type BothWays, daysSheet, handsSheet, lotsSheet, pairsSheet, type SheetRun } from '../../../../core/checks/runSheet.ts';
import { FEWEST_PAIRS } from '../../../../core/meter/comparePairs.ts';
import type { MeterNoise } from '../../../../core/reading/blendNoise.ts';
import type { NoisePart } from '../../../../core/reading/types.ts';
import { seededUniform } from '../../../../core/stats/seededUniform.ts';
import { parseDecimal, sayNotANumber } from '../../../parseDecimal.ts';
import type { Sizing, Wish } from './sizeStudy.ts';
import { type PlannedKind, solutionNames } from './studyWords.ts';

/** A study as it is thought out on the page. */
export interface PlanDraft {
  readonly kind: PlannedKind;
  readonly meterId: string;
  /** Names of the members; one where the kind has one pair of hands. */
  readonly hands: readonly string[];
  /** Where two lots are compared, the one in use first. */
  readonly lotIds: readonly string[];
  /** Where two meters are compared. */
  readonly newMeterId: string;
  readonly of: string;
  /** Percentage points, typed. */
  readonly width: string;
  readonly mostSwabs: string;
}

export type PlanProblems = Readonly<Partial<Record<'hands' | 'lotIds' | 'newMeterId' | 'width' | 'mostSwabs', string>>>;

export interface Figure {
  readonly id: string;
  /** In a sentence: "the interval of hands". */
  readonly name: string;
}

export const FIGURES: Readonly<Record<PlannedKind, readonly Figure[]>> = {
  hands: [
    { id: 'swabs', name: 'one swab after another' },
    { id: 'hands', name: 'hands' },
    { id: 'together', name: 'hands and swabs together' },
  ],
  lots: [
    { id: 'swabs', name: 'one swab after another' },
    { id: 'lots', name: 'lots' },
  ],
  'paired-days': [{ id: 'days', name: 'day to day, swabs included' }],
  'new-lot': [{ id: 'ratio', name: 'the ratio of the lots' }],
  meters: [{ id: 'ratio', name: 'the ratio of the meters' }],
};

const PERCENT = 100;
const MOST_SWABS = 500;

/** The noise that a study is thought to find: measured where it was measured, assumed else. */
function thoughtNoise(noise: MeterNoise): ThoughtNoise {
  const of = (part: NoisePart) => noise[part].variance ?? noise[part].prior.variance;
  return { repeatability: of('repeatability'), operator: of('operator'), lot: of('lot'), withinPerson: of('withinPerson') };
}

export const isOfPairs = (kind: PlannedKind): kind is 'new-lot' | 'meters' => kind === 'new-lot' || kind === 'meters';

/** Fewest swabs that a study of this kind takes. */
function fewestSwabs({ kind, hands, lotIds }: PlanDraft): number {
  if (kind === 'hands') return 4 * hands.length;
  if (kind === 'lots') return 2 * lotIds.length;
  return isOfPairs(kind) ? 2 * FEWEST_PAIRS : 4;
}

export function findProblems(draft: PlanDraft): PlanProblems {
  const { kind, hands } = draft;
  const width = parseDecimal(draft.width);
  const most = parseDecimal(draft.mostSwabs);
  const problems: Record<string, string | undefined> = {
    hands:
      kind === 'hands' && hands.length < 2
        ? 'At least two members: with one, hands and swabs cannot be told apart.'
        : kind !== 'hands' && hands.length !== 1
          ? 'One member takes all of these swabs, so that hands do not come into it.'
          : undefined,
    lotIds: lotProblem(draft),
    newMeterId:
      kind === 'meters' && (draft.newMeterId === '' || draft.newMeterId === draft.meterId)
        ? 'A second meter is needed; add it under Practice.'
        : undefined,
    width: width === undefined ? sayNotANumber(draft.width) : width > 0 && width <= 300 ? undefined : 'It must be above 0 and 300 or less.',
    mostSwabs: mostProblem(draft, most),
  };
  return Object.fromEntries(Object.entries(problems).filter(([, said]) => said !== undefined));
}

function lotProblem({ kind, lotIds }: PlanDraft): string | undefined {
  if (kind === 'lots' && lotIds.length < 2) return 'At least two lots: with one, lots and swabs cannot be told apart.';
  const [old, next] = lotIds;
  if (kind === 'new-lot' && (old === undefined || next === undefined || old === next))
    return 'Two different lots in date are needed; add the new one under Practice.';
  return undefined;
}

function mostProblem(draft: PlanDraft, most: number | undefined): string | undefined {
  if (most === undefined || !Number.isInteger(most)) return 'A whole number is needed.';
  if (most > MOST_SWABS) return `It must be ${MOST_SWABS} or less.`;
  const fewest = fewestSwabs(draft);
  return most < fewest ? `The smallest study of this kind takes ${fewest} swabs.` : undefined;
}

/** What the page asks the search for; null while something needs a look. */
export function wishOf(draft: PlanDraft, meterNoise: MeterNoise): Wish | null {
  if (Object.keys(findProblems(draft)).length > 0) return null;
  const noise = thoughtNoise(meterNoise);
  const isKnown = meterNoise.repeatability.own !== null;
  const asked = {
    width: (parseDecimal(draft.width) ?? Number.NaN) / PERCENT,
    mostSwabs: parseDecimal(draft.mostSwabs) ?? Number.NaN,
    noise,
  };
  // The figures on offer are those of the kind.
  if (draft.kind === 'hands') return { ...asked, kind: 'hands', of: draft.of as 'hands', hands: draft.hands.length };
  if (draft.kind === 'lots') return { ...asked, kind: 'lots', of: draft.of as 'lots', lots: draft.lotIds.length };
  if (isOfPairs(draft.kind)) return { ...asked, kind: draft.kind, of: 'ratio', isKnown };
  return { ...asked, kind: 'paired-days', of: 'days' };
}

/** The study with its run sheet, in the order that follows from the seed. */
export function buildPlan(draft: PlanDraft, sizing: Sizing, seed: number): NewStudy {
  const { kind, meterId, lotIds, hands } = draft;
  const runs = sheetOf(draft, sizing, seed).map((run, index) => ({ index, ...run }));
  const width = parseDecimal(draft.width);
  return {
    kind,
    meterId,
    lotIds: [...lotIds],
    design: {
      medium: kind === 'paired-days' ? 'people' : 'atp-solution',
      parts: sizing.parts,
      operators: [...hands],
      replicates: sizing.repeats,
      seed,
      ...(width === undefined ? {} : { wantedRatio: 1 + width / PERCENT / (isOfPairs(kind) ? 1 : 2) }),
    },
    runs,
  };
}

function sheetOf(draft: PlanDraft, { parts, repeats }: Sizing, seed: number): readonly SheetRun[] {
  const { kind, hands, lotIds } = draft;
  const random = seededUniform(seed);
  const solutions = solutionNames(parts);
  const [one] = hands;
  if (kind === 'hands') return handsSheet({ parts: solutions, operators: hands, repeats }, random);
  const both = bothOf(draft);
  const sheet = both
    ? pairsSheet({ parts: solutions, repeats, both }, random)
    : kind === 'lots'
      ? lotsSheet(lotIds, repeats, random)
      : daysSheet(parts);
  return one === undefined ? sheet : sheet.map((run) => ({ ...run, operator: one }));
}

function bothOf({ kind, lotIds: [old, next], meterId, newMeterId }: PlanDraft): BothWays | undefined {
  if (kind === 'meters') return [{ meterId }, { meterId: newMeterId }];
  return kind === 'new-lot' && old !== undefined && next !== undefined ? [{ lotId: old }, { lotId: next }] : undefined;
}
