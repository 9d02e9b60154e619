import fc from 'fast-check';
import { expect, test } from 'vitest';
import { testMeter as meter } from '../../../test/testMeter.ts';
import { readingNoise as table } from '../../content/readingNoise.ts';
import { assessReading } from './assessReading.ts';
import { recomputeReading, type StoredVerdict, storedVerdictOf } from './recomputeReading.ts';
import type { Meter, ReadingAssessment } from './types.ts';

const measured = (variance: number, reportedOn: string): Meter => ({
  ...meter,
  own: [{ component: 'repeatability', variance, degreesOfFreedom: 96, studyId: 's1', reportedOn, kind: 'hands' }],
});
const ON = '2026-03-03';
const SINCE = '2026-06-01';

function toldAt(rlu: number, of: Meter = meter): StoredVerdict {
  const reading = { rlu, takenAt: `${ON}T09:00:00Z` };
  const assessed = assessReading({ reading, meter: of, lots: [], pastReadings: [], onDate: ON, conditions: [], noise: table });
  const stored = storedVerdictOf(JSON.parse(JSON.stringify(assessed)) as ReadingAssessment);
  if (stored === undefined) throw new Error('it counted');
  return stored;
}

// Guard band with 30 %: 2,591 to 6,808; with (4 ln 1.09 + 96 x 0.01) / 100 = 0.013047: 3,481 to 5,068.
test.each([
  [5900, 0.01, "Then: too close to call. With this practice's own noise, measured since: above the cut-off."],
  [3000, 0.01, "Then: too close to call. With this practice's own noise, measured since: below the cut-off."],
  [7000, 0.25, "Then: above the cut-off. With this practice's own noise, measured since: too close to call."],
  [4300, 0.01, null],
  [9000, 0.01, null],
])('%d RLU with a variance of %d found since', (rlu, variance, sentence) => {
  const stored = toldAt(rlu);
  const got = recomputeReading(stored, { meter: measured(variance, SINCE), table }, ON);
  expect(got.sentence).toBe(sentence);
  expect(got.told).toEqual({ verdict: stored.verdict, probabilityAbove: stored.probabilityAbove });
  expect(got.today.probabilityAbove).not.toBe(got.told.probabilityAbove);
});

test('says another reason where the studies are not it', () => {
  const moved = { ...measured(0.01, SINCE), cutoffRlu: 9000 };
  expect(recomputeReading(toldAt(7000), { meter: moved, table }, ON).sentence).toBe(
    'Then: above the cut-off. With the meter as it is described today: below the cut-off.',
  );
  const open = { ...meter, cutoffRlu: 55_000 };
  expect(recomputeReading(toldAt(60_000), { meter: open, table }, ON).sentence).toBe(
    "Then: above the cut-off. With the meter as it is described today: at the meter's limit, open.",
  );
});

test('what counted for nothing is not told anew', () => {
  const none = assessReading({ meter, lots: [], pastReadings: [], onDate: ON, conditions: [], noise: table });
  expect(storedVerdictOf(none)).toBe(undefined);
  const elsewhere = assessReading({ reading: { rlu: 5 }, lots: [], pastReadings: [], onDate: ON, conditions: [], noise: table });
  expect(storedVerdictOf(elsewhere)).toBe(undefined);
});

test('nothing reported since, nothing differs; and what was told is never changed', () => {
  const rlus = fc.oneof(fc.constantFrom(40, 41, 2591, 4200, 6808, 59_999, 60_000), fc.integer({ min: 40, max: 60_000 }));
  const variances = fc.oneof(fc.constantFrom(1e-6, 4), fc.double({ min: 0.001, max: 0.5, noNaN: true }));
  fc.assert(
    fc.property(rlus, variances, (rlu, variance) => {
      const known = measured(variance, ON);
      const stored = toldAt(rlu, known);
      expect(recomputeReading(stored, { meter: known, table }, ON)).toEqual({
        told: tellOf(stored),
        today: tellOf(stored),
        sentence: null,
      });
      const later = recomputeReading(toldAt(rlu), { meter: measured(variance, SINCE), table }, ON);
      expect(later.told).toEqual(tellOf(toldAt(rlu)));
      expect(later.sentence === null).toBe(later.told.verdict === later.today.verdict);
    }),
    { numRuns: 60 },
  );
});

const tellOf = ({ verdict, probabilityAbove }: StoredVerdict) => ({ verdict, probabilityAbove });
