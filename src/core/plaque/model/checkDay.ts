import type { DayBegin, DayInput, Exposure, Plaque, PlaqueConstants, Saliva } from '../types.ts';

type Range = readonly [low: number, high: number];

const SALIVA_RANGES: Readonly<Record<keyof Saliva, Range>> = {
  restingFlowMlPerMin: [0.01, 5],
  sleepFlowMlPerMin: [0.001, 5],
  highestFlowMlPerMin: [0.01, 10],
  residualVolumeMl: [0.05, 5],
  swallowVolumeMl: [0.05, 10],
};

const PLAQUE_RANGES: Readonly<Record<keyof Plaque, Range>> = {
  thicknessMm: [0.02, 2],
  filmVelocityMmPerMin: [0.1, 20],
  uptakeMmolPerLPerS: [0, 2],
  aciduricShare: [0, 1],
};

type ExposureNumber = Exclude<keyof Exposure, 'kind' | 'retained' | 'startMinute' | 'minutes'>;

const EXPOSURE_RANGES: Readonly<Record<ExposureNumber, Range>> = {
  hexoseMmolPerL: [0, 6000],
  pH: [1, 12],
  titratableMmolPerL: [0, 500],
  bicarbonateMmolPerL: [0, 1000],
  ureaMmolPerL: [0, 1000],
  flowMlPerMin: [0.01, 10],
};

const KINDS: readonly string[] = ['eating', 'drinking', 'rinse', 'chewing', 'brushing', 'sleep'];
const CARRIES: readonly string[] = ['eating', 'drinking', 'rinse'];
const LONGEST_DAY = 2880;

/** @throws RangeError naming the field, its value and its range */
export function checkDay(input: DayInput, minutes: number): void {
  requireWithin('minutes', minutes, [1, LONGEST_DAY]);
  for (const [key, range] of Object.entries(SALIVA_RANGES)) requireWithin(`saliva.${key}`, input.saliva[key as keyof Saliva], range);
  const { residualVolumeMl, swallowVolumeMl } = input.saliva;
  if (!(swallowVolumeMl > residualVolumeMl)) {
    throw new RangeError(`saliva.swallowVolumeMl must be above saliva.residualVolumeMl (${residualVolumeMl}): ${swallowVolumeMl}`);
  }
  for (const [key, range] of Object.entries(PLAQUE_RANGES)) requireWithin(`plaque.${key}`, input.plaque[key as keyof Plaque], range);
  for (const [key, value] of Object.entries(input.constants)) checkConstant(key as keyof PlaqueConstants, value);
  let freeFrom = 0;
  input.exposures.forEach((exposure, i) => {
    checkExposure(exposure, `exposures[${i}]`, { freeFrom, minutes });
    freeFrom = exposure.startMinute + exposure.minutes;
  });
}

export function checkOptions(tolerancePh: number, cells: number): void {
  requireWithin('tolerancePh', tolerancePh, [1e-6, 0.1]);
  requireWithin('cells', cells, [4, 96]);
  if (!Number.isInteger(cells)) throw new RangeError(`cells must be a whole number: ${cells}`);
}

export function checkBegin(begin: DayBegin, cells: number): void {
  if (typeof begin !== 'object' || begin.cells === cells) return;
  throw new RangeError(`begin must be a day with ${cells} layers of plaque: ${begin.cells}`);
}

/** Constants that the equations divide by, or take the logarithm of. */
const ABOVE_ZERO =
  /Diffusion|Half|Thickness|Length|VelocityFlow|mixingTime|storeMost|CarbonDioxide|BicarbonateAtRest|BicarbonateMost|HighFlowMl|Pk$/;

function checkConstant(name: keyof PlaqueConstants, value: number): void {
  const isAboveZero = ABOVE_ZERO.test(name);
  if (value < Number.POSITIVE_INFINITY && (isAboveZero ? value > 0 : value >= 0)) return;
  throw new RangeError(`constants.${name} must be ${isAboveZero ? 'above 0' : '0 or above'}: ${value}`);
}

function checkExposure(exposure: Exposure, at: string, day: { readonly freeFrom: number; readonly minutes: number }): void {
  if (!KINDS.includes(exposure.kind)) throw new RangeError(`${at}.kind must be one of ${KINDS.join(', ')}: ${exposure.kind}`);
  const { startMinute, minutes } = exposure;
  if (!(startMinute >= 0 && startMinute < day.minutes)) {
    throw new RangeError(`${at}.startMinute must be 0 up to, not including, ${day.minutes}: ${startMinute}`);
  }
  if (startMinute < day.freeFrom) {
    throw new RangeError(`${at}.startMinute must not be before ${day.freeFrom}, where the one before ends: ${startMinute}`);
  }
  if (!(minutes >= 0.05 && startMinute + minutes <= day.minutes)) {
    throw new RangeError(`${at}.minutes must be at least 0.05 and end by minute ${day.minutes}: ${minutes}`);
  }
  for (const [key, range] of Object.entries(EXPOSURE_RANGES)) {
    const value = exposure[key as ExposureNumber];
    if (value !== undefined) requireWithin(`${at}.${key}`, value, range);
  }
  if (exposure.hexoseMmolPerL === undefined) throw new RangeError(`${at}.hexoseMmolPerL must be given, 0 for none`);
  checkRetained(exposure, at);
  checkFluid(exposure, at);
}

function checkRetained({ retained, kind }: Exposure, at: string): void {
  if (retained === undefined) return;
  if (kind !== 'eating' && kind !== 'drinking') throw new RangeError(`${at}.retained is for eating and drinking, not for ${kind}`);
  requireWithin(`${at}.retained.share`, retained.share, [0, 1]);
  requireWithin(`${at}.retained.halfTimeMinutes`, retained.halfTimeMinutes, [0.5, 240]);
}

function checkFluid(exposure: Exposure, at: string): void {
  const { kind, pH, titratableMmolPerL: acid, bicarbonateMmolPerL: alkali, ureaMmolPerL, hexoseMmolPerL } = exposure;
  const carries = hexoseMmolPerL > 0 || [pH, acid, alkali, ureaMmolPerL].some((value) => value !== undefined);
  if (carries && !CARRIES.includes(kind)) {
    throw new RangeError(`${at}: only ${CARRIES.join(', ')} bring sugar, acid, bicarbonate or urea, not ${kind}`);
  }
  if (acid !== undefined && alkali !== undefined) {
    throw new RangeError(`${at}: titratableMmolPerL and bicarbonateMmolPerL exclude each other`);
  }
  if (acid !== undefined && pH !== undefined) {
    if (!(pH <= 7)) throw new RangeError(`${at}.pH must be 1 to 7 with titratable acid: ${pH}`);
    const free = 1320 * 10 ** -pH;
    if (!(acid >= free)) throw new RangeError(`${at}.titratableMmolPerL must be at least ${free.toPrecision(3)} at pH ${pH}: ${acid}`);
  }
  if (alkali !== undefined && pH !== undefined) requireWithin(`${at}.pH with bicarbonate`, pH, [6, 11]);
}

function requireWithin(name: string, value: number, [low, high]: Range): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}: ${value}`);
}
