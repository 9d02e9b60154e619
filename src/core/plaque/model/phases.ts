import { type FlowDrive, salivaFlow } from '../clearance/flow.ts';
import type { Exposure, ExposureKind, HeldFood } from '../types.ts';
import type { PlaqueModel } from './buildModel.ts';
import { buildFood, type Food } from './food.ts';

/** A stretch of the day in which nothing begins or ends. */
export interface Phase {
  readonly startS: number;
  readonly endS: number;
  readonly drive: FlowDrive;
  /** Least exchange of the film with saliva, 1/s. */
  readonly exchangePerS: number;
  /** What the fluid around the teeth becomes, or undefined where it is cleared by swallowing. */
  readonly food: Food | undefined;
  readonly releases: readonly HeldFood[];
  /** Where an exposure ends with this phase, the food held from then on: the state there is kept. */
  readonly heldAfter: readonly HeldFood[] | undefined;
}

const RENEWS: Readonly<Record<ExposureKind, 'rinse' | 'eating' | undefined>> = {
  eating: 'eating',
  drinking: 'eating',
  rinse: 'rinse',
  brushing: 'rinse',
  chewing: undefined,
  sleep: undefined,
};

/**
 * The day cut at every start and end of an exposure.
 * @param carried  food held between the teeth since before minute 0
 */
export function listPhases(
  model: PlaqueModel,
  exposures: readonly Exposure[],
  minutes: number,
  carried: readonly HeldFood[] = [],
): readonly Phase[] {
  const phases: Phase[] = [];
  let releases = carried;
  let freeFromS = 0;
  for (const exposure of exposures) {
    const startS = exposure.startMinute * 60;
    const endS = (exposure.startMinute + exposure.minutes) * 60;
    if (startS > freeFromS) phases.push(restPhase(model, freeFromS, startS, releases));
    if (exposure.kind === 'brushing') releases = [];
    phases.push(exposurePhase(model, exposure, { startS, endS, releases }));
    releases = phases.at(-1)?.heldAfter ?? [];
    freeFromS = endS;
  }
  if (minutes * 60 > freeFromS) phases.push(restPhase(model, freeFromS, minutes * 60, releases));
  return phases;
}

/** Food that is held when the last phase ends. */
export function heldAtEnd(phases: readonly Phase[]): readonly HeldFood[] {
  const last = phases.at(-1);
  return last?.heldAfter ?? last?.releases ?? [];
}

/** Awake, nothing in the mouth but what is left of before. */
export function restPhase(model: PlaqueModel, startS: number, endS: number, releases: readonly HeldFood[]): Phase {
  const drive = driveOf(model, model.mouth.saliva.restingFlowMlPerMin, 0);
  return { startS, endS, drive, exchangePerS: 0, food: undefined, releases, heldAfter: undefined };
}

type Stretch = Pick<Phase, 'startS' | 'endS' | 'releases'>;

export function exposurePhase(model: PlaqueModel, exposure: Exposure, stretch: Stretch): Phase {
  const { saliva } = model.mouth;
  const { rinseExchangePerS, eatingExchangePerS } = model.constants;
  const untasted = exposure.kind === 'sleep' ? saliva.sleepFlowMlPerMin : saliva.restingFlowMlPerMin;
  const renews = RENEWS[exposure.kind];
  return {
    ...stretch,
    drive: driveOf(model, untasted, exposure.flowMlPerMin ?? 0),
    exchangePerS: renews === 'rinse' ? rinseExchangePerS : renews === 'eating' ? eatingExchangePerS : 0,
    food: renews === undefined ? undefined : buildFood(model, exposure),
    heldAfter: withRelease(stretch.releases, exposure, stretch.endS),
  };
}

function driveOf({ mouth, constants }: PlaqueModel, untastedMlPerMin: number, baseMlPerMin: number): FlowDrive {
  const highestMlPerMin = Math.max(mouth.saliva.highestFlowMlPerMin, untastedMlPerMin);
  return { baseMlPerMin, untastedMlPerMin, perMmolPerL: constants.flowPerHexose, highestMlPerMin };
}

function withRelease(releases: readonly HeldFood[], { retained, hexoseMmolPerL }: Exposure, fromS: number): readonly HeldFood[] {
  if (retained === undefined) return releases;
  const perS = Math.LN2 / (retained.halfTimeMinutes * 60);
  return [...releases, { fromS, perS, mmolPerLPerS: retained.share * hexoseMmolPerL * perS }];
}

/** mmol/L of saliva and second, from all food that is held. */
export function releaseAt(releases: readonly HeldFood[], atS: number): number {
  let sum = 0;
  for (let i = 0; i < releases.length; i += 1) {
    const release = releases[i];
    if (release !== undefined) sum += release.mmolPerLPerS * Math.exp(-release.perS * (atS - release.fromS));
  }
  return sum;
}

/** Speed of the film over the site by the length it passes, 1/s. */
export function filmExchangePerS(model: PlaqueModel, flowMlPerMin: number): number {
  const { filmVelocityFlowMlPerMin, filmVelocityLeastFactor, filmVelocityMostFactor, filmLengthMm } = model.constants;
  const factor = Math.max(filmVelocityLeastFactor, Math.min(filmVelocityMostFactor, flowMlPerMin / filmVelocityFlowMlPerMin));
  return (model.mouth.plaque.filmVelocityMmPerMin * factor) / (60 * filmLengthMm);
}

export const flowAt = (phase: Phase, sugarMmolPerL: number): number => salivaFlow(phase.drive, sugarMmolPerL);
