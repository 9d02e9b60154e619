import { expect, test } from 'vitest';
import type { StoredReading } from '../../api/bundles.ts';
import { sayLastChange } from './sayLastChange.ts';

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
  cvAnalyticalAssumed: true,
  cvWithinPersonAssumed: true,
  lowestRlu: 40,
  highestRlu: 60_000,
  operator: 'Tomas Quill',
  lotId: 'lot-birch',
  onDate: takenAt.slice(0, 10),
  told: null,
  ...part,
});
const may = (rlu: number | null, part?: Partial<StoredReading>) => reading('2026-05-09T09:00:00Z', rlu, part);
const november = (rlu: number | null, part?: Partial<StoredReading>) => reading('2026-11-25T09:00:00Z', rlu, part);

test('a halving may be noise, and is said to be, with the limit and what of it is assumed', () => {
  const [told, sentence] = sayLastChange([may(9000), november(4500)]);
  expect(told).toBe('No change that this method can see since 9 May 2026 (9,000 RLU).');
  expect(sentence).toMatch(/^Noise alone explains a rise of up to 359 % or a fall of up to 78 %/);
  expect(sentence).toMatch(/repeatability 25 % \(assumed\) and day-to-day variation 35 % \(assumed\)/);
  const measured = november(4500, { cvAnalyticalAssumed: false });
  expect(sayLastChange([may(9000), measured])[1]).toContain('repeatability 25 % (measured)');
});

test('a fall from above the cut-off is told with what falls by itself, with a number from enough people only', () => {
  const fall = [may(30_000), november(800)];
  expect(sayLastChange(fall)[2]).toBe('High first readings tend to fall without treatment; part of this fall is that.');
  const population = { meterId: 'a', people: 64, geometricMeanRlu: 3000, sdLog: 1 };
  // R = 1 - 0.1765; ln 10 = 2.3026; 1 - exp(-0.1765 x 2.3026) = 0.334, by hand.
  expect(sayLastChange(fall, [population])[2]).toBe(
    'High first readings tend to fall without treatment; part of this fall is that: about 33 % would be expected by that alone, 97 % was seen. Worked out from the first readings of 64 people of this practice on this meter, with noise that is partly assumed.',
  );
  expect(sayLastChange(fall, [{ ...population, people: 19 }])[2]).toBe(
    'High first readings tend to fall without treatment; part of this fall is that: by how much is not said from 19 people.',
  );
  expect(sayLastChange(fall, [{ ...population, meterId: 'b' }])[2]).toMatch(/part of this fall is that\.$/);
  expect(sayLastChange([may(800), november(30_000)])).toEqual([
    'Higher than on 9 May 2026 (800 RLU), by more than noise explains.',
    expect.stringMatching(/^Noise alone explains a rise/),
  ]);
});

test('what does not count, has no number or comes from another meter is not compared', () => {
  expect(sayLastChange([may(9000), november(4500, { state: 'void' })])).toEqual(['One reading that counts: no change can be told yet.']);
  expect(sayLastChange([may(9000, { meterId: 'b' }), november(4500)])).toEqual([
    'Earlier readings are from a different meter: no comparison.',
  ]);
  expect(sayLastChange([november(null, { state: 'failed' })])).toEqual(['No reading that counts yet.']);
});
