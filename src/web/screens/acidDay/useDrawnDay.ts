import { useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { DaySlot } from './day.worker.ts';
import { type DayState, dayClient } from './dayClient.ts';
import type { DayQuestion } from './drawDay.ts';

export interface DrawnState {
  /** The newest picture there is: it stays until the next one, also while a question has no answer. */
  readonly picture: Extract<DayState, { state: 'drawn' }> | null;
  readonly problem: string | null;
}

const NOTHING: DrawnState = { picture: null, problem: null };

/** The picture of a day as it is worked out. Null asks nothing. @param since  when the hand or the key moved, ms of this page */
export function useDrawnDay(slot: DaySlot, question: DayQuestion | null, since: number): DrawnState {
  const [state, setState] = useState(NOTHING);
  const moved = useRef(since);
  moved.current = since;
  useLayoutEffect(() => {
    return dayClient().listen(slot, (now) =>
      flushSync(() =>
        setState((before) => {
          if (now.state === 'drawn') return { picture: now, problem: null };
          return { ...before, problem: now.state === 'problem' ? now.says : null };
        }),
      ),
    );
  }, [slot]);
  // Before the page is painted: the worker begins while the mark moves, not after.
  useLayoutEffect(() => {
    if (question) dayClient().ask(slot, question, moved.current);
    else setState(NOTHING);
  }, [slot, question]);
  return state;
}
