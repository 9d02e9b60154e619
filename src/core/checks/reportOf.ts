import type { StudyKind } from '../reading/types.ts';
import { type ComputedReport, handsReport } from './handsReport.ts';
import { newLotReport } from './newLotReport.ts';
import type { Study, StudyReading } from './study.ts';

/** How each kind of study is computed from its readings. */
export const STUDY_REPORTS: Readonly<Partial<Record<StudyKind, (study: Study, readings: readonly StudyReading[]) => ComputedReport>>> = {
  hands: handsReport,
  'new-lot': newLotReport,
};

/** @throws RangeError saying what is missing, also for a kind whose report this edition does not compute */
export function reportOf(study: Study, readings: readonly StudyReading[]): ComputedReport {
  const compute = STUDY_REPORTS[study.kind];
  if (!compute) throw new RangeError(`this edition computes no report of a study of kind ${study.kind}`);
  return compute(study, readings);
}
