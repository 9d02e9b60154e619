import { expect, test } from 'vitest';
import type { StoredReading } from '../../../api/bundles.ts';
import { sayRecomputed } from './sayRecomputed.ts';

const reading = (part: Partial<StoredReading>): StoredReading => ({
  id: 'r1',
  takenAt: '2026-03-03T09:00:00Z',
  rlu: 5900,
  bound: 'exact',
  state: 'valid',
  reasons: [],
  meterId: 'a',
  meterName: 'Demo meter A',
  cutoffRlu: 4200,
  cvAnalytical: 0.3,
  cvWithinPerson: 0.5,
  cvAnalyticalAssumed: true,
  cvWithinPersonAssumed: true,
  lowestRlu: 40,
  highestRlu: 60_000,
  operator: 'Tomas Quill',
  lotId: 'lot-birch',
  onDate: '2026-03-03',
  told: { rlu: 5900, bound: 'exact', verdict: 'too-close', probabilityAbove: 0.88 },
  own: [{ component: 'repeatability', variance: 0.01, degreesOfFreedom: 96, studyId: 's1', reportedOn: '2026-06-01', kind: 'hands' }],
  ...part,
});

test('a reading that would be told another thing today is said with both', () => {
  expect(sayRecomputed([reading({})])).toEqual([
    {
      id: 'r1',
      takenAt: '2026-03-03T09:00:00Z',
      rlu: '5,900 RLU',
      sentence: "Then: too close to call. With this practice's own noise, measured since: above the cut-off.",
    },
  ]);
});

test('one that counted then and is under question since is said with both', () => {
  const reasons = [
    'time since eating not noted',
    'a later control was out of limits, and Ines put this reading under question: old bottle',
  ];
  expect(sayRecomputed([reading({ state: 'void', reasons })])[0]?.sentence).toBe(
    'Then: too close to call. Today: not counted, because a later control was out of limits, and Ines put this reading under question: old bottle.',
  );
});

test.each<[string, Partial<StoredReading>]>([
  ['no study yet', { own: undefined }],
  ['nothing was told', { told: null }],
  ['it was told as not counted', { state: 'void', told: null }],
  ['its visit is not known', { onDate: null }],
])('nothing is said where %s', (_, part) => {
  expect(sayRecomputed([reading(part)])).toEqual([]);
});
