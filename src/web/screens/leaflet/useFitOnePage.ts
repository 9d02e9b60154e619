import { type RefObject, useLayoutEffect, useRef } from 'react';
import type { Leaflet } from '../../../core/leaflet/types.ts';

/** What one page holds between its margins on the shorter of the two papers, Letter, mm. */
const PAGE_MM = 252;
/** The last step has no drawn day. */
const MOST_DENSE = 4;

/** Sets the page closer, step by step, until it is one page: first the spaces, then the type, never below 12 pt but for the last lines. */
export function useFitOnePage(leaflet: Leaflet, isLarge: boolean): RefObject<HTMLElement | null> {
  const sheet = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another leaflet has another height
  useLayoutEffect(() => {
    const tighten = () => {
      const page = sheet.current;
      if (!page) return;
      if (isLarge) {
        delete page.dataset.density;
        return;
      }
      const pxPerMm = page.clientWidth / 210;
      for (let density = 0; density <= MOST_DENSE; density += 1) {
        page.dataset.density = String(density);
        const height = [...page.children].reduce((sum, part) => sum + part.getBoundingClientRect().height, 0);
        const gaps = (page.children.length - 1) * Number.parseFloat(getComputedStyle(page).rowGap);
        if ((height + gaps) / pxPerMm <= PAGE_MM) return;
      }
    };
    tighten();
    // The typeface may come after the words.
    void document.fonts.ready.then(tighten);
  }, [leaflet, isLarge]);
  return sheet;
}
