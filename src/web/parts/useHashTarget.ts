import { useEffect } from 'react';

/** Goes to the part of the page that the address names, once the page is there. */
export function useHashTarget(isReady: boolean): void {
  useEffect(() => {
    const target = isReady && location.hash !== '' ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
    target?.scrollIntoView({ block: 'nearest' });
    target?.focus({ preventScroll: true });
  }, [isReady]);
}
