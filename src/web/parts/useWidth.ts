import { type RefObject, useLayoutEffect, useState } from 'react';

/** The width of what the ref points to, px, as it is laid out now. */
export function useWidth(place: RefObject<HTMLElement | null>, before = 900): number {
  const [width, setWidth] = useState(before);
  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    setWidth(element.clientWidth || before);
    const watch = new ResizeObserver(([entry]) => {
      const now = Math.round(entry?.contentRect.width ?? 0);
      if (now > 0) setWidth(now);
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, [place, before]);
  return width;
}
