import { describe, expect, test } from 'vitest';
import { daysFigures } from '../../src/core/checks/daysFigures.ts';
import { handsFigures } from '../../src/core/checks/handsFigures.ts';
import { lotsFigures } from '../../src/core/checks/lotsFigures.ts';
import { widthAsCv } from '../../src/core/checks/noiseFigure.ts';
import { predictDays, predictHands, predictLots } from '../../src/core/checks/predictWidths.ts';
import { normalQuantile } from '../../src/core/stats/normal.ts';
import { seededUniform } from '../../src/core/stats/seededUniform.ts';
import { crossedComponents } from '../../src/core/stats/variance/crossedComponents.ts';
import { oneWayAnova } from '../../src/core/stats/variance/oneWayAnova.ts';
import { oneWayComponents } from '../../src/core/stats/variance/oneWayComponents.ts';

// Studies simulated observation by observation with known components, then analysed as a real one. The prediction knows nothing of them.
// Tolerance: 10 % of the simulated median, as promised; EBBLINE_LONG=1 simulates four times as many.
const STUDIES = process.env.EBBLINE_LONG === '1' ? 4_000 : 1_000;
const TOLERANCE = 0.1;
const PART_SD = 0.6;

const normals = (seed: number) => {
  const uniform = seededUniform(seed);
  return (sd: number) => sd * normalQuantile(uniform() + 2 ** -33);
};
const times = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const offBy = (predicted: number, simulated: readonly number[]) => Math.abs(predicted / median(simulated) - 1);

const noises = [
  { what: 'hands as noisy as swabs', repeatability: 0.02, operator: 0.02, lot: 0.01, withinPerson: 0.22 },
  { what: 'hands all alike', repeatability: 0.03, operator: 0, lot: 0, withinPerson: 0.1 },
  { what: 'noisy swabs', repeatability: 0.16, operator: 0.01, lot: 0.04, withinPerson: 0.4 },
];

describe.each(noises)('$what', (noise) => {
  const sd = { swab: Math.sqrt(noise.repeatability), hand: Math.sqrt(noise.operator), lot: Math.sqrt(noise.lot) };

  test.each([
    { parts: 3, operators: 3, repeats: 3 },
    { parts: 6, operators: 5, repeats: 2 },
  ])('a study of hands, $parts solutions by $operators hands by $repeats swabs', (sizes) => {
    const normal = normals(1);
    const figures = times(STUDIES, () => {
      const parts = times(sizes.parts, () => normal(PART_SD));
      const observations = times(sizes.operators, (o) => {
        const hand = normal(sd.hand);
        return parts.flatMap((part, p) =>
          times(sizes.repeats, () => ({ part: `${p}`, operator: `${o}`, value: part + hand + normal(sd.swab) })),
        );
      }).flat();
      return handsFigures(crossedComponents(observations));
    });
    const predicted = predictHands(sizes, noise);
    for (const name of ['swabs', 'hands', 'together'] as const) {
      expect(
        offBy(
          predicted[name],
          figures.map((f) => widthAsCv(f[name])),
        ),
        name,
      ).toBeLessThan(TOLERANCE);
    }
  });

  test.each([
    { lots: 3, swabs: 8 },
    { lots: 5, swabs: 3 },
  ])('a study of $lots lots, $swabs swabs each', (sizes) => {
    const normal = normals(2);
    const figures = times(STUDIES, () =>
      lotsFigures(
        oneWayComponents(
          times(sizes.lots, () => {
            const lot = normal(sd.lot);
            return times(sizes.swabs, () => lot + normal(sd.swab));
          }),
        ),
      ),
    );
    const predicted = predictLots(sizes, noise);
    for (const name of ['swabs', 'lots'] as const) {
      expect(
        offBy(
          predicted[name],
          figures.map((f) => widthAsCv(f[name])),
        ),
        name,
      ).toBeLessThan(TOLERANCE);
    }
  });

  test.each([6, 30])('%d people on two days', (people) => {
    const normal = normals(3);
    const day = Math.sqrt(noise.repeatability + noise.withinPerson);
    const widths = times(STUDIES, () => {
      const { within } = oneWayAnova(
        times(people, () => {
          const person = normal(PART_SD);
          return [person + normal(day), person + normal(day)];
        }),
      );
      return widthAsCv(daysFigures(within).days);
    });
    expect(offBy(predictDays({ people }, noise).days, widths)).toBeLessThan(TOLERANCE);
  });
});
