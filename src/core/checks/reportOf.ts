import { noiseOfMeter } from '../reading/blendNoise.ts';
import type { NoiseTable } from '../reading/noiseTable.ts';
import type { Meter } from '../reading/types.ts';
import { buildStudyReport } from './buildStudyReport.ts';
import { type ReportOutcome, reportNewLot } from './reportNewLot.ts';
import type { Study, StudyReading } from './study.ts';
import { cannot } from './studyOutcome.ts';

/** What a study says, beside what its meter's noise is taken for now; or what is missing, in words. */
export function reportOf(study: Study, readings: readonly StudyReading[], meter: Meter, table: NoiseTable): ReportOutcome {
  const { kind, runs } = study;
  if (kind === 'new-lot') return reportNewLot(study, readings);
  if (kind === 'meters' || kind === 'cutoff') return cannot('This edition reports no study of this kind.', 'Its readings stay on record.');
  const { withinPerson, repeatability } = noiseOfMeter(table, meter);
  const dayNoise = { variance: withinPerson.variance ?? withinPerson.prior.variance, isOwn: withinPerson.own !== null };
  const swabNoise = {
    variance: repeatability.variance ?? repeatability.prior.variance,
    degreesOfFreedom: repeatability.prior.degreesOfFreedom + (repeatability.own?.degreesOfFreedom ?? 0),
    isOwn: repeatability.own !== null,
  };
  return buildStudyReport({ kind, runs, readings, dayNoise, swabNoise });
}
