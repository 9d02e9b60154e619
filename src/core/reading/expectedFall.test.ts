import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { expectedFall, FEWEST_PEOPLE } from './expectedFall.ts';

const population = { people: 60, geometricMeanRlu: 3000, sdLog: 1 };

describe('by hand', () => {
  // R = 1 - 0.36 = 0.64; ln(24000 / 3000) = ln 8; exp(-0.36 ln 8) = 8^-0.36 = 0.47303. Tolerance: half a unit in the last place.
  test('a reading eight times the mean, noise of six tenths of the spread', () => {
    const fall = expectedFall({ firstRlu: 24_000, population, sdLogSingle: 0.6 });
    expect(fall).toMatchObject({ ok: true, value: { people: 60 } });
    if (!fall.ok) return;
    expect(Math.abs(fall.value.reliability - 0.64)).toBeLessThan(5e-10);
    expect(Math.abs(1 - fall.value.fraction - 0.47303)).toBeLessThan(5e-6);
  });

  test('noise as large as the whole spread brings everybody back to the mean', () => {
    const fall = expectedFall({ firstRlu: 6000, population, sdLogSingle: 1.4 });
    expect(fall.ok && [fall.value.reliability, Math.round(1e9 * fall.value.fraction) / 1e9]).toEqual([0, 0.5]);
  });

  test('too few people give no number, and at or below the mean no fall is expected', () => {
    const few = { ...population, people: FEWEST_PEOPLE - 1 };
    expect(expectedFall({ firstRlu: 24_000, population: few, sdLogSingle: 0.6 })).toEqual({ ok: false, reason: 'too-few-people' });
    expect(expectedFall({ firstRlu: 3000, population, sdLogSingle: 0.6 })).toEqual({ ok: false, reason: 'not-above-mean' });
    expect(() => expectedFall({ firstRlu: 0, population, sdLogSingle: 0.6 })).toThrow(/firstRlu/);
    expect(() => expectedFall({ firstRlu: 5, population, sdLogSingle: Number.NaN })).toThrow(/sdLogSingle/);
  });
});

// Simulated people: levels and noise drawn apart, those kept whose first reading lies near the one asked about. Seeded; the middle
// fall among them stands within 0.04 of the formula (about three standard errors of the fewest kept).
test.each([
  { firstRlu: 15_000, sdLogSingle: 0.42 },
  { firstRlu: 30_000, sdLogSingle: 0.42 },
  { firstRlu: 15_000, sdLogSingle: 0.8 },
])('agrees with simulated people, first reading $firstRlu, noise $sdLogSingle', ({ firstRlu, sdLogSingle }) => {
  const { normal } = seededRandom(20_261_125);
  const sdLevel = Math.sqrt(population.sdLog ** 2 - sdLogSingle ** 2);
  const falls: number[] = [];
  for (let i = 0; i < 200_000; i += 1) {
    const level = Math.log(population.geometricMeanRlu) + sdLevel * normal();
    const first = level + sdLogSingle * normal();
    const second = level + sdLogSingle * normal();
    if (Math.abs(first - Math.log(firstRlu)) < 0.05) falls.push(1 - Math.exp(second - first));
  }
  falls.sort((a, b) => a - b);
  const fall = expectedFall({ firstRlu, population, sdLogSingle });
  expect(falls.length).toBeGreaterThan(500);
  expect(fall.ok && Math.abs(fall.value.fraction - (falls[Math.floor(falls.length / 2)] ?? 9))).toBeLessThan(0.04);
});

test('lies between none and all, grows with the reading and with the noise', () => {
  const above = fc.oneof(fc.constantFrom(1.000001, 1.5, 20), fc.double({ min: 1.01, max: 1000, noNaN: true }));
  const noise = fc.oneof(fc.constantFrom(0.01, 0.999, 1, 1.5), fc.double({ min: 0.01, max: 2, noNaN: true }));
  fc.assert(
    fc.property(above, noise, (times, sdLogSingle) => {
      const at = (t: number, sd: number) => {
        const fall = expectedFall({ firstRlu: 3000 * t, population, sdLogSingle: sd });
        return fall.ok ? fall.value.fraction : -1;
      };
      const fall = at(times, sdLogSingle);
      expect(fall).toBeGreaterThanOrEqual(0);
      expect(fall).toBeLessThan(1);
      expect(at(times * 1.1, sdLogSingle)).toBeGreaterThanOrEqual(fall);
      expect(at(times, sdLogSingle * 1.1)).toBeGreaterThanOrEqual(fall);
    }),
  );
});
