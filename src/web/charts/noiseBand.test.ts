import { expect, test } from 'vitest';
import { noiseBand } from './noiseBand.ts';

test('the band holds the reading in its logarithmic middle', () => {
  const [low, high] = noiseBand({ rlu: 5150, cvAnalytical: 0.25, cvWithinPerson: 0.35 });
  expect(Math.sqrt(low * high)).toBeCloseTo(5150, 6);
  // sqrt(ln(1 + 0.25^2) + ln(1 + 0.35^2)) = 0.42005..., by hand; tolerance 1e-3.
  expect(Math.log(high / 5150) / 1.959964).toBeCloseTo(0.42, 3);
});
