import { type BlendedPart, type MeterNoise, noiseOfMeter } from '../reading/blendNoise.ts';
import type { NoiseTable } from '../reading/noiseTable.ts';
import type { Meter } from '../reading/types.ts';
import { buildStudyReport } from './buildStudyReport.ts';
import { type CountedRuns, countedRuns } from './countedRuns.ts';
import { reportPairs } from './reportPairs.ts';
import type { Study, StudyReading } from './study.ts';
import { cannot, type StudyOutcome } from './studyOutcome.ts';

/** Up to this a new lot or meter counts as the same where its study says nothing else: our own proposal, well inside what one reading may be off. */
const SAME_WITHIN_FRACTION = 0.2;

/**
 * What a study says from the readings on record: the page shows it while numbers come in, and the server computes the same when it is
 * reported. The other parts of the noise stand in it as the meter has them.
 * @throws never for what a practice can enter
 */
export function reportOf(study: StudyNumbers, readings: readonly StudyReading[], meter: Meter, table: NoiseTable): StudyOutcome {
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
  if (oldId === undefined || newId === undefined)
    return cannot('The study names one only, and nothing to hold it against.', 'Plan it with two: the one in use, then the new one.');
  const { own, variance } = noise.repeatability;
  return reportPairs(counted, {
    kind,
    oldId,
    newId,
    idOf: (run) => (kind === 'meters' ? (run.meterId ?? meterId) : run.lotId),
    cutoffRlu: meter.cutoffRlu,
    withinFraction: design.wantedRatio === undefined ? SAME_WITHIN_FRACTION : design.wantedRatio - 1,
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
