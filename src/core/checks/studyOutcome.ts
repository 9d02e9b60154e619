import { cvOfLogVariance, sayPercent } from '../reading/sayNoise.ts';
import type { NoisePart } from '../reading/types.ts';
import { type CountedRun, type CountedRuns, type NumberedRun, sayMissing } from './countedRuns.ts';
import { cvOfFigure, type NoiseFigure } from './noiseFigure.ts';

/** One line of the table under the sentence. Coefficients of variation, fractions. */
export interface StudyRow {
  readonly what: string;
  readonly cv: number;
  readonly low: number;
  /** null = so far above 100 % that it says nothing. */
  readonly high: number | null;
  readonly degreesOfFreedom: number;
}

export interface BuiltReport {
  /** In plain words, the first of them the answer. */
  readonly sentences: readonly string[];
  readonly estimates: readonly {
    readonly component: NoisePart;
    readonly variance: number;
    readonly degreesOfFreedom: number;
    readonly readings: number;
  }[];
  /** `leftOut`: runs that were read and take no part. */
  readonly body: { readonly rows: readonly StudyRow[]; readonly counted: number; readonly leftOut: readonly number[] };
}

/** Why nothing can be said yet, in words that say what would make it work. */
export type StudyOutcome =
  | { readonly ok: true; readonly report: BuiltReport }
  | { readonly ok: false; readonly says: string; readonly wouldHelp: string };

export interface Reporting {
  readonly counted: readonly CountedRun[];
  readonly leftOut: readonly CountedRun[];
  readonly sentences: readonly string[];
  readonly figures: readonly { readonly what: string; readonly figure: NoiseFigure; readonly component?: NoisePart }[];
  readonly missing: readonly string[];
}

export function report({ counted, leftOut, sentences, figures, missing }: Reporting): StudyOutcome {
  const rows = figures.map(({ what, figure }) => ({
    what,
    cv: cvOfFigure(figure),
    low: cvOfLogVariance(figure.interval.low),
    high: sayableCv(figure.interval.high),
    degreesOfFreedom: figure.degreesOfFreedom,
  }));
  const estimates = figures.flatMap(({ component, figure: { variance, degreesOfFreedom } }) =>
    component === undefined ? [] : [{ component, variance, degreesOfFreedom, readings: counted.length }],
  );
  const body = { rows, counted: counted.length, leftOut: leftOut.map(({ run }) => run.index) };
  return { ok: true, report: { sentences: [...sentences, ...missing], estimates, body } };
}

/** Whole blocks only: a block with a missing reading leaves with what it has. */
export function withoutHoles({ counted, missing }: CountedRuns, blockOf: (run: NumberedRun) => string) {
  const broken = new Set(missing.map(({ run }) => blockOf(run)));
  const blocks = new Map<string, CountedRun[]>();
  for (const one of counted) blocks.set(blockOf(one.run), [...(blocks.get(blockOf(one.run)) ?? []), one]);
  const whole = [...blocks].filter(([name]) => !broken.has(name)).map(([, block]) => block);
  return { kept: whole, leftOut: [...blocks].filter(([name]) => broken.has(name)).flatMap(([, block]) => block) };
}

export function sayLeftOut(runs: CountedRuns, leftOut: readonly CountedRun[], block: string): string[] {
  if (runs.missing.length === 0) return [];
  const others =
    leftOut.length === 0
      ? ''
      : ` The others of the same ${block}, ${leftOut.length} in all, are left out with ${runs.missing.length === 1 ? 'it' : 'them'}.`;
  return [`${sayMissing(runs)}${others}`];
}

export const cannot = (says: string, wouldHelp: string): StudyOutcome => ({ ok: false, says, wouldHelp });

export const tooFew = (runs: CountedRuns, what: string, which: string): StudyOutcome =>
  cannot(`Fewer than two ${what} are complete.`, `Needed are at least two ${what} ${which}. ${sayMissing(runs)}`.trim());

export const ALL_ALIKE = cannot(
  'All repeats gave the same number, so there is no noise to measure.',
  'Enter the numbers with all their digits, or measure something nearer to real readings.',
);

export const isConstant = (values: readonly number[]): boolean => values.every((value) => value === values[0]);

/** No solution was read twice with two different numbers by one hand. */
export function isFlat(counted: readonly CountedRun[]): boolean {
  const cells = new Map<string, number[]>();
  for (const { run, ln } of counted) {
    const key = JSON.stringify([run.part, run.operator, run.lotId]);
    cells.set(key, [...(cells.get(key) ?? []), ln]);
  }
  return [...cells.values()].every(isConstant);
}

export const percentOf = (figure: NoiseFigure): string => sayPercent(cvOfFigure(figure));

/** Beyond ten times the value a spread says only that nothing is known. */
const MOST_CV = 10;

function sayableCv(variance: number): number | null {
  const cv = cvOfLogVariance(variance);
  return cv > MOST_CV ? null : cv;
}

export function rangeOf({ interval }: NoiseFigure): string {
  const low = Math.round(100 * cvOfLogVariance(interval.low));
  const high = sayableCv(interval.high);
  return high === null ? `${low} % to far above 100 %` : `${low} to ${Math.round(100 * high)} %`;
}
