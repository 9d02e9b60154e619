import { shapeOfAmount } from './stripLayout.ts';
import type { DayStep, Leaflet } from './types.ts';

/** What is done at one time of the day, in the order of the day. */
export interface StepRow {
  /** Two rows may have one label: between meals there is more than one time. */
  readonly id: string;
  readonly label: string;
  /** An amount is drawn where it stands first; after that, and where it has no true size, its words are enough. */
  readonly steps: readonly { readonly step: DayStep; readonly isDrawn: boolean }[];
}

/** Steps that follow each other at one time stand in one row. */
export function listStepRows({ day, slots }: Pick<Leaflet, 'day' | 'slots'>): readonly StepRow[] {
  const rows: { id: string; label: string; steps: StepRow['steps'][number][] }[] = [];
  const drawn = new Set<string>();
  for (const step of day) {
    const label = step.time ?? slots[step.when];
    const amount = step.amount?.text;
    const isDrawn = amount !== undefined && !drawn.has(amount) && step.amount !== undefined && shapeOfAmount(step.amount) !== undefined;
    if (isDrawn) drawn.add(amount);
    const last = rows.at(-1);
    if (last?.label === label) last.steps.push({ step, isDrawn });
    else rows.push({ id: `${rows.length} ${label}`, label, steps: [{ step, isDrawn }] });
  }
  return rows;
}
