import { describe, expect, it } from 'vitest';
import { mlsInterval } from './mlsInterval.ts';
import { varianceInterval } from './varianceInterval.ts';

const between = { meanSquare: 12, df: 5 };
const within = { meanSquare: 3, df: 20 };

describe('mlsInterval', () => {
  it('of one mean square is the exact chi-square interval', () => {
    const exact = varianceInterval(between);
    const got = mlsInterval([{ coefficient: 1, row: between }]);
    expect(got.low).toBeCloseTo(exact.low, 12);
    expect(got.high).toBeCloseTo(exact.high, 12);
  });

  it('of a difference nears the exact interval of the first where the second is tiny', () => {
    const tiny = { meanSquare: 1e-9, df: 20 };
    const got = mlsInterval([
      { coefficient: 1, row: between },
      { coefficient: -1, row: tiny },
    ]);
    expect(got.low).toBeCloseTo(varianceInterval(between).low, 6);
    expect(got.high).toBeCloseTo(varianceInterval(between).high, 6);
  });

  it('of a difference has its limit at 0 exactly where the F test of the two is at its limit', () => {
    // Upper 2.5 % point of F with 5 and 20 degrees of freedom, R 4.2.2: 3.28905584568.
    const { low } = mlsInterval([
      { coefficient: 1, row: { meanSquare: 3 * 3.28905584568, df: 5 } },
      { coefficient: -1, row: within },
    ]);
    expect(Math.abs(low)).toBeLessThan(1e-9);
  });

  it('mirrors when all signs are changed, and skips terms with coefficient 0', () => {
    const got = mlsInterval([
      { coefficient: 2, row: between },
      { coefficient: -1, row: within },
      { coefficient: 0.5, row: { meanSquare: 7, df: 9 } },
      { coefficient: 0, row: { meanSquare: 1e9, df: 1 } },
    ]);
    const mirrored = mlsInterval([
      { coefficient: -2, row: between },
      { coefficient: 1, row: within },
      { coefficient: -0.5, row: { meanSquare: 7, df: 9 } },
    ]);
    expect(mirrored.low).toBeCloseTo(-got.high, 10);
    expect(mirrored.high).toBeCloseTo(-got.low, 10);
  });

  it('refuses nothing and a level that is none', () => {
    expect(() => mlsInterval([{ coefficient: 0, row: between }])).toThrow(/terms/);
    expect(() => mlsInterval([{ coefficient: 1, row: between }], 95)).toThrow(/level/);
  });
});
