import type { DayCurve } from '../../../core/plaque/types.ts';
import { type DayQuestion, type DrawnDay, drawDay } from './drawDay.ts';

/** Whose picture it is: each keeps its own last curve, so that a drag computes only what comes after the dragged event. */
export type DaySlot = string;
export interface DayAsk {
  readonly id: number;
  readonly slot: DaySlot;
  readonly question: DayQuestion;
}
export type DayAnswer = { readonly id: number; readonly slot: DaySlot } & ({ readonly drawn: DrawnDay } | { readonly problem: string });

const lastCurves = new Map<DaySlot, DayCurve>();

addEventListener('message', ({ data: { id, slot, question } }: MessageEvent<DayAsk>) => {
  try {
    const { drawn, curve } = drawDay(question, lastCurves.get(slot));
    lastCurves.set(slot, curve);
    postMessage({ id, slot, drawn } satisfies DayAnswer);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    postMessage({ id, slot, problem: error.message } satisfies DayAnswer);
  }
});
