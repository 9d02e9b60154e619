import { describe, expect, test } from 'vitest';
import { createIdleTime } from './idleTime.ts';

const MINUTE = 60_000;

/** A computer whose wall clock and stopwatch are moved by hand, with a storage that its tabs share. */
function buildComputer(startMs = 1_000_000_000) {
  let wall = startMs;
  let steady = 5_000;
  let shared: string | null = null;
  return {
    pass: (ms: number) => {
      wall += ms;
      steady += ms;
    },
    sleep: (ms: number) => {
      wall += ms;
    },
    setClock: (byMs: number) => {
      wall += byMs;
    },
    share: (text: string | null) => {
      shared = text;
    },
    openTab: (hasStorage = true) => {
      const from = steady;
      return createIdleTime({
        wallMs: () => wall,
        steadyMs: () => steady - from,
        readShared: () => (hasStorage ? shared : null),
        writeShared: (at) => {
          if (hasStorage) shared = String(at);
        },
      });
    },
  };
}

test('without a key and without an arrival nothing is known, which counts as long ago', () => {
  expect(buildComputer().openTab().idleMs()).toBe(Number.POSITIVE_INFINITY);
});

describe('the clock', () => {
  test.each([
    ['as it was', 0],
    ['set back by a year', -365 * 24 * 60 * MINUTE],
    ['set back by half a minute', -MINUTE / 2],
  ])('%s: the time since the last key is what the stopwatch says', (_name, byMs) => {
    const computer = buildComputer();
    const idle = computer.openTab();
    idle.markActive();
    computer.pass(3 * MINUTE);
    computer.setClock(byMs);
    computer.pass(2 * MINUTE);
    expect(idle.idleMs()).toBe(5 * MINUTE);
    idle.markActive();
    computer.pass(MINUTE);
    expect(idle.idleMs()).toBe(MINUTE);
  });

  test('asleep, when the stopwatch stands still: the time on the wall counts', () => {
    const computer = buildComputer();
    const idle = computer.openTab();
    idle.markActive();
    computer.sleep(8 * 60 * MINUTE);
    expect(idle.idleMs()).toBe(8 * 60 * MINUTE);
  });
});

describe('an arrival', () => {
  test('counts as a key, by what the server says of its length and by no time of the server', () => {
    const computer = buildComputer();
    const idle = computer.openTab();
    idle.noteArrival('1970-01-01T00:00:00.000Z', 2 * MINUTE);
    computer.pass(MINUTE);
    expect(idle.idleMs()).toBe(3 * MINUTE);
  });

  test('read again it is no new one; another one is', () => {
    const computer = buildComputer();
    const idle = computer.openTab();
    idle.noteArrival('first', 0);
    computer.pass(4 * MINUTE);
    // A server whose clock was set back says 0 again and again.
    idle.noteArrival('first', 0);
    expect(idle.idleMs()).toBe(4 * MINUTE);
    idle.noteArrival('second', 0);
    expect(idle.idleMs()).toBe(0);
  });

  test('long ago takes nothing from a later key', () => {
    const idle = buildComputer().openTab();
    idle.markActive();
    idle.noteArrival('first', 60 * MINUTE);
    expect(idle.idleMs()).toBe(0);
  });
});

describe('other tabs', () => {
  test('a key in one counts in the other, and after a reload', () => {
    const computer = buildComputer();
    const [one, two] = [computer.openTab(), computer.openTab()];
    one.markActive();
    two.markActive();
    computer.pass(4 * MINUTE);
    two.markActive();
    computer.pass(MINUTE);
    expect(one.idleMs()).toBe(MINUTE);
    expect(computer.openTab().idleMs()).toBe(MINUTE);
  });

  test('a key in one counts in the other after the clock was set back too', () => {
    const computer = buildComputer();
    const [one, two] = [computer.openTab(), computer.openTab()];
    one.markActive();
    computer.pass(4 * MINUTE);
    computer.setClock(-60 * MINUTE);
    two.markActive();
    computer.pass(MINUTE);
    expect(one.idleMs()).toBe(MINUTE);
  });

  test('a time that lies ahead, from before the clock was set back, counts as now and only once', () => {
    const computer = buildComputer();
    computer.openTab().markActive();
    computer.setClock(-60 * MINUTE);
    const idle = computer.openTab();
    expect(idle.idleMs()).toBe(0);
    computer.pass(7 * MINUTE);
    expect(idle.idleMs()).toBe(7 * MINUTE);
  });

  test('what is no time is no key; a closed storage leaves the page its own', () => {
    const computer = buildComputer();
    computer.share('soon');
    expect(computer.openTab().idleMs()).toBe(Number.POSITIVE_INFINITY);
    const alone = computer.openTab(false);
    alone.markActive();
    computer.pass(MINUTE);
    alone.markActive();
    expect(alone.idleMs()).toBe(0);
  });
});
