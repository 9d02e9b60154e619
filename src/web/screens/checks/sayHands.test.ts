import { describe, expect, test } from 'vitest';
import type { HandsLine } from '../../../core/checks/compareHands.ts';
import { sayFunnel, sayMoving } from './sayHands.ts';

const line = (operator: string, more: Partial<HandsLine> = {}): HandsLine => ({
  operator,
  controls: 30,
  state: 'in-line',
  ratio: 1,
  funnel: { low: 0.9, high: 1.1 },
  isApart: false,
  isApartLately: false,
  points: [],
  says: '',
  ...more,
});
const few = line('Wim', { state: 'too-few', controls: 5 });
const apart = line('Una', { state: 'other-wise', ratio: 1.24, isApart: true });

describe('hands in one sentence', () => {
  test.each([
    { what: 'all alike', lines: [line('Ines'), line('Tomas')], words: 'The controls of Ines and Tomas differ no more than chance brings.' },
    {
      what: 'one with too few',
      lines: [line('Ines'), line('Tomas'), few],
      words: 'The controls of Ines and Tomas differ no more than chance brings. Of 1 more member there are too few to say.',
    },
    {
      what: 'one with enough',
      lines: [line('Ines'), few, few],
      words: 'The controls of Ines lie where chance alone would put them. Of 2 more members there are too few to say.',
    },
    { what: 'none with enough', lines: [few, few], words: 'No member has 8 controls yet, so nothing is said of hands.' },
    {
      what: 'one apart',
      lines: [line('Ines'), apart, few],
      words:
        'Most controls do not depend on whose hands took them, but those of Una are 24 % higher than all together, more than chance brings. Swab side by side once and see what differs.',
    },
  ])('all together: $what', ({ lines, words }) => {
    expect(sayFunnel(lines)).toBe(words);
  });

  test('one member: too few, as the others, and otherwise of late with the average as it is now', () => {
    expect(sayMoving(few)).toBe('Wim has 5 so far; 8 controls are needed before anything is said.');
    expect(sayMoving(line('Ines'))).toMatch(/^The latest controls of Ines differ from those of all no more than chance brings/);
    const moving = { ratio: 0.81, low: 0.9, high: 1.1 };
    const points = [
      { id: 'a', takenAt: '2026-01-01T08:00:00.000Z', ratio: 0.8, moving },
      { id: 'b', takenAt: '2026-01-02T08:00:00.000Z', ratio: 9 },
    ];
    expect(sayMoving(line('Una', { state: 'other-wise', isApartLately: true, points }))).toMatch(
      /^The latest controls of Una are 19 % lower than all together, more than chance brings\. Swab side by side/,
    );
  });
});
