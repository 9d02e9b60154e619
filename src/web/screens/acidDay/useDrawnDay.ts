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

interface Asked {
  /** Null asks nothing. */
  readonly question: DayQuestion | null;
  /** When the hand or the key moved, ms of this page. */
  readonly since: number;
  /** The question has been sent already. */
  readonly isSent?: boolean;
  /** Called with every answer, before the page is drawn. */
  readonly onAnswer?: () => void;
}

/** The picture of a day as it is worked out. */
export function useDrawnDay(slot: DaySlot, { question, since, isSent = false, onAnswer }: Asked): DrawnState {
  const [state, setState] = useState(NOTHING);
  const latest = useRef({ since, isSent, onAnswer });
  latest.current = { since, isSent, onAnswer };
  useLayoutEffect(() => {
    return dayClient().listen(slot, (now) =>
      flushSync(() => {
        latest.current.onAnswer?.();
        setState((before) => {
          if (now.state === 'drawn') return { picture: now, problem: null };
          return { ...before, problem: now.state === 'problem' ? now.says : null };
        });
      }),
    );
  }, [slot]);
  useLayoutEffect(() => {
    if (!question) setState(NOTHING);
    else if (!latest.current.isSent) dayClient().ask(slot, question, latest.current.since);
  }, [slot, question]);
  return state;
}
