import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useSyncExternalStore } from 'react';
import type { ClockView } from '../../api/apiTypes.ts';
import { callApi } from './api.ts';
import { useSaveState } from './saving.ts';

const listeners = new Set<() => void>();
let isRight = false;

/** Somebody has said on this page that the clock is right after all. Lasts as long as the page. */
export const isClockRight = (): boolean => isRight;

export function sayClockIsRight(): void {
  isRight = true;
  for (const listener of listeners) listener();
}

const REREAD_MS = 60_000;
/** Somebody is setting it right meanwhile. */
const REREAD_BEHIND_MS = 5_000;

/** The clock where it stands before the record and nobody has said that it is right; looked at again whenever the page is. */
export function useClockBehind(): ClockView | null {
  const clock = useQuery({
    queryKey: ['clock'],
    queryFn: () => callApi<ClockView>('GET', '/api/clock'),
    refetchInterval: ({ state }) => (state.data?.isBehind ? REREAD_BEHIND_MS : REREAD_MS),
  });
  useWhenSavedEarlier(() => void clock.refetch());
  const isSaidRight = useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, isClockRight);
  return clock.data?.isBehind && !isSaidRight ? clock.data : null;
}

/** What is saved now under an earlier time than what was saved before: the server's clock was set back in between. */
function useWhenSavedEarlier(act: () => void): void {
  const { lastSavedAt } = useSaveState();
  const before = useRef<string | null>(null);
  const latest = useRef(act);
  latest.current = act;
  useEffect(() => {
    const isEarlier = before.current !== null && lastSavedAt !== null && lastSavedAt < before.current;
    before.current = lastSavedAt;
    if (isEarlier) latest.current();
  }, [lastSavedAt]);
}
