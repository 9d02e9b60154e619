import { useEffect, useRef, useState } from 'react';
import type { StudyAnswer, StudyAsk } from './study.worker.ts';
import type { DayStudy, StudyQuestion } from './studyDay.ts';

export interface StudyState {
  /** What is there so far of the newest question; null before it. */
  readonly study: Partial<DayStudy>;
  /** Of which question it is. */
  readonly of: StudyQuestion | null;
  readonly isDone: boolean;
  readonly problem: string | null;
}

const NOTHING: StudyState = { study: {}, of: null, isDone: false, problem: null };

/**
 * The band, what each event costs and what a change gains, worked out beside the page. A new question gives up the one before.
 * @param isPaused  while something is dragged the computer is left to the drag
 */
export function useDayStudy(question: StudyQuestion | null, isPaused: boolean): StudyState {
  const [state, setState] = useState(NOTHING);
  const worker = useRef<Worker | null>(null);
  const asked = useRef(0);
  const isDone = state.isDone && state.of === question;
  const found = useRef(NOTHING);
  if (state.study.together) found.current = state;
  useEffect(() => {
    return () => {
      worker.current?.terminate();
      worker.current = null;
    };
  }, []);
  useEffect(() => {
    if (isDone) return;
    asked.current += 1;
    const id = asked.current;
    if (isPaused || !question) return worker.current?.postMessage({ id, question: null } satisfies StudyAsk);
    setState((before) => (before.of === question ? before : { ...NOTHING, study: knownFrom(found.current, question) ?? {}, of: question }));
    worker.current ??= new Worker(new URL('./study.worker.ts', import.meta.url), { type: 'module' });
    const end = (part: Partial<StudyState>) => setState((before) => ({ ...before, ...part, isDone: true }));
    worker.current.onmessage = ({ data }: MessageEvent<StudyAnswer>) => {
      if (data.id !== asked.current) return;
      if ('problem' in data) end({ problem: data.problem });
      else setState((before) => ({ ...before, study: { ...before.study, ...data.part }, isDone: data.isLast }));
    };
    worker.current.onerror = () => end({ problem: 'It could not be worked out on this computer.' });
    const known = knownFrom(found.current, question);
    worker.current.postMessage({ id, question: { ...question, known } } satisfies StudyAsk);
  }, [question, isPaused, isDone]);
  return state;
}

/** The suggestions for a day as told stay while changes are tried on it. */
function knownFrom({ of, study: { gains, together } }: StudyState, { told, mouth, limits }: StudyQuestion): StudyQuestion['known'] {
  const isSame = of?.told === told && of.mouth === mouth && of.limits === limits;
  return isSame && gains && together ? { gains, together } : undefined;
}
