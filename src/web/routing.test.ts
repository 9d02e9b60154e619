import { expect, test } from 'vitest';
import { parsePath } from './routing.ts';

test.each([
  ['/', { screen: 'today', onDate: null }],
  ['/people', { screen: 'people' }],
  ['/people/1', { screen: 'person', patientId: '1' }],
  ['/people/1/2', { screen: 'unknown' }],
  ['/day/2026-11-26', { screen: 'today', onDate: '2026-11-26' }],
  ['/day/2026-11-26/fill', { screen: 'fill-day', onDate: '2026-11-26' }],
  ['/day/2026-11-26/sheets', { screen: 'day-sheets', onDate: '2026-11-26' }],
  ['/day/2026-11-26/other', { screen: 'unknown' }],
  ['/day/tomorrow', { screen: 'unknown' }],
  ['/day', { screen: 'unknown' }],
  ['/visits/abc', { screen: 'visit', visitId: 'abc' }],
  ['/visits/abc/swab', { screen: 'swab', visitId: 'abc' }],
  ['/visits/abc/leaflet', { screen: 'leaflet', visitId: 'abc' }],
  ['/visits/abc/day', { screen: 'acid-day', visitId: 'abc' }],
  ['/visits/abc/fluids', { screen: 'fluids', visitId: 'abc' }],
  ['/fluids', { screen: 'fluids', visitId: null }],
  ['/fluids/abc', { screen: 'unknown' }],
  ['/visits/abc/diary', { screen: 'diary', visitId: 'abc' }],
  ['/over-time', { screen: 'over-time', patientId: null }],
  ['/over-time/p1', { screen: 'over-time', patientId: 'p1' }],
  ['/shelf', { screen: 'shelf' }],
  ['/rules/', { screen: 'rules' }],
  ['/visits', { screen: 'unknown' }],
  ['/visits/abc/other', { screen: 'unknown' }],
  ['/shelf/1', { screen: 'unknown' }],
  ['/shelf/new', { screen: 'shelf-item', itemId: null }],
  ['/shelf/new/change', { screen: 'shelf-item', itemId: 'new' }],
  ['/shelf/paste-1/change', { screen: 'shelf-item', itemId: 'paste-1' }],
  ['/shelf/paste-1/other', { screen: 'unknown' }],
  ['/practice', { screen: 'practice' }],
  ['/practice/meters', { screen: 'unknown' }],
  ['/a/b/c/d', { screen: 'unknown' }],
])('%s', (path, route) => {
  expect(parsePath(path)).toEqual(route);
});
