import { comparePairs, FEWEST_PAIRS, type PairComparison, type ReadingPair } from '../meter/comparePairs.ts';
import { sayPercent } from '../reading/sayNoise.ts';
import type { Study, StudyReading, StudyReport } from './study.ts';
import { cannot, type StudyOutcome } from './studyOutcome.ts';

/** Up to this a new lot counts as the same: our own proposal, well inside what one reading may be off. */
export const SAME_WITHIN_FRACTION = 0.2;

/** Body of the report: what the pairs say of the second lot against the first. */
export interface NewLotFigures extends PairComparison {
  readonly oldLotId: string;
  readonly newLotId: string;
}

export type ReportOutcome =
  | { readonly ok: true; readonly report: Pick<StudyReport, 'sentences' | 'estimates' | 'body'> }
  | Extract<StudyOutcome, { ok: false }>;

/** A new lot against the one in use: the same solutions, swabbed with both. The first lot of the study is the one in use. */
export function reportNewLot(study: Pick<Study, 'lotIds' | 'runs'>, readings: readonly StudyReading[]): ReportOutcome {
  const [oldLotId, newLotId] = study.lotIds;
  if (oldLotId === undefined || newLotId === undefined)
    return cannot('The study names one lot only.', 'Plan it with two: the lot in use, then the new one.');
  const compared = comparePairs({ pairs: listPairs(study, readings, oldLotId, newLotId), withinFraction: SAME_WITHIN_FRACTION });
  if (!compared.ok)
    return compared.reason === 'no-spread'
      ? cannot('Both lots gave the same numbers.', 'Enter the numbers with all their digits.')
      : cannot('There are too few pairs.', `Needed are ${FEWEST_PAIRS} solutions or more, each swabbed with both lots.`);
  const body: NewLotFigures = { oldLotId, newLotId, ...compared.value };
  return { ok: true, report: { sentences: [sayPairs(compared.value)], estimates: [], body } };
}

function sayPairs({ verdict, ratio, pairs }: PairComparison): string {
  const range = `${sayChange(ratio.estimate)}, 95 % interval ${sayChange(ratio.low)} to ${sayChange(ratio.high)}, ${pairs} pairs`;
  const within = sayPercent(SAME_WITHIN_FRACTION);
  if (verdict === 'same-within') return `The new lot reads the same within ${within} (${range}).`;
  if (verdict === 'differs')
    return `The new lot reads otherwise by more than ${within} (${range}): its controls get a target of their own.`;
  return `Too few pairs to say that the new lot reads the same within ${within} (${range}).`;
}

const sayChange = (ratio: number): string => `${ratio < 1 ? 'minus' : 'plus'} ${sayPercent(Math.abs(ratio - 1))}`;

/** One pair for each part that both lots have a number of. */
function listPairs({ runs }: Pick<Study, 'runs'>, readings: readonly StudyReading[], oldLotId: string, newLotId: string): ReadingPair[] {
  const counted = readings.filter(({ state }) => state === 'valid');
  const find = (part: string, lotId: string) => counted.find((reading) => reading.lotId === lotId && runs[reading.run]?.part === part);
  return [...new Set(runs.flatMap(({ part }) => part ?? []))].flatMap((part) => {
    const [before, after] = [find(part, oldLotId), find(part, newLotId)];
    return before && after ? [{ oldRlu: before.rlu, newRlu: after.rlu, oldBound: before.bound, newBound: after.bound }] : [];
  });
}
