import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { seededUniform } from '../stats/seededUniform.ts';
import { chooseOnePerPerson, type FollowedReading } from './followedReadings.ts';
import { FEWEST_PER_GROUP, localCutoffStudy, THIN_EVIDENCE } from './localCutoffStudy.ts';

const reading = (personId: string, more: Partial<FollowedReading> = {}): FollowedReading => ({
  personId,
  takenOn: '2025-01-31',
  rlu: 1000,
  ...more,
});

// Twelve months after 31 January 2025 is 31 January 2026.
test.each([
  ['a lesion within the time', { newLesionOn: '2025-06-01' }, 'with'],
  ['a lesion on the last day', { newLesionOn: '2026-01-31' }, 'with'],
  ['a lesion within the time, not seen again', { newLesionOn: '2025-06-01', followedUntil: '2025-06-01' }, 'with'],
  ['a lesion later, so none within', { newLesionOn: '2026-02-01' }, 'without'],
  ['none, looked at on the last day', { followedUntil: '2026-01-31' }, 'without'],
  ['none, looked at a day too early', { followedUntil: '2026-01-30' }, 'unknown'],
  ['not seen since', {}, 'unknown'],
] as const)('%s', (_name, more, outcome) => {
  const got = chooseOnePerPerson([reading('a', more)], 12);
  expect([got.withLesion.length, got.without.length, got.leftOut.notFollowed]).toEqual(
    { with: [1, 0, 0], without: [0, 1, 0], unknown: [0, 0, 1] }[outcome],
  );
});

describe('chooseOnePerPerson', () => {
  it('takes the earliest reading whose outcome is known', () => {
    const got = chooseOnePerPerson(
      [
        reading('a', { takenOn: '2025-09-01', rlu: 3, followedUntil: '2026-12-01' }),
        reading('a', { takenOn: '2025-03-01', rlu: 2, followedUntil: '2026-12-01' }),
        reading('a', { takenOn: '2024-03-01', rlu: 1 }),
        reading('b', { rlu: 9, newLesionOn: '2025-03-01' }),
      ],
      12,
    );
    expect(got).toEqual({ withLesion: [9], without: [2], leftOut: { notFollowed: 0, furtherReadings: 1 } });
  });

  it('names the reading and field', () => {
    const throwing =
      (more: Partial<FollowedReading>, months = 12) =>
      () =>
        chooseOnePerPerson([reading('a', more)], months);
    expect(throwing({}, 0)).toThrow(/^withinMonths/);
    expect(throwing({ rlu: 0 })).toThrow(/^readings\.0\.rlu/);
    expect(throwing({ takenOn: '2025-02-30' })).toThrow(/^readings\.0\.takenOn/);
    expect(throwing({ newLesionOn: '2025-01-31' })).toThrow(/^readings\.0\.newLesionOn must lie after/);
    expect(throwing({ newLesionOn: 'soon' })).toThrow(/^readings\.0\.newLesionOn must be a date/);
    expect(throwing({ followedUntil: '2025-01-30' })).toThrow(/^readings\.0\.followedUntil/);
  });
});

/** People with a new lesion read higher by the factor in the middle. */
function practice(withLesion: number, without: number, factor: number, seed = 3): FollowedReading[] {
  const { normal } = seededRandom(seed);
  return Array.from({ length: withLesion + without }, (_, i) => {
    const hasLesion = i < withLesion;
    const rlu = Math.round(4000 * Math.exp(0.8 * normal()) * (hasLesion ? factor : 1));
    return reading(`p${i}`, { rlu, ...(hasLesion ? { newLesionOn: '2025-08-01' } : { followedUntil: '2026-03-01' }) });
  });
}
const study = (readings: readonly FollowedReading[], resamples = 200) =>
  localCutoffStudy({ readings, withinMonths: 12, cutoffRlu: 4200, random: seededUniform(1), resamples });

describe('localCutoffStudy', () => {
  it('gives area, best cut-off and the present one, each with its interval, and the caution', () => {
    const { result, caution, ...got } = study(practice(40, 120, 3));
    expect(got).toMatchObject({ withLesion: 40, without: 120, notEnough: null, stillNeeded: 0 });
    expect(caution).toBe(THIN_EVIDENCE);
    expect(got.sources.every(({ key }) => key !== '')).toBe(true);
    expect(result?.tellsApart).toBe(true);
    expect(result?.auc.interval?.low).toBeLessThan(result?.auc.auc ?? 0);
    const { cutoff = 0, cutoffInterval, optimism = 0 } = result?.best ?? {};
    expect((cutoffInterval?.low ?? 1e9) <= cutoff && cutoff <= (cutoffInterval?.high ?? 0)).toBe(true);
    expect(optimism).toBeGreaterThan(0);
    const { truePositive, falseNegative, falsePositive, trueNegative } = result?.atPresentCutoff.counts ?? {};
    expect([(truePositive ?? 0) + (falseNegative ?? 0), (falsePositive ?? 0) + (trueNegative ?? 0)]).toEqual([40, 120]);
    expect(result?.atPresentCutoff.likelihoodRatios.positive.low).toBeGreaterThan(1);
  });

  it('readings that have nothing to do with it do not tell apart', () => {
    expect(study(practice(30, 60, 1)).result?.tellsApart).toBe(false);
    const apart = practice(10, 10, 1).map((one) => ({ ...one, rlu: one.newLesionOn ? 900 : 100 }));
    expect(study(apart).result).toMatchObject({ tellsApart: true, auc: { auc: 1, interval: null } });
    expect(study(apart.map((one) => ({ ...one, rlu: 500 }))).result).toMatchObject({ tellsApart: false, auc: { auc: 0.5 } });
  });

  it('a reading at the cut-off is positive', () => {
    const list = practice(10, 10, 1).map((one) => ({ ...one, rlu: one.newLesionOn ? 4200 : 4199 }));
    expect(study(list).result?.atPresentCutoff.counts).toEqual({ truePositive: 10, falseNegative: 0, falsePositive: 0, trueNegative: 10 });
  });

  it('too few in a group gives counts, what is missing and the caution, and no figure', () => {
    const people = fc.oneof(fc.constantFrom(0, 1, FEWEST_PER_GROUP - 1, FEWEST_PER_GROUP), fc.nat(25));
    fc.assert(
      fc.property(people, people, (withLesion, without) => {
        const got = study(practice(withLesion, without, 2), 5);
        const enough = withLesion >= FEWEST_PER_GROUP && without >= FEWEST_PER_GROUP;
        expect(got.result !== null).toBe(enough);
        expect(got.notEnough === null).toBe(enough);
        expect(got.caution).toBe(THIN_EVIDENCE);
        if (got.notEnough === 'too-few-with-lesion') expect(got.stillNeeded).toBe(FEWEST_PER_GROUP - withLesion);
        if (got.notEnough === 'too-few-without') expect(got.stillNeeded).toBe(FEWEST_PER_GROUP - without);
        expect(JSON.stringify(got)).not.toMatch(/NaN|Infinity/);
      }),
      { numRuns: 40 },
    );
  });

  it('names what is out of range', () => {
    expect(() => localCutoffStudy({ readings: [], withinMonths: 12, cutoffRlu: 0, random: seededUniform(1) })).toThrow(/^cutoffRlu/);
  });
});
