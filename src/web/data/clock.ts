import { useQuery } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import type { ClockView } from '../../api/apiTypes.ts';
import { callApi } from './api.ts';

const listeners = new Set<() => void>();
let isRight = false;

/** Somebody has said on this page that the clock is right after all. Lasts as long as the page. */
export const isClockRight = (): boolean => isRight;

export function sayClockIsRight(): void {
  isRight = true;
  for (const listener of listeners) listener();
}

/** The clock where it stands before the record and nobody has said that it is right; looked at again whenever the page is. */
export function useClockBehind(): ClockView | null {
  const clock = useQuery({ queryKey: ['clock'], queryFn: () => callApi<ClockView>('GET', '/api/clock'), refetchInterval: 60_000 });
  const isSaidRight = useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, isClockRight);
  return clock.data?.isBehind && !isSaidRight ? clock.data : null;
}
