import { describe, expect, it } from 'vitest';
import type { StudyPersonLine, StudyView } from '../../../../api/swabChecks.ts';
import type { Study } from '../../../../core/checks/study.ts';
import { peopleOf, sayNotChecked } from './sayPeople.ts';

const record = (people: readonly StudyPersonLine[], kind: Study['kind'] = 'paired-days'): Pick<StudyView, 'study' | 'people'> => ({
  study: {
    id: 's',
    kind,
    meterId: 'm',
    lotIds: [],
    plannedBy: 'Ines',
    plannedAt: '2026-03-01T09:00:00Z',
    design: { medium: 'people', parts: 3, operators: [], replicates: 2, seed: 1 },
    runs: ['Person 10', 'Person 2', 'Person 1', 'Person 2', 'Person 1', 'Person 10'].map((part, index) => ({ index, part, replicate: 1 })),
    state: 'running',
  },
  people,
});
const linked = (part: string, name: string | null = 'Ada') => ({ part, name, version: 1 });

describe('the people of a study', () => {
  it('stand once each in the order of their labels, with the link that was made or taken away', () => {
    expect(peopleOf(record([linked('Person 2'), linked('Person 10', null)]))).toEqual([
      { part: 'Person 1', name: null, version: 0 },
      { part: 'Person 2', name: 'Ada', version: 1 },
      { part: 'Person 10', name: null, version: 1 },
    ]);
  });

  it.each([
    ['nobody is linked', [], /for these people, because no chart is linked: whoever takes the swab asks first/],
    ['one is linked', [linked('Person 2')], /for Person 1 and Person 10, because/],
    ['a link was taken away', [linked('Person 1'), linked('Person 2', null), linked('Person 10')], /for Person 2, because/],
  ])('where %s, it says for whom nothing can be checked, and who must', (_, people, says) => {
    expect(sayNotChecked(record(people))).toMatch(says);
    expect(sayNotChecked(record(people))).not.toContain('Ada');
  });

  it('nothing where everybody is linked, or where nobody is swabbed', () => {
    expect(sayNotChecked(record(['Person 1', 'Person 2', 'Person 10'].map((part) => linked(part))))).toBeUndefined();
    expect(sayNotChecked(record([], 'lots'))).toBeUndefined();
  });
});
