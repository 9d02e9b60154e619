import { type RefObject, useLayoutEffect, useRef } from 'react';
import type { Leaflet } from '../../../core/leaflet/types.ts';

/** What one page holds between its margins on the shorter of the two papers, Letter, mm. */
const PAGE_MM = 252;
const PAPER_MM = 210;
/** What no page break goes through, in the order of the page. */
const WHOLE_PARTS = 'header, .goals > div, h2, .sheet-row, .step, li, .ending-row, p.sheet-small, .sheet-foot';
/** Steps of the style sheet, and the one taken where none is enough. Three pages of large print lose nothing: then they may have air, and the drawings. */
const ORDINARY = { steps: 5, otherwise: 4 };
const LARGE = { steps: 6, otherwise: 0 };

/**
 * Sets the sheet closer, step by step, until it is one page: first the spaces, then the type, never below 12 pt but for the last lines,
 * last the drawn day. Large print is set closer until it is two pages, and its type stays.
 */
export function useFitPages(leaflet: Leaflet, isLarge: boolean): RefObject<HTMLElement | null> {
  const sheet = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another leaflet has another height
  useLayoutEffect(() => {
    const tighten = () => {
      if (sheet.current) fitPages(sheet.current, isLarge);
    };
    tighten();
    // The typeface may come after the words.
    void document.fonts.ready.then(tighten);
  }, [leaflet, isLarge]);
  return sheet;
}

function fitPages(sheet: HTMLElement, isLarge: boolean): void {
  const { steps, otherwise } = isLarge ? LARGE : ORDINARY;
  const pagePx = (sheet.clientWidth / PAPER_MM) * PAGE_MM;
  for (let density = 0; density < steps; density += 1) {
    sheet.dataset.density = String(density);
    if (isLarge ? countPages(sheet, pagePx) <= 2 : heightPx(sheet) <= pagePx) return;
  }
  sheet.dataset.density = String(otherwise);
}

/** Without the empty room that keeps the last lines at the bottom of the page. */
function heightPx(sheet: HTMLElement): number {
  const heights = [...sheet.children].reduce((sum, part) => sum + part.getBoundingClientRect().height, 0);
  return heights + (sheet.children.length - 1) * Number.parseFloat(getComputedStyle(sheet).rowGap);
}

function countPages(sheet: HTMLElement, pagePx: number): number {
  let pages = 0;
  let end = Number.NEGATIVE_INFINITY;
  for (const part of sheet.querySelectorAll(WHOLE_PARTS)) {
    const { top, bottom, height } = part.getBoundingClientRect();
    if (height === 0 || bottom <= end) continue;
    pages += 1;
    end = top + pagePx;
  }
  return pages;
}
