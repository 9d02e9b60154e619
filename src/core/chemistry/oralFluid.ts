import type { SourceRef } from '../visit/answer.ts';
import type { Component, Totals } from './types.ts';

/** What is taken of one ion of a fluid where it was not measured. */
export interface TypicalIon {
  readonly typical: number;
  /** How far healthy people spread about it. */
  readonly low: number;
  readonly high: number;
  readonly source: SourceRef;
}

/** A fluid of the mouth as it usually is (`content/oralFluids.ts`), mmol/L. */
export interface OralFluid {
  /** In a sentence: "saliva". */
  readonly name: string;
  readonly ions: Readonly<Partial<Record<Component, TypicalIon>>>;
}

/** A pH that is quoted without asking for anybody's saliva. */
export interface QuotedPh {
  readonly pH: number;
  readonly source: SourceRef;
}

export interface OralFluidTable {
  readonly saliva: OralFluid;
  readonly plaqueFluid: OralFluid;
  readonly commonPractice: QuotedPh;
}

/** Measured amounts, mmol/L; absent = not measured. */
export type MeasuredIons = Totals;
