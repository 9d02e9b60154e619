import { expect, test } from 'vitest';
import { sayConflict } from './sayConflict.ts';

const tasks = { id: 'tasks', says: 'at most 3 tasks a day' };
const kidney = {
  id: 'C21 kidney disease: leaves the body more slowly',
  says: 'kidney disease: leaves the body more slowly',
  private: true,
};

test('each constraint, and what would resolve it; a rule of safety is not for changing', () => {
  const said = sayConflict(
    {
      needs: ['sweetener', 'fluoride-base'],
      constraints: [
        tasks,
        kidney,
        { id: 'shelf sweetener', says: 'nothing else on the shelf is for this need (sweetener)' },
        { id: 'signed gel', says: 'Gel is signed' },
        { id: 'C05 not known yet: able to spit', says: 'not known yet: able to spit' },
      ],
    },
    false,
  );
  expect(said.headline).toBe('Sweetener and fluoride base cannot all be met');
  expect(said.because).toHaveLength(5);
  expect(said.resolvedBy).toEqual([
    'more tasks a day accepted',
    'another pack for sweetener on the shelf',
    'the signature taken back',
    'the missing answer asked',
  ]);
});

test('what is private is not read out, and a rule alone has no way out', () => {
  expect(sayConflict({ needs: ['fluoride-extra'], constraints: [tasks, kidney] }, true).because).toEqual([tasks]);
  expect(sayConflict({ needs: ['fluoride-extra'], constraints: [kidney] }, false)).toEqual({
    headline: 'Fluoride extra cannot be met',
    because: [kidney],
    resolvedBy: [],
  });
});
