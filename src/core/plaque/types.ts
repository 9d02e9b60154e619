import type { SourceRef } from '../visit/answer.ts';

/** What the mouth meets, in physical terms only; what a person ate or did is translated by `core/plaque/day`. */
export type ExposureKind = 'eating' | 'drinking' | 'rinse' | 'chewing' | 'brushing' | 'sleep';

/**
 * One stretch of the day. Two may touch, none may overlap: what is eaten and drunk together is one exposure, and a drink that is sipped is
 * one short exposure for each sip. Where nothing is given, the mouth is awake and at rest.
 *
 * - `eating`, `drinking`, `rinse`: the fluid around the teeth becomes the food, the film on the plaque is renewed (a rinse most), and what
 *   is left is cleared by swallowing from the end of the exposure on. A rinse that is spat out needs nothing else.
 * - `chewing`: gum or anything else without sugar of its own: only the flow changes.
 * - `brushing`: acts as a rinse, and takes away food still held between the teeth. The plaque stays: the model looks at a place that the
 *   brush misses.
 * - `sleep`: flow falls to the sleeping flow.
 *
 * Fluoride is no field: that it slows acid formation is not in the model, a fluoride rinse is a rinse. Starch is no field either.
 */
export interface Exposure {
  readonly kind: ExposureKind;
  /** From the start of the day, 0 up to its end; the day begins wherever the caller says, for example at midnight. */
  readonly startMinute: number;
  /** Above 0; must end within the day. */
  readonly minutes: number;
  /**
   * Fermentable sugar in the fluid around the teeth, mmol of hexose per litre, 0 to 6,000: 10 % (w/v) sucrose is 584, the same of glucose
   * 555. 0 for chewing, brushing, sleep.
   */
  readonly hexoseMmolPerL: number;
  /** 1 to 12. Absent: of the saliva if no acid and no bicarbonate is given, else what these give. */
  readonly pH?: number | undefined;
  /**
   * Base needed to bring the food to the reference state of the model (about pH 7), mmol per litre, 0 to 500. Carried as acetic acid is
   * (pK 4.6, near the middle one of citric acid). Absent with a pH below 7: the food is taken as unbuffered, which is the least it can do.
   */
  readonly titratableMmolPerL?: number | undefined;
  /** 0 to 1,000. Absent: none beside that of the saliva. Not together with titratable acid. */
  readonly bicarbonateMmolPerL?: number | undefined;
  /** 0 to 1,000. Absent: that of saliva. */
  readonly ureaMmolPerL?: number | undefined;
  /**
   * Food that stays between the teeth after the exposure and gives off sugar: at the end it holds `share` (0 to 1) of what the saliva in
   * the mouth holds during the exposure, and half of it is released in every half-time (0.5 to 240 minutes). Absent: none stays.
   */
  readonly retained?: { readonly share: number; readonly halfTimeMinutes: number } | undefined;
  /** Flow while it lasts, 0.01 to 10; what the taste of the sugar drives comes instead where it is more. Absent: from the taste alone. */
  readonly flowMlPerMin?: number | undefined;
}

/** Saliva of one person. */
export interface Saliva {
  /** Unstimulated whole saliva, 0.01 to 5. Below 0.1 is hyposalivation. */
  readonly restingFlowMlPerMin: number;
  /** 0.001 to 5. */
  readonly sleepFlowMlPerMin: number;
  /** The most that taste can drive it to, 0.01 to 10. */
  readonly highestFlowMlPerMin: number;
  /** Left in the mouth after a swallow, 0.05 to 5. */
  readonly residualVolumeMl: number;
  /** At which one swallows, above the residual volume, up to 10. */
  readonly swallowVolumeMl: number;
}

/** Plaque on one site. */
export interface Plaque {
  /** 0.02 to 2. */
  readonly thicknessMm: number;
  /** Speed of the salivary film over this site at a flow of 0.32 mL/min, 0.1 to 20. Follows the flow, so that sleep and a dry mouth slow it. */
  readonly filmVelocityMmPerMin: number;
  /** Fastest uptake of sugar, mmol of hexose per litre of plaque and second, 0 to 2. */
  readonly uptakeMmolPerLPerS: number;
  /** Share of the activity that belongs to bacteria which go on making acid in acid, 0 to 1. */
  readonly aciduricShare: number;
}

/** Saliva and plaque together, as a preset names them. */
export interface Mouth {
  readonly saliva: Saliva;
  readonly plaque: Plaque;
}

/** Presets are named by what they are; none is a diagnosis. */
export type MouthPreset = 'average' | 'lowAcid' | 'highAcid' | 'approximal' | 'thin' | 'dryMouth' | 'upperFront';

/** One number of the model with where it comes from. `low` and `high`: within which a tuned number is varied for a band. */
export interface SourcedNumber {
  readonly value: number;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
  readonly source: SourceRef;
}

/**
 * The numbers of the model that are the same for everybody, as plain values (`content/plaque/constants.ts` holds them with unit and
 * source). Diffusion is in 1e-10 m2/s, rates in mmol per litre of plaque and second, concentrations in mmol/L.
 */
export type PlaqueConstants = Readonly<Record<PlaqueConstant, number>>;

