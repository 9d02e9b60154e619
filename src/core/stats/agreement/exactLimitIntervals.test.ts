import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../../test/reference/statistics/seededRandom.ts';
import { Z_95 } from '../normal.ts';
import { exactLimitIntervals } from './exactLimitIntervals.ts';

// R 4.2.2: 1.5 + 0.4 / sqrt(n) * qt(c(.025, .975), n - 1, qnorm(.975) * sqrt(n)). Tolerance: 1e-9 relative.
test.each([
  { n: 5, near: 1.86926594384581, far: 3.88996819920616 },
  { n: 30, near: 2.08013846550584, far: 2.60263594213821 },
])('$n pairs', ({ n, near, far }) => {
  const { lower, upper } = exactLimitIntervals({ bias: 1.5, sd: 0.4, n });
  expect(Math.abs(upper.low / near - 1)).toBeLessThan(1e-9);
  expect(Math.abs(upper.high / far - 1)).toBeLessThan(1e-9);
  expect(lower.low - 1.5).toBeCloseTo(1.5 - upper.high, 12);
  expect(lower.high - 1.5).toBeCloseTo(1.5 - upper.low, 12);
});

describe('exactLimitIntervals', () => {
  it('holds the true limit in 95 of 100 small studies', () => {
    const { normal } = seededRandom(20_261_126);
    const n = 6;
    let held = 0;
    const { upper } = exactLimitIntervals({ bias: 0, sd: 1, n });
    for (let study = 0; study < 4000; study++) {
      const values = Array.from({ length: n }, normal);
      const mean = values.reduce((a, b) => a + b, 0) / n;
      const sd = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (n - 1));
      if (mean + sd * upper.low <= Z_95 && Z_95 <= mean + sd * upper.high) held++;
    }
    // Three standard errors of a share of 0.95 in 4,000.
    expect(Math.abs(held / 4000 - 0.95)).toBeLessThan(0.0104);
  });

  it('names what is out of range', () => {
    expect(() => exactLimitIntervals({ bias: 0, sd: 0, n: 5 })).toThrow(/^sd/);
    expect(() => exactLimitIntervals({ bias: 0, sd: 1, n: 1 })).toThrow(/^n /);
    expect(() => exactLimitIntervals({ bias: 0, sd: 1, n: 5 }, 1)).toThrow(/^level/);
  });
});
