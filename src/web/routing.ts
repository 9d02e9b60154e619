import { useSyncExternalStore } from 'react';

export type Route =
  /** `onDate` null = today. */
  | { readonly screen: 'today'; readonly onDate: string | null }
  | { readonly screen: 'fill-day'; readonly onDate: string }
  | { readonly screen: 'day-sheets'; readonly onDate: string }
  | { readonly screen: 'people' }
  | { readonly screen: 'person'; readonly patientId: string }
  | { readonly screen: 'visit'; readonly visitId: string }
  | { readonly screen: 'swab'; readonly visitId: string }
  | { readonly screen: 'leaflet'; readonly visitId: string }
  | { readonly screen: 'acid-day'; readonly visitId: string }
  /** `visitId` null = of nobody. */
  | { readonly screen: 'fluids'; readonly visitId: string | null }
  | { readonly screen: 'diary'; readonly visitId: string }
  | { readonly screen: 'prescriptions'; readonly visitId: string }
  | { readonly screen: 'over-time'; readonly patientId: string | null }
  | { readonly screen: 'checks' }
  | { readonly screen: 'shelf' }
  /** `itemId` null = a new item. */
  | { readonly screen: 'shelf-item'; readonly itemId: string | null }
  /** Lots of one item, and what came and went. */
  | { readonly screen: 'stock'; readonly itemId: string }
  | { readonly screen: 'reorder' }
  | { readonly screen: 'shelf-table' }
  | { readonly screen: 'studies' }
  | { readonly screen: 'study-plan' }
  | { readonly screen: 'cutoff-study' }
  | { readonly screen: 'study'; readonly studyId: string }
  | { readonly screen: 'study-sheet'; readonly studyId: string }
  | { readonly screen: 'practice' }
  | { readonly screen: 'rules' }
  | { readonly screen: 'unknown' };

export function parsePath(path: string): Route {
  const [first, id, last, ...rest] = path.split('/').filter(Boolean);
  if (first === 'checks' && id === 'studies') return studyRoute(last, rest);
  if (rest.length > 0) return { screen: 'unknown' };
  if (first === undefined) return { screen: 'today', onDate: null };
  if (first === 'day' && id && ISO_DATE.test(id)) return dayRoute(id, last);
  if (first === 'people' && id === undefined) return { screen: 'people' };
  if (first === 'people' && id && last === undefined) return { screen: 'person', patientId: id };
  if (first === 'visits' && id && last === undefined) return { screen: 'visit', visitId: id };
  if (first === 'visits' && id && last === 'swab') return { screen: 'swab', visitId: id };
  if (first === 'visits' && id && last === 'leaflet') return { screen: 'leaflet', visitId: id };
  if (first === 'visits' && id && last === 'day') return { screen: 'acid-day', visitId: id };
  if (first === 'visits' && id && last === 'fluids') return { screen: 'fluids', visitId: id };
  if (first === 'visits' && id && last === 'diary') return { screen: 'diary', visitId: id };
  if (first === 'visits' && id && last === 'prescriptions') return { screen: 'prescriptions', visitId: id };
  if (first === 'over-time' && last === undefined) return { screen: 'over-time', patientId: id ?? null };
  if (first === 'checks' && id === undefined) return { screen: 'checks' };
  if (first === 'shelf' && id === undefined) return { screen: 'shelf' };
  if (first === 'shelf' && id === 'new' && last === undefined) return { screen: 'shelf-item', itemId: null };
  if (first === 'shelf' && id === 'reorder' && last === undefined) return { screen: 'reorder' };
  if (first === 'shelf' && id === 'table' && last === undefined) return { screen: 'shelf-table' };
  if (first === 'shelf' && id && last === 'stock') return { screen: 'stock', itemId: decodeURIComponent(id) };
  if (first === 'shelf' && id && last === 'change') return { screen: 'shelf-item', itemId: decodeURIComponent(id) };
  if (first === 'practice' && id === undefined) return { screen: 'practice' };
  if (first === 'fluids' && id === undefined) return { screen: 'fluids', visitId: null };
  if (first === 'rules' && id === undefined) return { screen: 'rules' };
  return { screen: 'unknown' };
}

const ISO_DATE = /^\d{4}-\d{2}-\d{2}$/;

function dayRoute(onDate: string, last: string | undefined): Route {
  if (last === undefined) return { screen: 'today', onDate };
  if (last === 'fill') return { screen: 'fill-day', onDate };
  if (last === 'sheets') return { screen: 'day-sheets', onDate };
  return { screen: 'unknown' };
}

function studyRoute(id: string | undefined, [last, ...rest]: readonly string[]): Route {
  if (rest.length > 0) return { screen: 'unknown' };
  if (id === undefined) return { screen: 'studies' };
  if (last === undefined && id === 'cutoff') return { screen: 'cutoff-study' };
  if (last === undefined) return id === 'new' ? { screen: 'study-plan' } : { screen: 'study', studyId: id };
  return last === 'sheet' ? { screen: 'study-sheet', studyId: id } : { screen: 'unknown' };
}

const MOVED = 'ebbline-moved';

export function goTo(path: string): void {
  history.pushState(null, '', path);
  dispatchEvent(new Event(MOVED));
  scrollTo(0, 0);
}

function onMove(listener: () => void): () => void {
  addEventListener('popstate', listener);
  addEventListener(MOVED, listener);
  return () => {
    removeEventListener('popstate', listener);
    removeEventListener(MOVED, listener);
  };
}

export function usePath(): string {
  return useSyncExternalStore(onMove, () => location.pathname);
}
