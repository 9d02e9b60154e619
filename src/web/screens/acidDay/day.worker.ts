import { type DayQuestion, type DrawnDay, drawDay, type KnownCurves } from './drawDay.ts';

/** Whose picture it is: each keeps its own last curves, so that a drag computes only what the dragged event reaches. */
export type DaySlot = string;
export interface DayAsk {
  readonly id: number;
  readonly slot: DaySlot;
  readonly question: DayQuestion;
}
export type DayAnswer = { readonly id: number; readonly slot: DaySlot } & ({ readonly drawn: DrawnDay } | { readonly problem: string });

const curves = new Map<DaySlot, KnownCurves>();

addEventListener('message', ({ data: { id, slot, question } }: MessageEvent<DayAsk>) => {
  try {
    const known = curves.get(slot);
    const { drawn, curve } = drawDay(question, known);
    curves.set(slot, { exact: question.isLive ? known?.exact : curve, last: curve });
    postMessage({ id, slot, drawn } satisfies DayAnswer);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    postMessage({ id, slot, problem: error.message } satisfies DayAnswer);
  }
});
