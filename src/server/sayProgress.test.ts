import { expect, test } from 'vitest';
import { sayProgress } from './sayProgress.ts';

/** What is said while 10 steps take the given time each. */
function saidWhile(stepMs: number): readonly string[] {
  const said: string[] = [];
  let timeMs = Date.parse('2026-11-25T09:00:00.000Z');
  const progress = sayProgress('Making it', { now: () => new Date(timeMs).toISOString(), say: (line) => said.push(line) });
  for (let done = 1; done <= 10; done += 1) {
    timeMs += stepMs;
    progress({ done, of: 10 });
  }
  return said;
}

test.each([
  ['what is done within a second is not talked about', 99, []],
  ['after a second it is said, and not again before two more', 350, ['Making it ... 30 %', 'Making it ... 90 %']],
  ['the end is never said as progress', 2_500, [10, 20, 30, 40, 50, 60, 70, 80, 90].map((percent) => `Making it ... ${percent} %`)],
])('%s', (_, stepMs, expected) => expect(saidWhile(stepMs)).toEqual(expected));
