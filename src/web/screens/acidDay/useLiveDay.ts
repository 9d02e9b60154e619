import { useCallback, useEffect, useRef, useState } from 'react';
import type { DaySlot } from './day.worker.ts';
import { dayClient } from './dayClient.ts';
import type { DayQuestion } from './drawDay.ts';

/** About a frame. */
const LONGEST_WAIT_MS = 16;

/**
 * The day as the hand has it. Its question goes to the worker before anything is drawn; then its mark moves together with its picture, so that
 * the page is drawn once, or alone where the picture takes longer than a frame.
 */
export function useLiveDay(slot: DaySlot) {
  const [live, setLive] = useState<DayQuestion | null>(null);
  const waiting = useRef<DayQuestion | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const show = useCallback(() => {
    clearTimeout(timer.current);
    timer.current = undefined;
    if (waiting.current) setLive(waiting.current);
    waiting.current = null;
  }, []);
  const follow = useCallback(
    (question: DayQuestion, since: number) => {
      dayClient().ask(slot, question, since);
      waiting.current = question;
      timer.current ??= setTimeout(show, LONGEST_WAIT_MS);
    },
    [slot, show],
  );
  const rest = useCallback(() => {
    waiting.current = null;
    clearTimeout(timer.current);
    timer.current = undefined;
    setLive(null);
  }, []);
  useEffect(() => () => clearTimeout(timer.current), []);
  return { live, show, follow, rest };
}
