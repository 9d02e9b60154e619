import { expect, test } from 'vitest';
import { demoPractice } from '../content/demo/practice.ts';
import { describeIssues, sayProblem } from './describeIssues.ts';
import { MeterSchema } from './visitSchema.ts';

const [meter] = demoPractice.meters;
const found = { component: 'repeatability', variance: 0.02, degreesOfFreedom: 54, studyId: 's1', reportedOn: '2026-11-01', kind: 'hands' };

function problems(own: unknown): string[] {
  const input = { ...meter, own };
  const parsed = MeterSchema.safeParse(input);
  return parsed.success ? [] : describeIssues(parsed.error.issues, input).map(sayProblem);
}

test('a meter may hold what its studies found, and need not', () => {
  expect(MeterSchema.parse(meter)).toEqual(meter);
  const own = [
    { ...found, readings: 60 },
    { ...found, component: 'operator', variance: -0.001, degreesOfFreedom: 1.4 },
  ];
  expect(problems(own)).toEqual([]);
  expect(MeterSchema.parse({ ...meter, own }).own).toEqual(own);
});

test.each<[string, unknown, string[]]>([
  [
    'a part nobody knows',
    [{ ...found, component: 'mood' }],
    ['own.0.component: must be one of: repeatability, operator, lot, meter, withinPerson'],
  ],
  ['no degrees of freedom', [{ ...found, degreesOfFreedom: 0 }], ['own.0.degreesOfFreedom: must be above 0']],
  ['swabs that never differ', [{ ...found, variance: 0 }], ['own.0.variance: a variance between single swabs is above 0']],
  ['a percentage for a variance', [{ ...found, component: 'lot', variance: 14 }], ['own.0.variance: must be at most 9']],
  ['an unknown field', [{ ...found, cv: 0.14 }], ['own.0.cv: is not a known field']],
  ['no such day', [{ ...found, reportedOn: '2026-02-30' }], ['own.0.reportedOn: must be a date like 2026-11-25']],
  ['one study counted twice', [found, found], ['own: a study gives each part of the noise once']],
])('%s is refused by name', (_, own, sentences) => {
  expect(problems(own)).toEqual(sentences);
});
