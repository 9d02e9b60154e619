import { type RefObject, useLayoutEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** Between the margins of a page of A4, CSS px: a picture drawn for it keeps its words readable on paper. */
const PAPER_PX = 680;

/** The width of what the ref points to, px, as it is laid out now; of paper while the page prints. */
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
    const print = matchMedia('print');
    const onPrint = () => flushSync(() => setWidth(print.matches ? PAPER_PX : element.clientWidth || before));
    print.addEventListener('change', onPrint);
    return () => {
      watch.disconnect();
      print.removeEventListener('change', onPrint);
    };
  }, [place, before]);
  return width;
}
