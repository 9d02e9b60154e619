import { describe, expect, test } from 'vitest';
import reference from '../../../../test/reference/acid-day/clearance.json' with { type: 'json' };
import { clearanceHalfTimeMin, clearancePerMin, swallowsPerMin } from './clearanceRate.ts';
import { clearBySwallows, type Mouthful } from './clearBySwallows.ts';
import { salivaFlow } from './flow.ts';

/** 10 % (w/v) sucrose in mmol of sucrose per litre; 4.35 mL/min for each g/mL. */
const TEN_PERCENT = 292.14;
const PER_MMOL = (4.35 * 0.1) / TEN_PERCENT;

function mouthful(residualVolumeMl: number, swallowVolumeMl: number, flow: number, perMmolPerL = PER_MMOL): Mouthful {
  const drive = { baseMlPerMin: 0, untastedMlPerMin: flow, perMmolPerL, highestMlPerMin: 5 };
  return { residualVolumeMl, swallowVolumeMl, startMmolPerL: TEN_PERCENT, drive };
}

// SciPy 1.17.1 between swallows at 1e-12 (test/reference/acid-day/clearance.py). Tolerance 1e-5 of each figure.
describe('swallow by swallow, 10 % sucrose, flow driven by the taste', () => {
  test.each(reference)('$set', (row) => {
    const mouth = mouthful(row.residualVolumeMl, row.swallowVolumeMl, row.restingFlowMlPerMin);
    const [at5 = 0, at10 = 0] = clearBySwallows(mouth, [5, 10]).mmolPerL;
    const shares = clearBySwallows(mouth, [row.minutesToTenth, row.minutesToHundredth]).mmolPerL.map((value) => value / TEN_PERCENT);
    expect(at5 / TEN_PERCENT / row.at5Min).toBeCloseTo(1, 5);
    expect(at10 / TEN_PERCENT / row.at10Min).toBeCloseTo(1, 5);
    expect((shares[0] ?? 0) / 0.1).toBeCloseTo(1, 5);
    expect((shares[1] ?? 0) / 0.01).toBeCloseTo(1, 5);
  });
});

describe('closed forms', () => {
  const constant = mouthful(0.8, 1.1, 0.32, 0);

  test('a swallow leaves the share residual / swallow volume, whatever the flow does', () => {
    for (const mouth of [constant, mouthful(0.8, 1.1, 0.32), mouthful(0.66, 0.96, 0.1)]) {
      const share = mouth.residualVolumeMl / mouth.swallowVolumeMl;
      const { swallowMinutes } = clearBySwallows(mouth, [20]);
      const just = swallowMinutes.slice(1, 6).map((minute) => minute + 1e-9);
      clearBySwallows(mouth, just).mmolPerL.forEach((value, i) => {
        expect(value / (TEN_PERCENT * share ** (i + 1))).toBeCloseTo(1, 6);
      });
    }
  });

  test('at constant flow the time between swallows is volume by flow', () => {
    const { swallowMinutes } = clearBySwallows(constant, [10]);
    swallowMinutes.forEach((minute, i) => {
      expect(minute).toBeCloseTo((i * 0.3) / 0.32, 9);
    });
    expect(swallowsPerMin(constant, 0.32)).toBeCloseTo(0.32 / 0.3, 12);
  });

  test('between swallows the sugar only thins out', () => {
    const [value = 0] = clearBySwallows(constant, [0.5]).mmolPerL;
    expect(value).toBeCloseTo((TEN_PERCENT * 0.8) / (0.8 + 0.5 * 0.32), 6);
  });

  test('the continuous rate agrees with the swallows at every swallow', () => {
    const { swallowMinutes } = clearBySwallows(constant, [10]);
    swallowMinutes.slice(1).forEach((minute, i) => {
      expect(Math.exp(-clearancePerMin(constant, 0.32) * minute)).toBeCloseTo((0.8 / 1.1) ** (i + 1), 9);
    });
  });

  // Minutes, three decimals: ln 2 / ln(swallow / residual) x (swallow - residual) / flow, by hand.
  test.each([
    [0.8, 1.1, 0.32, 2.041],
    [0.87, 1.19, 0.32, 2.213],
    [0.66, 0.96, 0.32, 1.734],
    [0.38, 0.5, 0.22, 1.378],
    [0.8, 1.1, 0.1, 6.53],
    [0.8, 1.1, 0.55, 1.187],
  ])('half-time of %d to %d mL at %d mL/min', (residualVolumeMl, swallowVolumeMl, flow, minutes) => {
    expect(clearanceHalfTimeMin({ residualVolumeMl, swallowVolumeMl }, flow)).toBeCloseTo(minutes, 3);
  });

  test('food that stays settles where release and clearance balance', () => {
    const held = { ...constant, startMmolPerL: 0, retained: { mmolPerL: 100, halfTimeMinutes: 60 } };
    const rate = clearancePerMin(constant, 0.32);
    const release = Math.LN2 / 60;
    const grid = Array.from({ length: 400 }, (_, i) => 40 + i * 0.05);
    const values = clearBySwallows(held, grid).mmolPerL;
    // One-compartment solution; the swallows make it swing around that by their own depth.
    const expected = grid.map((minute) => (100 * release * (Math.exp(-release * minute) - Math.exp(-rate * minute))) / (rate - release));
    const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
    expect(mean(values) / mean(expected)).toBeGreaterThan(0.9);
    expect(mean(values) / mean(expected)).toBeLessThan(1.35);
  });
});

describe('flow', () => {
  const drive = { baseMlPerMin: 0.32, untastedMlPerMin: 0.32, perMmolPerL: 0.0015, highestMlPerMin: 5 };

  test('follows the taste up to its limit, and chewing where that is more', () => {
    expect(salivaFlow(drive, 0)).toBe(0.32);
    expect(salivaFlow(drive, 1000)).toBeCloseTo(1.82, 12);
    expect(salivaFlow(drive, 5000)).toBe(5);
    expect(salivaFlow({ ...drive, baseMlPerMin: 2 }, 100)).toBe(2);
    expect(salivaFlow({ ...drive, baseMlPerMin: 2 }, 2000)).toBeCloseTo(3.32, 12);
    expect(salivaFlow({ ...drive, baseMlPerMin: 0.05, untastedMlPerMin: 0.05 }, 0)).toBe(0.05);
  });

  // Whole saliva on 80 % sucrose, mean of the first half minute: Watanabe, Dawes 1988, 3.8 mL/min (the slope is set from it).
  test('gives the published flow on strong sucrose', () => {
    expect(salivaFlow(drive, 8 * TEN_PERCENT)).toBeCloseTo(3.8, 1);
  });
});

test.each([
  [{ startMmolPerL: -1 }, 'startMmolPerL'],
  [{ startMmolPerL: Number.NaN }, 'startMmolPerL'],
  [{ residualVolumeMl: 0 }, 'residualVolumeMl'],
  [{ swallowVolumeMl: 0.8 }, 'swallowVolumeMl'],
  [{ drive: { baseMlPerMin: 0, untastedMlPerMin: 0, perMmolPerL: 0, highestMlPerMin: 5 } }, 'flowMlPerMin'],
  [{ retained: { mmolPerL: 1, halfTimeMinutes: 0 } }, 'retained.halfTimeMinutes'],
])('%o is refused by name', (wrong, field) => {
  expect(() => clearBySwallows({ ...mouthful(0.8, 1.1, 0.32), ...wrong }, [1])).toThrow(field);
});

test('minutes that do not rise are refused', () => {
  expect(() => clearBySwallows(mouthful(0.8, 1.1, 0.32), [2, 1])).toThrow('atMinutes');
});
