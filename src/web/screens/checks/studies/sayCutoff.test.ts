import { describe, expect, it } from 'vitest';
import { localCutoffStudy } from '../../../../core/meter/localCutoffStudy.ts';
import { seededUniform } from '../../../../core/stats/seededUniform.ts';
import { sayCutoff, sayGroups } from './sayCutoff.ts';

const study = (people: number, rluWith: (i: number) => number) =>
  localCutoffStudy({
    readings: Array.from({ length: people }, (_, i) => {
      const hasLesion = i % 2 === 0;
      return {
        personId: `p${i}`,
        takenOn: '2025-01-10',
        rlu: hasLesion ? rluWith(i) : 1_000 + 37 * ((7 * i) % 40),
        followedUntil: '2026-06-01',
        ...(hasLesion && { newLesionOn: '2025-08-01' }),
      };
    }),
    withinMonths: 12,
    cutoffRlu: 4200,
    random: seededUniform(1),
    resamples: 200,
  });

describe('what a study of readings and new lesions says', () => {
  it('says how many more people are needed, and no figure', () => {
    const few = study(12, () => 9_000);
    expect(sayGroups(few)).toBe(
      '6 people with a new lesion, 6 without. Too few for a figure, which takes 10 of each: 4 more with a new lesion and 4 more without.',
    );
    expect(sayGroups({ ...few, withLesion: 10, notEnough: 'too-few-without' })).toMatch(/which takes 10 of each: 4 more without\.$/);
    expect(few.result).toBeNull();
  });

  it('says whether readings told the two apart, in times of 100, and leaves the cut-off to the meter', () => {
    const { result } = study(60, (i) => 1_500 + 53 * ((11 * i) % 90));
    if (!result) throw new Error('no result');
    const [answer, chance, present, best] = sayCutoff(result);
    expect(answer).toBe('In this practice readings told the two apart better than chance.');
    expect(chance).toContain(`${Math.round(100 * result.auc.auc)} times in 100`);
    expect(present).toMatch(/^At the present cut-off of 4,200 RLU: \d+ times in 100 with a new lesion were at or above it/);
    expect(best).toContain("The meter's cut-off stays as its instructions give it.");
    const { result: alike } = study(60, (i) => 1_000 + 37 * ((7 * (i + 1)) % 40));
    expect(alike && sayCutoff(alike)[0]).toContain('did not tell the two apart');
  });
});
