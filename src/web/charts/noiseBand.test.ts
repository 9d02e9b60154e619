import { expect, test } from 'vitest';
import type { StoredReading } from '../../api/bundles.ts';
import { noiseBand, sayLastChange } from './noiseBand.ts';

const reading = (takenAt: string, rlu: number | null, part: Partial<StoredReading> = {}): StoredReading => ({
  id: takenAt,
  takenAt,
  rlu,
  bound: 'exact',
  state: 'valid',
  reasons: [],
  meterId: 'a',
  meterName: 'Demo meter A',
  cutoffRlu: 4200,
  cvAnalytical: 0.25,
  cvWithinPerson: 0.35,
  ...part,
});
const may = (rlu: number | null, part?: Partial<StoredReading>) => reading('2026-05-09T09:00:00Z', rlu, part);
const november = (rlu: number | null, part?: Partial<StoredReading>) => reading('2026-11-25T09:00:00Z', rlu, part);

test('the band holds the reading in its logarithmic middle', () => {
  const [low, high] = noiseBand({ rlu: 5150, cvAnalytical: 0.25, cvWithinPerson: 0.35 });
  expect(Math.sqrt(low * high)).toBeCloseTo(5150, 6);
  // sqrt(ln(1 + 0.25^2) + ln(1 + 0.35^2)) = 0.42005..., by hand; tolerance 1e-3.
  expect(Math.log(high / 5150) / 1.959964).toBeCloseTo(0.42, 3);
});

test('a halving may be noise, and is said to be', () => {
  expect(sayLastChange([may(9000), november(4500)])).toBe('No change that this method can see since 9 May 2026 (9,000 RLU).');
});

test('a fall from above the cut-off is told with what falls by itself', () => {
  expect(sayLastChange([may(30000), november(800)])).toMatch(/^Lower than on 9 May 2026 .*part of this fall is that\.$/);
  expect(sayLastChange([may(800), november(30000)])).toBe('Higher than on 9 May 2026 (800 RLU), by more than noise explains.');
});

test('what does not count, has no number or comes from another meter is not compared', () => {
  expect(sayLastChange([may(9000), november(4500, { state: 'void' })])).toMatch(/^One reading/);
  expect(sayLastChange([may(9000, { meterId: 'b' }), november(4500)])).toMatch(/^One reading/);
  expect(sayLastChange([november(null, { state: 'failed' })])).toBe('No reading that counts yet.');
});
