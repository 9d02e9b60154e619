import type { Bound } from '../reading/types.ts';
import type { SheetRun } from './runSheet.ts';

/** A run of the sheet as it is stored. */
export type NumberedRun = SheetRun & { readonly index: number };

/** What was read at one run. */
export interface RunReading {
  readonly run: number;
  readonly rlu: number;
  readonly bound: Bound;
  readonly state: 'valid' | 'void';
  /** Who took it, and with which lot; absent = as the sheet says. */
  readonly operator?: string | undefined;
  readonly lotId?: string | undefined;
}

/** One run with the natural logarithm of its number. */
export interface CountedRun {
  readonly run: NumberedRun;
  readonly ln: number;
}

export interface CountedRuns {
  readonly counted: readonly CountedRun[];
  /** Why each of the others does not count, in the order of the sheet. */
  readonly missing: readonly {
    readonly run: NumberedRun;
    readonly because: 'not-read' | 'void' | 'at-limit' | 'zero' | 'other-hands' | 'other-lot';
  }[];
}

/** The numbers of a study that can be computed with: valid, within the meter's limits and above 0. The newest valid one of a run counts. */
export function countedRuns(runs: readonly NumberedRun[], readings: readonly RunReading[]): CountedRuns {
  const byRun = new Map<number, RunReading>();
  for (const reading of readings) {
    if (reading.state === 'valid' || !byRun.has(reading.run)) byRun.set(reading.run, reading);
  }
  const counted: CountedRun[] = [];
  const missing: CountedRuns['missing'][number][] = [];
  for (const run of runs) {
    const reading = byRun.get(run.index);
    const because = reasonNotCounted(run, reading);
    if (because !== undefined) missing.push({ run, because });
    else if (reading) counted.push({ run, ln: Math.log(reading.rlu) });
  }
  return { counted, missing };
}

/** undefined = it counts. */
export function reasonNotCounted(run: NumberedRun, reading: RunReading | undefined): CountedRuns['missing'][number]['because'] | undefined {
  if (!reading) return 'not-read';
  if (reading.state === 'void') return 'void';
  if (!(reading.rlu > 0)) return 'zero';
  if (reading.bound !== 'exact') return 'at-limit';
  if (isOther(run.operator, reading.operator)) return 'other-hands';
  return isOther(run.lotId, reading.lotId) ? 'other-lot' : undefined;
}

const isOther = (planned: string | undefined, taken: string | undefined) =>
  planned !== undefined && taken !== undefined && planned !== taken;

const BECAUSE: Readonly<Record<CountedRuns['missing'][number]['because'], string>> = {
  'not-read': 'not read yet',
  void: 'not counted',
  'at-limit': "at the meter's limit; only a number within its scale counts",
  zero: 'a number of 0',
  'other-hands': 'taken by other hands than planned',
  'other-lot': 'taken with another lot than planned',
};

/** "Swabs 4 and 9 are missing: not read yet. Swab 12: at the meter's limit." Empty where none is missing. Swabs count from 1. */
export function sayMissing({ missing }: CountedRuns): string {
  return (Object.keys(BECAUSE) as (keyof typeof BECAUSE)[])
    .map((because) => ({ because, numbers: missing.filter((m) => m.because === because).map(({ run }) => run.index + 1) }))
    .filter(({ numbers }) => numbers.length > 0)
    .map(({ because, numbers }) => `${numbers.length === 1 ? 'Swab' : 'Swabs'} ${listOf(numbers)}: ${BECAUSE[because]}.`)
    .join(' ');
}

/** "2", "2 and 5", "2, 4 to 9 and 12". In rising order. */
function listOf(numbers: readonly number[]): string {
  const stretches: number[][] = [];
  for (const number of numbers) {
    const current = stretches.at(-1);
    if (current?.at(-1) === number - 1) current.push(number);
    else stretches.push([number]);
  }
  const words = stretches.flatMap((stretch) => (stretch.length > 2 ? [`${stretch[0]} to ${stretch.at(-1)}`] : stretch.map(String)));
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
