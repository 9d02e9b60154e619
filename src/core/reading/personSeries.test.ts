import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { testMeter as meter } from '../../../test/testMeter.ts';
import { readingNoise as table } from '../../content/readingNoise.ts';
import { personSeries, type SeriesReading } from './personSeries.ts';
import { saySeries } from './saySeries.ts';
import type { Meter } from './types.ts';

/** ln 1.09 + ln 1.25 */
const SD = 0.5561663;
const on = (month: number, rlu: number | null, part: Partial<SeriesReading> = {}): SeriesReading => ({
  takenAt: `2026-${String(month).padStart(2, '0')}-01T09:00:00Z`,
  rlu,
  bound: 'exact',
  state: 'valid',
  meterId: 'a',
  operator: 'Asha',
  lotId: 'lot-1',
  ...part,
});
function seriesOf(readings: readonly SeriesReading[], of: Meter = meter) {
  const [series] = personSeries(readings, [of], table);
  if (series === undefined) throw new Error('a reading has a number');
  return series;
}
const trendOf = (readings: readonly SeriesReading[]) => {
  const { trend } = seriesOf(readings);
  if (!trend.ok) throw new Error(trend.reason);
  return trend.value;
};

describe('by hand', () => {
  test('geometric mean and its interval from the noise of the meter', () => {
    const { mean } = seriesOf([on(1, 2000), on(5, 8000)]);
    if (!mean.ok) throw new Error(mean.reason);
    expect(mean.value.rlu).toBeCloseTo(4000, 8);
    expect(Math.log(mean.value.highRlu / 4000)).toBeCloseTo((1.959964 * SD) / Math.SQRT2, 5);
    expect(Math.log(4000 / mean.value.lowRlu)).toBeCloseTo((1.959964 * SD) / Math.SQRT2, 5);
  });

  // Days 0, 31, 59 of 2026: x = -1/2, 31/59 - 1/2, 1/2; y = ln 2, ln 4, ln 16 thousands. Slope by least squares 2.06591284 (R 4.2.2, lm).
  test('the line through three readings', () => {
    const got = trendOf([on(1, 2000), on(2, 4000), on(3, 16_000)]);
    expect(got.days).toBe(59);
    expect(Math.log1p(got.change.fraction)).toBeCloseTo(2.06591284, 8);
    expect(Math.log1p(got.perMonthFraction)).toBeCloseTo((Math.log1p(got.change.fraction) * 30.4375) / 59, 10);
    // Sum of squares of x about its mean 0.500430911 (R); z for six looks 2.631038.
    const reach = (2.631038 * SD) / Math.sqrt(0.500430911);
    expect(Math.log1p(got.change.high) - Math.log1p(got.change.fraction)).toBeCloseTo(reach, 5);
    expect(got).toMatchObject({ verdict: 'within-noise', moreThanNoise: false });
    expect([got.band.length, got.band[0]?.atMs, got.band.at(-1)?.atMs]).toEqual([
      25,
      Date.parse('2026-01-01T09:00:00Z'),
      Date.parse('2026-03-01T09:00:00Z'),
    ]);
  });

  test('a clear fall, and readings that lie further from the line than noise has them', () => {
    expect(trendOf([on(1, 50_000), on(4, 9000), on(8, 1500), on(12, 200)]).verdict).toBe('fall');
    expect(trendOf([on(1, 300), on(4, 9000), on(8, 1500), on(12, 50_000)]).verdict).toBe('rise');
    expect(trendOf([on(1, 100), on(4, 50_000), on(8, 100), on(12, 50_000)]).moreThanNoise).toBe(true);
  });
});

describe('what is in it', () => {
  test('only what counts; what does not is hollow, and what has no number is nowhere', () => {
    const readings = [on(7, 9000), on(3, 90, { state: 'void' }), on(1, 2000, { state: 'flagged' }), on(5, null, { state: 'failed' })];
    const { counted, hollow, mean } = seriesOf(readings);
    expect([counted.map((r) => r.rlu), hollow.map((r) => r.rlu)]).toEqual([[2000, 9000], [90]]);
    expect(mean).toEqual(seriesOf([on(1, 2000), on(7, 9000)]).mean);
  });

  test('each meter apart, never across', () => {
    const other = { ...meter, id: 'b', name: 'Demo meter B' };
    const readings = [on(1, 2000), on(5, 3000), on(2, 400, { meterId: 'b' }), on(9, 7, { meterId: 'gone' })];
    const got = personSeries(readings, [meter, other, { ...meter, id: 'c' }], table);
    expect(got.map((s) => [s.meter.id, s.counted.length])).toEqual([
      ['a', 2],
      ['b', 1],
    ]);
    expect(got[0]?.mean).toEqual(seriesOf([on(1, 2000), on(5, 3000)]).mean);
  });

  test('a limit of the meter is a bound, not a number to average', () => {
    const bounded = seriesOf([on(1, 20_000), on(5, 60_000)]).mean;
    if (!bounded.ok) throw new Error(bounded.reason);
    expect(bounded.value.rlu).toBeGreaterThan(Math.sqrt(20_000 * 60_000));
    expect(seriesOf([on(1, 40), on(5, 40)]).mean).toEqual({ ok: false, reason: 'all-at-most' });
    expect(seriesOf([on(1, 60_000), on(5, 60_000)]).mean).toEqual({ ok: false, reason: 'all-at-least' });
    expect(seriesOf([on(1, 40), on(5, 60_000)]).mean.ok).toBe(true);
    expect(seriesOf([on(1, 90, { state: 'void' })]).mean).toEqual({ ok: false, reason: 'none-counted' });
    expect(seriesOf([on(1, 40), on(5, 60_000), on(9, 800)]).trend).toEqual({ ok: false, reason: 'too-few-exact' });
    expect(seriesOf([on(1, 400), on(5, 600)]).trend).toEqual({ ok: false, reason: 'too-few' });
    expect(trendOf([on(1, 60_000), on(4, 9000), on(8, 1500)]).moreThanNoise).toBe(null);
  });

  test('readings of one pair of hands count less where hands are known to differ', () => {
    const found = { studyId: 's', reportedOn: '2026-01-01', kind: 'hands' } as const;
    const measured: Meter = { ...meter, own: [{ component: 'operator', variance: 0.3, degreesOfFreedom: 20, ...found }] };
    const widthOf = (operators: readonly (string | null)[]) => {
      const { mean } = seriesOf(
        operators.map((operator, i) => on(i + 1, 4000, { operator })),
        measured,
      );
      return mean.ok ? Math.log(mean.value.highRlu / mean.value.lowRlu) : Number.NaN;
    };
    // Shared: (ln 1.09 + ln 1.25)/2 + hands; apart: half of both. Hands (2 ln 1.0225 + 20 x 0.3) / 22 = 0.274750.
    expect(widthOf(['Asha', 'Asha'])).toBeCloseTo(2 * 1.959964 * Math.sqrt(SD ** 2 / 2 + 0.27475), 4);
    expect(widthOf(['Asha', 'Ben'])).toBeCloseTo(2 * 1.959964 * Math.sqrt((SD ** 2 + 0.27475) / 2), 4);
    expect(widthOf([null, null])).toBeCloseTo(widthOf(['Asha', 'Ben']), 12);
  });

  test('a time that is none is refused by name', () => {
    expect(() => seriesOf([on(1, 400, { takenAt: 'yesterday' }), on(2, 500)])).toThrow(/takenAt/);
  });
});

