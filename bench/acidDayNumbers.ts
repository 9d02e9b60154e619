import { buildModel } from '../src/core/plaque/model/buildModel.ts';
import { exposurePhase, listPhases, type Phase, restPhase } from '../src/core/plaque/model/phases.ts';
import type { DayInput } from '../src/core/plaque/types.ts';

const CELLS = 6;
const RELEASES = 8;
const REST_BEFORE_S = 6 * 3600;

/** The numbers of a day for `acidDay.c`, in the order of its structures. */
export function flattenDay(day: DayInput): readonly number[] {
  const model = buildModel(day, day.constants, CELLS);
  const { acidity: a, constants: c } = model;
  const { saliva, plaque } = day;
  const [first] = day.exposures;
  const stretch = { startS: -REST_BEFORE_S, endS: 0, releases: [] };
  const asleep = first !== undefined && first.kind === 'sleep' && first.startMinute === 0;
  const before = asleep ? exposurePhase(model, first, stretch) : restPhase(model, -REST_BEFORE_S, 0, []);
  const phases = [before, ...listPhases(model, day.exposures, 1440)];
  return [
    [model.layerM, model.filmM, ...model.inner, ...model.surface],
    Array.from(model.basalShare, (share) => share * c.basalAcidMmolPerLPerS),
    [...a.buffer, ...a.bufferConstant],
    [a.lactic, a.acetic, a.phosphate, a.carbonic, a.bicarbonate, a.ammonium, a.water, a.free],
    [model.clearancePerSPerFlow, saliva.highestFlowMlPerMin, plaque.filmVelocityMmPerMin, c.filmVelocityFlowMlPerMin],
    [c.filmVelocityLeastFactor, c.filmVelocityMostFactor, c.filmLengthMm, c.mixingTimeS, c.flowPerHexose],
    [plaque.uptakeMmolPerLPerS, plaque.aciduricShare, c.uptakeHalfMmolPerL, c.sensitiveHalfPh, c.aciduricHalfPh, c.phSlope],
    [c.lactateYield, c.acetateYield, c.scarceLactateYield, c.scarceAcetateYield, c.carbonateYield],
    [c.storedShare, c.storeUsePerS, c.storeMostMmolPerL, c.ureaseMmolPerLPerS, c.ureaseHalfMmolPerL],
    [c.salivaCarbonDioxideMmolPerL, c.salivaBicarbonateAtRest, c.salivaBicarbonatePerFlow, c.salivaBicarbonateMost],
    [c.salivaPhosphateLowFlow, c.salivaPhosphateHighFlow, c.salivaUreaLowFlow, c.salivaUreaHighFlow],
    [c.salivaLowFlowMlPerMin, c.salivaHighFlowMlPerMin, c.salivaAcetateMmolPerL, saliva.restingFlowMlPerMin],
    [phases.length],
    ...phases.map(flattenPhase),
  ].flat();
}

function flattenPhase({ startS, endS, drive, exchangePerS, food, releases }: Phase): readonly number[] {
  const row = (values: readonly number[]) => Array.from({ length: RELEASES }, (_, i) => values[i] ?? 0);
  return [
    [startS, endS, drive.untastedMlPerMin, drive.baseMlPerMin, exchangePerS],
    [food === undefined ? 0 : 1, ...(food ?? new Float64Array(6)), releases.length],
    row(releases.map(({ fromS }) => fromS)),
    row(releases.map(({ perS }) => perS)),
    row(releases.map(({ mmolPerLPerS }) => mmolPerLPerS)),
  ].flat();
}
