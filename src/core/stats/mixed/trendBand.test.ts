import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../test/reference/statistics/seededRandom.ts';
import { simulateTrend } from '../../../../test/reference/statistics/simulatedStudies.ts';
import { trendBand } from './trendBand.ts';
import { randomInterceptTrend } from './trendFit.ts';

const simulate = () => simulateTrend(seededRandom(42), 12);

describe('trendBand', () => {
  it('lies about the line, is narrowest near the middle of the times, and is wider for a person with fewer readings', () => {
    const { observations } = simulate();
    const fit = randomInterceptTrend(observations);
    const [start, middle, end] = trendBand(fit, [0, fit.centred.meanTime, 40]);
    expect(start?.middle).toBeCloseTo(fit.intercept, 10);
    const width = (point: typeof start) => (point ? point.high - point.low : Number.NaN);
    expect(width(middle)).toBeLessThan(width(start));
    expect(width(middle)).toBeLessThan(width(end));
    const byN = [...fit.subjects].sort((a, b) => a.n - b.n);
    const [few] = trendBand(fit, [9], { subject: byN[0]?.subject });
    const [many] = trendBand(fit, [9], { subject: byN.at(-1)?.subject });
    expect(width(few)).toBeGreaterThan(width(many));
    const [wider] = trendBand(fit, [9], { subject: byN[0]?.subject, level: 0.99 });
    expect(width(wider)).toBeGreaterThan(width(few));
  });

  it('at time 0 has the standard error of the intercept behind it', () => {
    const fit = randomInterceptTrend(simulate().observations);
    const [at] = trendBand(fit, [0]);
    // t with 11 degrees of freedom, 97.5 %: 2.2009851600916384 (R 4.2.2).
    expect(at && (at.high - at.low) / 2 / fit.interceptSe).toBeCloseTo(2.2009851600916384, 8);
  });

  it('refuses a subject that it has never seen', () => {
    expect(() => trendBand(randomInterceptTrend(simulate().observations), [0], { subject: 'nobody' })).toThrow(/subject must be/);
  });
});