test('in words', () => {
  expect(saySeries(seriesOf([on(1, 2000)]), table)).toEqual([]);
  expect(saySeries(seriesOf([on(1, 2000), on(5, 8000)]), table)).toEqual([
    'Geometric mean of the 2 readings that count: 4,000 RLU, 95 % interval 1,850 to 8,650 for this noise.',
  ]);
  const fall = saySeries(seriesOf([on(1, 50_000), on(4, 9000), on(8, 1500), on(12, 200), on(6, 90, { state: 'void' })]), table);
  expect(fall[1]).toMatch(
    /^Over 11 months the line through them falls by more than noise explains: it changes by between −100 % and −9\d %\./,
  );
  expect(fall.at(-1)).toBe('1 reading does not count and is in none of this.');
  const still = saySeries(seriesOf([on(1, 2000), on(2, 4000), on(3, 3000)]), table);
  expect(still[1]).toMatch(
    /^No trend that this method can see over 59 days: the line through them changes by between −\d+ % and \+[\d,]+ %\. Looked at/,
  );
  expect(saySeries(seriesOf([on(1, 40), on(2, 40)]), table)).toEqual([
    'No mean: all of the 2 readings that count stand at the lower limit of the meter.',
  ]);
  expect(saySeries(seriesOf([on(1, 100), on(4, 50_000), on(8, 100), on(12, 50_000)]), table)).toContain(
    'These readings lie further from the line than the noise said here explains: the interval is then too narrow.',
  );
});

const rlus = fc.oneof(fc.constantFrom(40, 41, 59_999, 60_000), fc.integer({ min: 40, max: 60_000 }));
const states = fc.constantFrom('valid', 'flagged', 'void', 'failed', 'not-taken');
const anyReadings = fc.array(
  fc.record({
    rlu: fc.option(rlus),
    state: states,
    hand: fc.option(fc.constantFrom('Asha', 'Ben')),
    month: fc.integer({ min: 1, max: 12 }),
  }),
  { minLength: 1, maxLength: 9 },
);

test('never gives what is no number, keeps every number it was given, and doubles where all readings double', () => {
  fc.assert(
    fc.property(anyReadings, (list) => {
      const readings = list.map(({ rlu, state, hand, month }) => on(month, rlu, { state, operator: hand }));
      for (const { counted, hollow, mean, trend } of personSeries(readings, [meter], table)) {
        expect(counted.length + hollow.length).toBe(readings.filter((r) => r.rlu !== null).length);
        expect(counted.every((r) => r.state === 'valid' || r.state === 'flagged')).toBe(true);
        if (mean.ok) expect(mean.value.lowRlu < mean.value.rlu && mean.value.rlu < mean.value.highRlu && mean.value.lowRlu > 0).toBe(true);
        if (!trend.ok) continue;
        const { change, band, verdict } = trend.value;
        expect(change.low <= change.fraction && change.fraction <= change.high && change.low >= -1).toBe(true);
        expect(verdict === 'rise').toBe(change.low > 0);
        expect(band.every((b) => b.lowRlu <= b.rlu && b.rlu <= b.highRlu && Number.isFinite(b.highRlu))).toBe(true);
      }
      const wide = { ...meter, lowestRlu: 1, highestRlu: 1e7 };
      const doubled = readings.map((r) => ({ ...r, rlu: r.rlu === null ? null : 2 * r.rlu }));
      const [once, twice] = [personSeries(readings, [wide], table)[0]?.mean, personSeries(doubled, [wide], table)[0]?.mean];
      if (once?.ok && twice?.ok) expect(twice.value.rlu / once.value.rlu).toBeCloseTo(2, 9);
    }),
  );
});
