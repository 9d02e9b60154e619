import { useSyncExternalStore } from 'react';

/** Two columns fit: from here on the side column stands beside the work. The same width is in visit.css. */
const WIDE = '(min-width: 1200px)';

export function useIsWide(): boolean {
  return useSyncExternalStore(
    (listener) => {
      const query = matchMedia(WIDE);
      query.addEventListener('change', listener);
      return () => query.removeEventListener('change', listener);
    },
    () => matchMedia(WIDE).matches,
  );
}
