import { expect, test } from 'vitest';
import { parsePath } from './routing.ts';

test.each([
  ['/', { screen: 'people' }],
  ['/visits/abc', { screen: 'visit', visitId: 'abc' }],
  ['/visits/abc/leaflet', { screen: 'leaflet', visitId: 'abc' }],
  ['/over-time', { screen: 'over-time', patientId: null }],
  ['/over-time/p1', { screen: 'over-time', patientId: 'p1' }],
  ['/shelf', { screen: 'shelf' }],
  ['/rules/', { screen: 'rules' }],
  ['/visits', { screen: 'unknown' }],
  ['/visits/abc/other', { screen: 'unknown' }],
  ['/shelf/1', { screen: 'unknown' }],
  ['/a/b/c/d', { screen: 'unknown' }],
])('%s', (path, route) => {
  expect(parsePath(path)).toEqual(route);
});
