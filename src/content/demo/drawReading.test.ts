import { expect, test } from 'vitest';
import { chanceFrom } from './chance.ts';
import { drawReading } from './drawReading.ts';
import { DEMO_METER_SCALE } from './practice.ts';
import { type DrawnProfile, drawProfile } from './profile.ts';

const TODAY = '2026-11-25';
const AT = '2026-11-20T10:00:00.000Z';
const profileOf = (over: Partial<DrawnProfile>): DrawnProfile => ({
  ...drawProfile({ name: 'Test', ageYears: 40, traits: [] }, chanceFrom(1), TODAY),
  ...over,
});
const readOf = (profile: DrawnProfile, seed: number) => drawReading({ profile, startedAt: AT, today: TODAY }, chanceFrom(seed)).reading;
const readingsOf = (profile: DrawnProfile) => Array.from({ length: 400 }, (_, seed) => readOf(profile, seed));

test.each([
  ['far above the meter', Math.log(1e7), DEMO_METER_SCALE.highestRlu, 'at-least'],
  ['far below the meter', Math.log(0.5), DEMO_METER_SCALE.lowestRlu, 'at-most'],
])('%s, the meter shows its limit', (_, meanLogRlu, rlu, bound) => {
  const taken = readingsOf(profileOf({ meanLogRlu })).filter((reading) => reading.rlu !== undefined);
  expect(taken.length).toBeGreaterThan(300);
  for (const reading of taken) expect(reading).toMatchObject({ rlu, bound });
});

test('scatters about the own mean by the noise of meter and day together', () => {
  const logs = readingsOf(profileOf({ meanLogRlu: Math.log(3_000) })).flatMap(({ rlu }) => (rlu === undefined ? [] : [Math.log(rlu)]));
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const sd = Math.sqrt(logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / (logs.length - 1));
  // Day to day 1.45 as a factor, swab and meter cv 0.3: sqrt(0.372^2 + 0.294^2) = 0.474. With some 370 draws the sd is known to 3.7 %, the mean to 0.025: three of each.
  expect(sd).toBeGreaterThan(0.474 * 0.89);
  expect(sd).toBeLessThan(0.474 * 1.11);
  expect(Math.abs(mean - Math.log(3_000))).toBeLessThan(0.075);
});

test('no tooth to swab, no swab', () => {
  expect(readOf(profileOf({ isToothless: true }), 1)).toEqual({ notTaken: 'no-site' });
});
