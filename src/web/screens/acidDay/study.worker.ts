import { type DayStudy, type StudyQuestion, studyDay } from './studyDay.ts';

export interface StudyAsk {
  readonly id: number;
  /** Null: what was asked is given up, for now. */
  readonly question: StudyQuestion | null;
}
export type StudyAnswer = { readonly id: number } & (
  | { readonly part: Partial<DayStudy>; readonly isLast: boolean }
  | { readonly problem: string }
);

/** How long a newer question may wait. A timer costs four milliseconds, so it is not set after every step. */
const TURN_MS = 20;

let newest = 0;

addEventListener('message', ({ data: { id, question } }: MessageEvent<StudyAsk>) => {
  newest = id;
  if (question) void answer(id, question);
});

/** Looks for a newer question between the steps: what was asked before it is given up. */
async function answer(id: number, question: StudyQuestion): Promise<void> {
  try {
    const steps = studyDay(question);
    let since = performance.now();
    for (let step = steps.next(); !step.done; step = steps.next()) {
      if (Object.keys(step.value).length > 0) postMessage({ id, part: step.value, isLast: false } satisfies StudyAnswer);
      if (performance.now() - since < TURN_MS) continue;
      await new Promise((resolve) => setTimeout(resolve));
      if (id !== newest) return;
      since = performance.now();
    }
    postMessage({ id, part: {}, isLast: true } satisfies StudyAnswer);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    postMessage({ id, problem: error.message } satisfies StudyAnswer);
  }
}
