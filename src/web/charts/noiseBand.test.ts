import { expect, test } from 'vitest';
import { demoPractice } from '../../content/demo/practice.ts';
import { readingNoise } from '../../content/readingNoise.ts';
import { noiseBand } from './noiseBand.ts';

/** 25 % swab noise, 35 % from day to day. */
const [meter] = demoPractice.meters;
if (!meter) throw new Error('the invented practice has a meter');

test('the band holds the reading in its logarithmic middle', () => {
  const [low, high] = noiseBand(5150, meter, readingNoise);
  expect(Math.sqrt(low * high)).toBeCloseTo(5150, 6);
  // sqrt(ln(1 + 0.25^2) + ln(1 + 0.35^2)) = 0.42005..., by hand; tolerance 1e-3.
  expect(Math.log(high / 5150) / 1.959964).toBeCloseTo(0.42, 3);
});
