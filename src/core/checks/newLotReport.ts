import { studentTQuantile } from '../stats/studentT.ts';
import type { ComputedReport } from './handsReport.ts';
import type { Study, StudyReading } from './study.ts';

const FEWEST_PAIRS = 5;

/** What a comparison of two lots found; `ratio` is new over old. */
export interface NewLotFigures {
  readonly oldLotId: string;
  readonly newLotId: string;
  readonly pairs: number;
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A new lot against the one in use, the same solution swabbed with both: the geometric mean of new over old with its 95 % interval.
 * The first lot of the study is the one in use.
 * @throws RangeError saying what is missing
 */
export function newLotReport(study: Study, readings: readonly StudyReading[]): ComputedReport {
  const [oldLotId, newLotId] = study.lotIds;
  if (oldLotId === undefined || newLotId === undefined) throw new RangeError('lotIds must name two lots: the one in use, then the new one');
  const differences = pairDifferences(study, readings, oldLotId, newLotId);
  const pairs = differences.length;
  if (pairs < FEWEST_PAIRS)
    throw new RangeError(`readings must make ${FEWEST_PAIRS} pairs at least: ${pairs}. Swab more parts with both lots`);
  const mean = differences.reduce((sum, d) => sum + d, 0) / pairs;
  const sd = Math.sqrt(differences.reduce((sum, d) => sum + (d - mean) ** 2, 0) / (pairs - 1));
  const reach = (studentTQuantile(0.975, pairs - 1) * sd) / Math.sqrt(pairs);
  const [ratio, low, high] = [mean, mean - reach, mean + reach].map(Math.exp) as [number, number, number];
  const figures: NewLotFigures = { oldLotId, newLotId, pairs, ratio, low, high };
  return { sentences: [sayNewLot(figures)], estimates: [], body: figures };
}

const percent = (ratio: number): string => `${Math.round(Math.abs(ratio - 1) * 100)} %`;

function sayNewLot({ pairs, ratio, low, high }: NewLotFigures): string {
  const range = `95 % interval ${sayChange(low)} to ${sayChange(high)}, ${pairs} pairs`;
  if (low <= 1 && high >= 1) return `No difference between the lots that ${pairs} pairs can see: ${sayChange(ratio)} (${range}).`;
  return `The new lot reads ${percent(ratio)} ${ratio > 1 ? 'higher' : 'lower'} (${range}): its target is set apart.`;
}

const sayChange = (ratio: number): string => `${ratio < 1 ? 'minus' : 'plus'} ${percent(ratio)}`;

/** ln(new / old) of each part that both lots have a reading of; the mean of repeats. */
function pairDifferences(study: Study, readings: readonly StudyReading[], oldLotId: string, newLotId: string): number[] {
  const logs = new Map<string, number[]>();
  for (const { run, rlu, state, lotId } of readings) {
    const part = study.runs[run]?.part;
    if (state !== 'valid' || part === undefined) continue;
    const key = JSON.stringify([part, lotId]);
    logs.set(key, [...(logs.get(key) ?? []), Math.log(rlu)]);
  }
  const meanOf = (part: string, lotId: string) => {
    const values = logs.get(JSON.stringify([part, lotId]));
    return values && values.reduce((sum, v) => sum + v, 0) / values.length;
  };
  const parts = [...new Set(study.runs.flatMap(({ part }) => part ?? []))];
  return parts.flatMap((part) => {
    const [before, after] = [meanOf(part, oldLotId), meanOf(part, newLotId)];
    return before === undefined || after === undefined ? [] : [after - before];
  });
}
