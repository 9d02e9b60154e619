import type { SourceRef } from '../visit/answer.ts';
import type { NoisePart } from './types.ts';

/** What is taken of one part of the noise before a practice has measured it (`content/readingNoise.ts`). */
export interface NoisePrior {
  readonly part: NoisePart;
  /** In a sentence: "repeatability", "hands". */
  readonly name: string;
  /** When nothing of it is known here: "between hands". */
  readonly between: string;
  /**
   * Coefficient of variation, fraction: what a first study of the practice is blended with. Before that this part is left out by name.
   * null = the figure typed for the meter, which counts from the first day.
   */
  readonly cv: number | null;
  /** What the assumed figure counts beside studies, as if it came from a study of so many degrees of freedom. */
  readonly degreesOfFreedom: number;
  readonly source: SourceRef;
}

export interface NoiseTable {
  readonly parts: Readonly<Record<NoisePart, NoisePrior>>;
  /** What a figure counts that was typed as measured, without its study. */
  readonly typed: { readonly degreesOfFreedom: number; readonly source: SourceRef };
  /**
   * How the limits of change allow for looking again and again: over so many visits in a row, the chance that noise alone passes a limit
   * at least once.
   */
  readonly looks: { readonly visits: number; readonly chance: number; readonly source: SourceRef };
}
