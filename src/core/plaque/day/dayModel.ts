import type { OralFluidTable } from '../../chemistry/oralFluid.ts';
import type { Totals } from '../../chemistry/types.ts';
import type { SourceRef } from '../../visit/answer.ts';
import type { Mouth, Plaque, PlaqueConstant, PlaqueConstants, Saliva, SourcedNumber } from '../types.ts';
import type { AcidDay, Food } from './types.ts';

/** Numbers by which what a person did becomes what the mouth meets. */
export type EatingNumber =
  | 'hexoseMmolPerG'
  | 'dissolvedMostMmolPerL'
  | 'milkSugarShare'
  | 'chewingFlowMlPerMin'
  | 'gumFlowMlPerMin'
  | 'cheeseFlowMlPerMin'
  | 'sipMl'
  | 'sipMinutes'
  | 'biteG'
  | 'biteMinutes'
  | 'leastGapMinutes'
  | 'lingeringShare'
  | 'lingeringHalfMinutes'
  | 'stickingShare'
  | 'stickingHalfMinutes'
  | 'typedWaterPercentClears'
  | 'typedWaterPercentLingers'
  | 'typedWaterPercentSticks';

export type EatingNumbers = Readonly<Record<EatingNumber, number>>;

/** What plaque fluid holds; its calcium rises while the pH falls. */
export interface PlaqueFluid {
  /** mmol/L, calcium at pH 7 and above. */
  readonly totals: Totals;
  /** mmol/L more calcium for each pH below 7. */
  readonly calciumPerPh: number;
  readonly source: SourceRef;
}

type Factors<T> = Readonly<Record<keyof T, readonly [low: number, high: number]>>;

/** All tables that a day needs, passed in so that an old day can be worked out with the edition that made it. */
export interface DayTables {
  readonly foods: ReadonlyMap<string, Food>;
  readonly constants: Readonly<Record<PlaqueConstant, SourcedNumber>>;
  readonly eating: Readonly<Record<EatingNumber, SourcedNumber>>;
  /** Within what a person's saliva and plaque are varied, as factors. */
  readonly plaqueSpread: Factors<Plaque>;
  readonly salivaSpread: Factors<Saliva>;
  /** For the critical pH of each. */
  readonly fluids: OralFluidTable;
  /** For the two mineral figures, through a whole fall of pH. */
  readonly plaqueFluid: PlaqueFluid;
  /** The day and the mouth of which both mineral indices are 1. */
  readonly reference: { readonly day: AcidDay; readonly mouth: Mouth };
}

/** One set of plain values by which a day is worked out: the usual ones, or a draw of them. */
export interface DayModel {
  readonly mouth: Mouth;
  readonly constants: PlaqueConstants;
  readonly eating: EatingNumbers;
}

/** The values of the tables as they stand, for one mouth. */
export function buildDayModel({ saliva, plaque }: Mouth, { constants, eating }: Pick<DayTables, 'constants' | 'eating'>): DayModel {
  return { mouth: { saliva, plaque }, constants: valuesOf(constants), eating: valuesOf(eating) };
}

function valuesOf<K extends string>(table: Readonly<Record<K, SourcedNumber>>): Readonly<Record<K, number>> {
  const entries = (Object.entries(table) as [K, SourcedNumber][]).map(([key, { value }]) => [key, value] as const);
  return Object.fromEntries(entries) as Record<K, number>;
}
