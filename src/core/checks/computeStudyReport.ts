import { type BlendedPart, type MeterNoise, noiseOfMeter } from '../reading/blendNoise.ts';
import type { NoiseTable } from '../reading/noiseTable.ts';
import type { Meter } from '../reading/types.ts';
import { buildStudyReport } from './buildStudyReport.ts';
import { type CountedRuns, countedRuns } from './countedRuns.ts';
import { reportPairs } from './reportPairs.ts';
import type { Study, StudyReading } from './study.ts';
import { cannot, type StudyOutcome } from './studyOutcome.ts';

export interface StudySetting {
  /** Of the study, as it stands before the report. */
  readonly meter: Meter;
  readonly table: NoiseTable;
}

/**
 * What a study says from the readings on record: the page shows it while numbers come in, and the server computes the same when it is
 * reported. The other parts of the noise stand in it as the meter has them.
 * @throws never for what a practice can enter
 */
export function computeStudyReport(study: StudyNumbers, readings: readonly StudyReading[], { meter, table }: StudySetting): StudyOutcome {
  const { kind, runs } = study;
  const noise = noiseOfMeter(table, meter);
  const read = readings.map(asRead);
  if (kind === 'hands' || kind === 'lots' || kind === 'paired-days')
    return buildStudyReport({ kind, runs, readings: read, swabNoise: knownOf(noise.repeatability), dayNoise: knownOf(noise.withinPerson) });
  if (kind === 'cutoff') return cannot('A study of the cut-off has no swabs of its own.', 'It is worked out from the readings of people.');
  return reportBoth(study, kind, countedRuns(runs, read), { meter, noise });
}

type StudyNumbers = Pick<Study, 'kind' | 'runs' | 'meterId' | 'lotIds' | 'design'>;

function reportBoth(
  { runs, meterId, lotIds, design }: StudyNumbers,
  kind: 'new-lot' | 'meters',
  counted: CountedRuns,
  { meter, noise }: { readonly meter: Meter; readonly noise: MeterNoise },
): StudyOutcome {
  const newMeterId = runs.find((run) => run.meterId !== undefined && run.meterId !== meterId)?.meterId;
  const [oldId, newId] = kind === 'meters' ? [meterId, newMeterId] : lotIds;
  if (oldId === undefined || newId === undefined || design.wantedRatio === undefined)
    return cannot('This study does not say what is held against what, and how closely.', 'Plan it anew.');
  const { own, variance } = noise.repeatability;
  return reportPairs(counted, {
    kind,
    oldId,
    newId,
    idOf: (run) => (kind === 'meters' ? (run.meterId ?? meterId) : run.lotId),
    cutoffRlu: meter.cutoffRlu,
    withinFraction: design.wantedRatio - 1,
    ...(own && variance !== null && variance > 0 ? { knownSdLog: Math.sqrt(variance) } : {}),
  });
}

/** Both come with every meter, typed or assumed. */
function knownOf({ variance, prior, own }: BlendedPart) {
  return {
    variance: variance ?? prior.variance,
    degreesOfFreedom: prior.degreesOfFreedom + (own?.degreesOfFreedom ?? 0),
    isOwn: own !== null,
  };
}

const asRead = ({ run, rlu, bound, state, operator, lotId }: StudyReading) => ({
  run,
  rlu,
  bound,
  state,
  operator: operator ?? undefined,
  lotId: lotId ?? undefined,
});
