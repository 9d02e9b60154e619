import { describe, expect, test } from 'vitest';
import { readingNoise } from '../../src/content/readingNoise.ts';
import { falseChangeShare, LOOK_RULES, seriesShares } from '../reference/statistics/repeatedLooks.ts';

/** EBBLINE_LONG=1: a standard error of 0.03 in 100. */
const people = process.env.EBBLINE_LONG === '1' ? 400_000 : 8_000;

describe('people whose level never changes, six readings each', () => {
  const threeSe = 3 * Math.sqrt((0.05 * 0.95) / people);

  test.each(LOOK_RULES)('%s: at most the stated share is told of a change', (rule) => {
    const share = falseChangeShare({ people, seed: 1, table: readingNoise, rule, hands: 'one' });
    expect(share).toBeLessThan(0.05 + threeSe);
    // Not so wide that nothing could ever be seen.
    expect(share).toBeGreaterThan(0.03);
  });

  test('also where hands and lots change from visit to visit', () => {
    const share = falseChangeShare({ people, seed: 2, table: readingNoise, rule: 'last', hands: 'changing' });
    expect(share).toBeLessThan(0.05 + threeSe);
    expect(share).toBeGreaterThan(0.02);
  });

  test('a limit for one comparison alone would tell three times as many', () => {
    const once = { ...readingNoise, looks: { ...readingNoise.looks, visits: 2 } };
    expect(falseChangeShare({ people, seed: 3, table: once, rule: 'last', hands: 'one' })).toBeGreaterThan(0.15);
  });
});

test('a trend told after each of six readings keeps the stated share, and the interval of the mean holds the level 95 times in 100', () => {
  const persons = people / 16;
  const { toldOfTrend, meanHeld } = seriesShares({ people: persons, seed: 4, table: readingNoise });
  const se = Math.sqrt((0.05 * 0.95) / persons);
  expect(toldOfTrend).toBeLessThan(0.05 + 3 * se);
  expect(toldOfTrend).toBeGreaterThan(0.01);
  expect(Math.abs(meanHeld - 0.95)).toBeLessThan(4 * se);
});
