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

let newest = 0;

addEventListener('message', ({ data: { id, question } }: MessageEvent<StudyAsk>) => {
  newest = id;
  if (question) void answer(id, question);
});

/** Looks for a newer question between the steps: what was asked before it is given up. */
async function answer(id: number, question: StudyQuestion): Promise<void> {
  try {
    const steps = studyDay(question);
    for (let step = steps.next(); !step.done; step = steps.next()) {
      if (Object.keys(step.value).length > 0) postMessage({ id, part: step.value, isLast: false } satisfies StudyAnswer);
      await new Promise((resolve) => setTimeout(resolve));
      if (id !== newest) return;
    }
    postMessage({ id, part: {}, isLast: true } satisfies StudyAnswer);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    postMessage({ id, problem: error.message } satisfies StudyAnswer);
  }
}
