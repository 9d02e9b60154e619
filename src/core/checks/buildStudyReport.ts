import type { StudyKind } from '../reading/types.ts';
import { countedRuns, type NumberedRun, type RunReading } from './countedRuns.ts';
import { reportDays, type SwabNoise } from './reportDays.ts';
import { type DayNoise, reportHands } from './reportHands.ts';
import { reportLots } from './reportLots.ts';
import type { StudyOutcome } from './studyOutcome.ts';

export interface StudyToReport {
  readonly kind: Extract<StudyKind, 'hands' | 'lots' | 'paired-days'>;
  readonly runs: readonly NumberedRun[];
  readonly readings: readonly RunReading[];
  readonly swabNoise?: SwabNoise | undefined;
  readonly dayNoise?: DayNoise | undefined;
}

/**
 * What a swab study says, in plain words and as estimates for the meter. Nothing is computed from a design with holes: a solution or a
 * swab round with a missing reading is left out whole and named, as long as two remain.
 * @throws never for what a practice can enter: too few, all alike and missing numbers come back as words
 */
export function buildStudyReport(study: StudyToReport): StudyOutcome {
  const runs = countedRuns(study.runs, study.readings);
  if (study.kind === 'hands') return reportHands(runs, study.dayNoise);
  return study.kind === 'lots' ? reportLots(runs) : reportDays(runs, study.swabNoise);
}
