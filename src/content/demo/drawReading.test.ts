import { expect, test } from 'vitest';
import { chanceFrom } from './chance.ts';
import { drawReading } from './drawReading.ts';
import { DEMO_METER_SCALE } from './practice.ts';
import { type DemoProfile, drawProfile } from './profile.ts';

const AT = '2026-11-20T10:00:00.000Z';
const profileOf = (over: Partial<DemoProfile>): DemoProfile => ({
  ...drawProfile({ name: 'Test', ageYears: 40, traits: [] }, chanceFrom(1), '2026-11-25'),
  ...over,
});
const readingsOf = (profile: DemoProfile) => Array.from({ length: 200 }, (_, seed) => drawReading(profile, AT, chanceFrom(seed)).reading);

test.each([
  ['far above the meter', Math.log(1e7), DEMO_METER_SCALE.highestRlu, 'at-least'],
  ['far below the meter', Math.log(0.5), DEMO_METER_SCALE.lowestRlu, 'at-most'],
])('%s, the meter shows its limit', (_, meanLogRlu, rlu, bound) => {
  const taken = readingsOf(profileOf({ meanLogRlu })).filter((reading) => reading.rlu !== undefined);
  expect(taken.length).toBeGreaterThan(150);
  for (const reading of taken) expect(reading).toMatchObject({ rlu, bound });
});

test('scatters about the own mean by the noise of meter and day together', () => {
  const logs = readingsOf(profileOf({ meanLogRlu: Math.log(3_000) })).flatMap(({ rlu }) => (rlu === undefined ? [] : [Math.log(rlu)]));
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const sd = Math.sqrt(logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / (logs.length - 1));
  // cv 0.25 and 0.35: sqrt(ln 1.0625 + ln 1.1225) = 0.42. With some 180 draws the sd is known to 5 %, the mean to 0.03: three of each.
  expect(sd).toBeGreaterThan(0.42 * 0.85);
  expect(sd).toBeLessThan(0.42 * 1.15);
  expect(Math.abs(mean - Math.log(3_000))).toBeLessThan(0.1);
});

test('no tooth to swab, no swab', () => {
  expect(drawReading(profileOf({ has: (trait) => trait === 'no-teeth' }), AT, chanceFrom(1)).reading).toEqual({ notTaken: 'no-site' });
});
