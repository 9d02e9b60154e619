import { expect, test } from 'vitest';
import { isSwabBegun } from './isSwabBegun.ts';

test.each([
  [undefined, false],
  [{}, false],
  [{ beforeCleaning: true, lotId: 'lot-1', site: 'lower-front-tongue-side' }, false],
  [{ failed: false }, false],
  [{ activatedAt: '2026-07-03T10:36:00Z' }, true],
  [{ rlu: 0 }, true],
  [{ failed: true }, true],
  [{ notTaken: 'declined' }, true],
] as const)('%j: %s', (reading, begun) => expect(isSwabBegun(reading)).toBe(begun));