export type PlaqueConstant =
  | 'plaqueDiffusionSugar'
  | 'plaqueDiffusionLactate'
  | 'plaqueDiffusionAcetate'
  | 'plaqueDiffusionPhosphate'
  | 'plaqueDiffusionCarbonate'
  | 'plaqueDiffusionUrea'
  | 'plaqueDiffusionAmmonia'
  | 'plaqueDiffusionProton'
  | 'filmDiffusionSugar'
  | 'filmDiffusionLactate'
  | 'filmDiffusionAcetate'
  | 'filmDiffusionPhosphate'
  | 'filmDiffusionCarbonate'
  | 'filmDiffusionUrea'
  | 'filmDiffusionAmmonia'
  | 'filmDiffusionProton'
  | 'filmThicknessMm'
  | 'filmLengthMm'
  | 'filmVelocityFlowMlPerMin'
  | 'filmVelocityLeastFactor'
  | 'filmVelocityMostFactor'
  | 'rinseExchangePerS'
  | 'eatingExchangePerS'
  | 'mixingTimeS'
  | 'lacticPk'
  | 'aceticPk'
  | 'phosphatePk'
  | 'carbonicPk'
  | 'bicarbonatePk'
  | 'ammoniumPk'
  | 'waterPk'
  | 'fixedBuffer1MmolPerL'
  | 'fixedBuffer2MmolPerL'
  | 'fixedBuffer3MmolPerL'
  | 'fixedBuffer4MmolPerL'
  | 'fixedBuffer1Pk'
  | 'fixedBuffer2Pk'
  | 'fixedBuffer3Pk'
  | 'fixedBuffer4Pk'
  | 'uptakeHalfMmolPerL'
  | 'sensitiveHalfPh'
  | 'aciduricHalfPh'
  | 'phSlope'
  | 'lactateYield'
  | 'acetateYield'
  | 'scarceLactateYield'
  | 'scarceAcetateYield'
  | 'carbonateYield'
  | 'storedShare'
  | 'storeUsePerS'
  | 'storeMostMmolPerL'
  | 'basalAcidMmolPerLPerS'
  | 'basalDepthMm'
  | 'ureaseMmolPerLPerS'
  | 'ureaseHalfMmolPerL'
  | 'salivaCarbonDioxideMmolPerL'
  | 'salivaBicarbonateAtRest'
  | 'salivaBicarbonatePerFlow'
  | 'salivaBicarbonateMost'
  | 'salivaPhosphateLowFlow'
  | 'salivaPhosphateHighFlow'
  | 'salivaUreaLowFlow'
  | 'salivaUreaHighFlow'
  | 'salivaLowFlowMlPerMin'
  | 'salivaHighFlowMlPerMin'
  | 'salivaAcetateMmolPerL'
  | 'flowPerHexose';

export interface DayInput extends Mouth {
  readonly constants: PlaqueConstants;
  /** In order of time, none overlapping. */
  readonly exposures: readonly Exposure[];
  /** Length of the day, 1 to 2,880; 1,440 when absent. */
  readonly minutes?: number | undefined;
}

/**
 * How a day begins. `at-rest`: after hours without anything. `usual-day`: after the same day, so that what was eaten late is still there
 * after midnight. A curve: of the day before; this one begins where that ended.
 */
export type DayBegin = 'at-rest' | 'usual-day' | DayCurve;

export interface SimulationOptions {
  /** `at-rest` when absent. */
  readonly begin?: DayBegin | undefined;
  /** Target of the error of one step, pH, 1e-6 to 0.1. 0.01 when absent; 0.02 is enough while something is dragged. */
  readonly tolerancePh?: number | undefined;
  /** Layers of plaque, 4 to 96; 6 when absent. */
  readonly cells?: number | undefined;
  /**
   * An earlier result. What both days have in common from their start is taken from it, and only the rest is computed anew, with the same
   * result to the last bit. A result of another mouth, other cells or a looser tolerance is not used.
   */
  readonly previous?: DayCurve | undefined;
  /**
   * A usual day that differs little from this one: while an event is dragged, the day as the hand had it a moment ago. Only what the
   * difference reaches is computed; from the edge on at which both agree, that day holds. Close to the same day computed alone, not the
   * same to the last bit. Used for a usual day only, and not where mouth, layers or length differ, or where it was computed less closely.
   */
  readonly follow?: DayCurve | undefined;
}

/** Everything that the model remembers at one moment, at an edge of an exposure. */
export interface PlaqueState {
  readonly minute: number;
  readonly values: Float64Array;
  /** Food held between the teeth from here on. */
  readonly held: readonly HeldFood[];
}

/** Sugar that food between the teeth gives off from a moment on. */
export interface HeldFood {
  /** Seconds from the start of the day; below 0 where it was eaten before. */
  readonly fromS: number;
  readonly perS: number;
  /** mmol/L of saliva and second at that moment. */
  readonly mmolPerLPerS: number;
}

/** What one day hands to the next, its moments counted from the end of the day. */
export interface DayEnd {
  readonly values: Float64Array;
  readonly held: readonly HeldFood[];
}

export interface DayCurve {
  /** At the tooth, one value for each minute from 0 to the end of the day: 1,441 for a whole day. */
  readonly ph: Float64Array;
  /** The moments at which the model stood still, minutes, rising, and the pH at the tooth there: for `minutesBelow`. */
  readonly stepMinutes: Float64Array;
  readonly stepPh: Float64Array;
  /** At minute 0 and at the end of every exposure, in order. */
  readonly states: readonly PlaqueState[];
  /** Largest error of the proton balance, share of what was exchanged. */
  readonly protonBalanceError: number;
  /** What it was computed from. */
  readonly input: DayInput;
  readonly tolerancePh: number;
  readonly cells: number;
  /** `after`: a day before it was given. */
  readonly begin: 'at-rest' | 'usual-day' | 'after';
  readonly end: DayEnd;
  /** Of a usual day that was computed alone: the run from rest that it was begun with. */
  readonly firstPass?: DayCurve | undefined;
}
