import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { testMeter as meter } from '../../../test/testMeter.ts';
import { readingNoise } from '../../content/readingNoise.ts';
import type { ControlSpan } from '../checks/controlSpan.ts';
import { type AssessReadingInput, assessReading } from './assessReading.ts';
import type { Meter, PastReading, SwabCondition, SwabReading } from './types.ts';

const source = { key: 'test', status: 'proposal' } as const;
const conditions: readonly SwabCondition[] = [
  { id: 'once-in-24-h', label: '', failing: 'not-counted', unknown: 'flag', limit: 24, limitUnit: 'h', source },
  { id: 'before-cleaning', label: '', failing: 'not-counted', unknown: 'flag', source },
  { id: 'lot-in-date', label: '', failing: 'not-counted', unknown: 'flag', source },
  { id: 'meter-range', label: '', failing: 'not-counted', unknown: 'flag', source },
  { id: 'site', label: '', failing: 'not-counted', unknown: 'flag', source },
  { id: 'trained-operator', label: '', failing: 'flag', unknown: 'say', source },
  { id: 'since-eating', label: '', failing: 'flag', unknown: 'say', limit: 60, limitUnit: 'min', source },
  { id: 'since-rinsing', label: '', failing: 'flag', unknown: 'say', limit: 60, limitUnit: 'min', source },
];
const good: SwabReading = {
  takenAt: '2026-07-03T10:36:00+01:00',
  rlu: 5150,
  lotId: 'lot-1',
  operator: { name: 'Asha', trained: true },
  site: 'lower-front-tongue-side',
  beforeCleaning: true,
  minutesSinceEating: 90,
  minutesSinceRinsing: 60,
};
const past: PastReading = { takenAt: '2026-03-03T09:00:00Z', rlu: 4800, bound: 'exact', state: 'valid', meterId: 'a' };
const input = (reading: SwabReading | undefined, over: Partial<AssessReadingInput> = {}): AssessReadingInput => ({
  reading,
  meter,
  lots: [{ id: 'lot-1', name: '24-118', expiresOn: '2026-07-03' }],
  pastReadings: [],
  onDate: '2026-07-03',
  conditions,
  noise: readingNoise,
  ...over,
});
const assess = (changes: Partial<SwabReading> = {}, over: Partial<AssessReadingInput> = {}) =>
  assessReading(input({ ...good, ...changes }, over));

describe('a reading near the cut-off', () => {
  const got = assess();

  it('is counted and not called', () => {
    expect(got).toMatchObject({ state: 'valid', counted: true, verdict: 'too-close', rlu: 5150, bound: 'exact', daysToDecide: null });
    expect(got.headline).toBe('5,150 RLU. Too close to call.');
    expect(got.conditions.every((c) => c.state === 'met')).toBe(true);
  });

  it('says what another swab could do, what to do today, and the chance with its limits', () => {
    expect(got.sentences).toContain('Another swab would settle it about 1 time in 4.');
    expect(got.sentences.join(' ')).toContain('swabbing will not settle this');
    expect(got.sentences).toContain('Decide on findings today; swab again at the next planned visit.');
    expect(got.sentences).toContain(
      "Allowing for swab noise alone, 76 in 100 that the plaque sampled at 10:36 was above this meter's cut-off. Day-to-day change comes on top. The cut-off has not been shown to predict decay.",
    );
    expect(got.sentences).toContain(
      'Swab noise of 30 % is assumed, not measured here. Differences between hands and between swab lots are not known here and not in it.',
    );
  });

  it('says less when another swab would decide it more often than not, or the noise was measured', () => {
    const near = assess({ rlu: 6790 }, { meter: { ...meter, cvAnalyticalAssumed: false } }).sentences.join(' ');
    expect(near).toContain('would decide it about 3 times in 4.');
    expect(near).not.toContain('swabbing will not settle this');
    expect(near).not.toContain('assumed');
  });
});

test.each([
  [12_400, 'above', '12,400 RLU. Above the cut-off.', 'more than 99 in 100'],
  [900, 'below', '900 RLU. Below the cut-off.', 'less than 1 in 100'],
  [6900, 'above', '6,900 RLU. Above the cut-off.', '95 in 100'],
])('%s RLU is %s', (rlu, verdict, headline, chance) => {
  const got = assess({ rlu });
  expect(got).toMatchObject({ verdict, headline, counted: true });
  expect(got.sentences.join(' ')).toContain(chance);
  expect(got.sentences.join(' ')).not.toMatch(/Another swab|Decide on findings/);
});

describe("a number at the meter's limit", () => {
  test.each([
    [60_000, 'at-least', 'above', '60,000 RLU or more. Above the cut-off.'],
    [40, 'at-most', 'below', '40 RLU or less. Below the cut-off.'],
  ])('%s is %s', (rlu, bound, verdict, headline) => {
    const got = assess({ rlu, bound: 'exact' });
    expect(got).toMatchObject({ bound, verdict, headline, counted: true, interval: undefined, probabilityAbove: undefined });
    expect(got.sentences.join(' ')).toContain('has not been shown to predict decay');
    expect(got.sentences.join(' ')).not.toMatch(/in 100/);
  });

  it('may leave the verdict open', () => {
    const got = assess({ rlu: 60_000 }, { meter: { ...meter, cutoffRlu: 55_000 } });
    expect(got).toMatchObject({ verdict: undefined, counted: true });
    expect(got.headline).toMatch(/too near the cut-off to call/);
    expect(got.sentences).toContain('Decide on findings today; swab again at the next planned visit.');
  });

  it('of 0 on a meter that begins at 0 is below', () => {
    const got = assess({ rlu: 0 }, { meter: { ...meter, lowestRlu: 0 }, pastReadings: [past] });
    expect(got).toMatchObject({ bound: 'at-most', verdict: 'below', headline: '0 RLU. Below the cut-off.', change: { verdict: 'fall' } });
  });
});

describe('conditions', () => {
  const nightBefore: PastReading = { ...past, takenAt: '2026-07-02T11:00:00+01:00' };
  test.each<[string, Partial<SwabReading>, Partial<AssessReadingInput>, string]>([
    ['after cleaning', { beforeCleaning: false }, {}, 'Not counted: taken after cleaning, polishing or probing.'],
    ['another site', { site: 'other' }, {}, 'Not counted: taken at another site.'],
    ['an old lot', { takenAt: '2026-07-04T09:00:00+01:00' }, {}, 'Not counted: lot 24-118 was past its date, 3 July 2026.'],
    ['a second swab in 24 hours', {}, { pastReadings: [nightBefore] }, 'Not counted: taken 23 hours after the last swab.'],
    [
      'a second swab in 24 hours, beside older and later ones',
      {},
      { pastReadings: [past, nightBefore, { ...past, takenAt: '2026-08-01T09:00:00Z' }] },
      'Not counted: taken 23 hours after the last swab.',
    ],
    [
      'a second swab, the first not counted',
      {},
      { pastReadings: [{ ...past, state: 'void', takenAt: '2026-07-03T09:00:00Z' }] },
      'Not counted: taken 36 minutes after the last swab.',
    ],
    ['a swab for a study in 24 hours', {}, { studySwabs: [nightBefore] }, 'Not counted: taken 23 hours after the last swab.'],
    [
      'two at once',
      { beforeCleaning: false, site: 'other' },
      {},
      'Not counted: taken after cleaning, polishing or probing; taken at another site.',
    ],
  ])('%s: the number decides nothing', (_what, changes, over, headline) => {
    const got = assess(changes, over);
    expect(got).toMatchObject({ state: 'void', counted: false, headline, rlu: 5150 });
    expect([got.verdict, got.probabilityAbove, got.interval, got.change]).toEqual([undefined, undefined, undefined, undefined]);
    expect(got.sentences).toContain('The number, 5,150 RLU, stays on the record and decides nothing.');
  });

  test.each<[string, Partial<SwabReading>, string]>([
    ['an untrained operator', { operator: { name: 'Ben', trained: false } }, 'Counted, with caution: operator not yet trained for swabs.'],
    ['a meal shortly before', { minutesSinceEating: 59.5 }, 'Counted, with caution: taken 59 minutes after eating.'],
    ['site not noted', { site: undefined }, 'Counted, with caution: site not noted.'],
    ['lot not noted', { lotId: undefined }, 'Counted, with caution: lot not noted.'],
    ['lot not on record', { lotId: 'x' }, 'Counted, with caution: lot not on record.'],
    ['cleaning not noted', { beforeCleaning: undefined }, 'Counted, with caution: not noted whether before cleaning.'],
  ])('%s: counted with a caution', (_what, changes, sentence) => {
    const got = assess(changes);
    expect(got).toMatchObject({ state: 'flagged', counted: true, verdict: 'too-close' });
    expect(got.sentences).toContain(sentence);
  });

  it('what may go unsaid is mentioned and leaves the reading valid', () => {
    const got = assess({ minutesSinceRinsing: undefined });
    expect(got.state).toBe('valid');
    expect(got.sentences).toContain('Also: time since rinsing not noted.');
    expect(got.conditions.find((c) => c.id === 'since-rinsing')?.state).toBe('unknown');
  });

  it('exactly 24 hours and exactly 60 minutes are enough', () => {
    const got = assess({ minutesSinceEating: 60 }, { pastReadings: [{ ...past, takenAt: '2026-07-02T09:36:00Z' }] });
    expect(got.state).toBe('valid');
  });

  it('a swab for a study is never what a change is told from, and its time is checked by name', () => {
    const got = assess({}, { studySwabs: [{ takenAt: '2026-07-02T09:36:00Z' }] });
    expect(got).toMatchObject({ state: 'valid', change: undefined });
    expect(got.conditions.find(({ id }) => id === 'once-in-24-h')?.says).toBe('last swab on 2 July 2026');
    expect(() => assess({}, { studySwabs: [{ takenAt: '2026-07-02' }] })).toThrow(/^studySwabs\.0\.takenAt must be a time with its zone/);
  });

  it('without a time, a swab that may be within 24 hours is unknown, an older one is not', () => {
    expect(assess({ takenAt: undefined }, { pastReadings: [nightBefore] })).toMatchObject({ state: 'flagged', counted: true });
    expect(assess({ takenAt: undefined }, { pastReadings: [past] }).state).toBe('valid');
    expect(assess({ takenAt: undefined }).sentences.join(' ')).toContain("that the plaque sampled was above this meter's cut-off");
  });

  it('a swab that seems to come later within 24 hours is a clock set back, not an earlier day', () => {
    const later = { ...past, takenAt: '2026-07-03T12:36:00+01:00' };
    const got = assess({}, { pastReadings: [past, later] });
    expect(got.state).toBe('flagged');
    expect(got.sentences.join(' ')).toContain('the clock may have been set back');
    expect(assess({}, { pastReadings: [later, { ...past, takenAt: '2026-07-03T09:30:00+01:00' }] }).state).toBe('void');
    expect(assess({}, { pastReadings: [past, { ...past, takenAt: '2026-07-04T10:36:00+01:00' }] }).state).toBe('valid');
  });

  it('dates the lot in the zone of the practice', () => {
    const lateUtc = { takenAt: '2026-07-03T23:30:00Z' };
    expect(assess(lateUtc, { timeZone: 'Europe/London' }).state).toBe('void');
    expect(assess(lateUtc, { timeZone: 'America/New_York' }).state).toBe('valid');
  });

  it('refuses a table that it cannot check', () => {
    const unknown: SwabCondition = { id: 'moon', label: '', failing: 'flag', unknown: 'say', source };
    expect(() => assess({}, { conditions: [unknown] })).toThrow(/moon/);
    expect(() => assess({}, { conditions: [{ ...unknown, id: 'since-eating' }] })).toThrow(/limit/);
  });
});

describe('the control of the meter and lot', () => {
  const withControl: readonly SwabCondition[] = [
    ...conditions,
    { id: 'control-in-line', label: '', failing: 'not-counted', unknown: 'list', source },
  ];
  const span: ControlSpan = {
    meterId: 'a',
    lotId: 'lot-1',
    controlId: 'c1',
    from: '2026-07-03T07:30:00.000Z',
    state: 'out',
    says: 'control rule 2 of 6: one far too high',
  };
  const under = (controls: AssessReadingInput['controls'], changes: Partial<SwabReading> = {}) =>
    assess(changes, { conditions: withControl, controls, timeZone: 'Europe/London' });
  const out = 'the control of 3 July 2026, 08:30, was out of limits (control rule 2 of 6: one far too high)';

  it('stops a reading while it is out, and the number stays', () => {
    expect(under([span])).toMatchObject({ state: 'void', counted: false, rlu: 5150, headline: `Not counted: ${out}.` });
  });

  it('with an override lets it count, with who and why', () => {
    const override = { by: 'Ines Marrow', at: '2026-07-03T07:40:00.000Z', reason: 'came from far' };
    const got = under([{ ...span, override }]);
    expect(got).toMatchObject({ state: 'flagged', counted: true, verdict: 'too-close' });
    expect(got.sentences).toContain(`Counted, with caution: ${out}; Ines Marrow let readings count that day: came from far.`);
  });

  it.each<[string, readonly ControlSpan[], boolean]>([
    ['in line again before the swab', [span, { ...span, from: '2026-07-03T09:00:00.000Z', state: 'in-control' }], true],
    ['out only after the swab', [{ ...span, from: '2026-07-03T09:36:01.000Z' }], true],
    ['of another lot', [{ ...span, lotId: 'lot-2' }], true],
    ['of another meter', [{ ...span, meterId: 'b' }], true],
    ['a warning alone', [{ ...span, state: 'warning' }], true],
    ['without a target yet', [{ ...span, state: 'no-target' }], true],
    ['out at the very moment of the swab', [{ ...span, from: '2026-07-03T09:36:00.000Z' }], false],
  ])('%s', (_, controls, counted) => {
    expect(under(controls).counted).toBe(counted);
  });

  it('after a stop of which nobody noted what was done, the reading counts with caution', () => {
    const got = under([{ ...span, state: 'in-control', says: '', notResolvedSince: '2026-07-02T07:30:00.000Z' }]);
    expect(got).toMatchObject({ state: 'flagged', counted: true });
    expect(got.sentences.join(' ')).toMatch(/Counted, with caution: the control of 3 July 2026, 08:30, was in line again after a stop/);
  });

  it('put under question because of a later control, it decides nothing and says who and why', () => {
    const question = { by: 'Ines Marrow', at: '2026-07-04T07:30:00.000Z', reason: 'the bottle stood open (control rule 2 of 6)' };
    expect(under([{ ...span, state: 'in-control', says: '', question }])).toMatchObject({
      state: 'void',
      counted: false,
      rlu: 5150,
      headline:
        'Not counted: a later control was out of limits, and Ines Marrow put this reading under question: the bottle stood open (control rule 2 of 6).',
    });
  });

  it('without a time the newest control of the day decides', () => {
    expect(under([span], { takenAt: undefined }).counted).toBe(false);
  });

  it('is unknown, and no sentence speaks of it, where none is on record', () => {
    const condition = (got: ReturnType<typeof under>) => got.conditions.at(-1);
    expect(under(undefined)).toMatchObject({ state: 'valid', sentences: assess().sentences });
    expect(condition(under(undefined))).toEqual({
      id: 'control-in-line',
      state: 'unknown',
      says: 'control of this meter and lot not known',
    });
    expect(condition(under([]))).toMatchObject({ state: 'unknown', says: 'no control on record for this meter and lot' });
  });
});

describe('time from activation to reading', () => {
  const timed: readonly SwabCondition[] = [
    ...conditions,
    { id: 'time-to-reading', label: '', failing: 'flag', unknown: 'list', limit: 3, limitUnit: 'min', source },
  ];
  const at = (activatedAt: string | undefined, changes: Partial<SwabReading> = {}) => {
    const got = assess({ activatedAt, ...changes }, { conditions: timed });
    return { ...got, timed: got.conditions.find((c) => c.id === 'time-to-reading') };
  };

  // The invented meter counts down 25 s; the reading is at 10:36:00.
  test.each([
    ['10:35:35', 'met', 'read 25 seconds after activation'],
    ['10:35:36', 'failing', 'read 24 seconds after activation, before the count-down of 25 seconds was over'],
    ['10:36:00', 'failing', 'read 0 seconds after activation, before the count-down of 25 seconds was over'],
    ['10:32:35', 'met', 'read 3 minutes after activation'],
    ['10:32:34', 'failing', 'read 3 minutes after activation'],
    ['08:30:00', 'failing', 'read 2 hours after activation'],
  ] as const)('activated at %s: %s', (time, state, says) => {
    const got = at(`2026-07-03T${time}+01:00`);
    expect(got.timed).toEqual({ id: 'time-to-reading', state, says });
    expect(got).toMatchObject({ counted: true, state: state === 'met' ? 'valid' : 'flagged' });
    if (state === 'failing') expect(got.sentences).toContain(`Counted, with caution: ${says}.`);
  });

  it('is unknown, listed and not spoken of, where the activation was not noted or the clock was set back', () => {
    expect(at(undefined).timed).toMatchObject({ state: 'unknown', says: 'time of activation not noted' });
    const setBack = at('2026-07-03T10:36:01+01:00');
    expect(setBack.timed).toMatchObject({ state: 'unknown', says: expect.stringContaining('the clock was set back') });
    expect(setBack.state).toBe('valid');
    expect(setBack.sentences.join(' ')).not.toMatch(/activation|clock|-1/);
    expect(at('2026-07-03T10:35:00+01:00', { takenAt: undefined }).timed?.state).toBe('unknown');
  });

  it('needs a time with its zone', () => expect(() => at('2026-07-03T10:35:00')).toThrow(/reading\.activatedAt/));
});

describe('no number', () => {
  it('is complete, without nagging', () => {
    for (const reading of [undefined, { notTaken: 'declined' } as const]) {
      const got = assessReading(input(reading));
      expect(got).toMatchObject({ state: 'not-taken', counted: false, conditions: [] });
      expect(got.sentences).toEqual(['The visit is complete without a reading.']);
    }
    expect(assessReading(input({ notTaken: 'no-stock' })).headline).toBe('No swab today: no swabs in stock.');
    const other = assessReading(input({ notTaken: 'other', notTakenNote: 'fell asleep' }));
    expect(other.headline).toBe('No swab today: another reason.');
    expect(other.sentences[0]).toBe('Noted: fell asleep.');
  });

  it('from a failed swab is no swab', () => {
    const got = assess({ rlu: undefined, failed: true });
    expect(got).toMatchObject({ state: 'failed', counted: false, headline: 'Swab failed: no number.' });
    expect(got.rlu).toBe(undefined);
    expect(got.sentences).toEqual([
      'A failed swab is not repeated: the next swab is for the next planned visit, 24 hours or more from now.',
      'The visit is complete without a reading.',
    ]);
  });

  it('says before the swab is read what would not be counted', () => {
    const got = assess({ rlu: undefined, beforeCleaning: false });
    expect(got).toMatchObject({ state: 'not-taken', headline: 'No number yet.' });
    expect(got.sentences[0]).toBe('A number would not be counted: taken after cleaning, polishing or probing.');
  });
});

it('without a meter there is no verdict', () => {
  const got = assess({}, { meter: undefined });
  expect(got).toMatchObject({
    state: 'flagged',
    counted: false,
    headline: '5,150 RLU. No verdict: the meter is not named.',
  });
  expect(got.verdict).toBe(undefined);
});

describe('change', () => {
  const withPast = (rlu: number, pasts: readonly PastReading[], over: Partial<Meter> = {}) =>
    assess({ rlu }, { pastReadings: pasts, meter: { ...meter, ...over } });

  // Limits at cv 0.3 and 0.5: s^2 = ln 1.09 + ln 1.25 = 0.309321. Five comparisons of six readings, 1 - 0.95^(1/5) = 0.010206 each:
  // z = 2.5688; exp(2.5688 x sqrt 2 x 0.556166) = 7.54: rise 654 %, fall 87 %.
  it('within noise is no change that this method can see, and says what is assumed', () => {
    const got = withPast(5150, [past], { cvAnalyticalAssumed: false });
    expect(got.change).toMatchObject({ verdict: 'within-noise', sincePast: past });
    expect(got.sentences).toContain('No change that this method can see since 3 March 2026 (4,800 RLU).');
    expect(got.sentences).toContain(
      'Noise alone explains a rise of up to 654 % or a fall of up to 87 %: repeatability 30 % (measured) and day-to-day variation 50 % (assumed). Differences between hands and between swab lots are not known here and not in it. Over 6 readings in a row, noise alone passes a limit at least once in at most 1 of 20 people, if the noise is as said.',
    );
  });

  it('a halving is within noise', () => expect(withPast(2400, [past]).change?.verdict).toBe('within-noise'));

  it('beyond noise is said as higher or lower, never as better', () => {
    const fall = withPast(600, [past]);
    expect(fall.change?.verdict).toBe('fall');
    expect(fall.sentences.join(' ')).toContain('Lower than on 3 March 2026 (4,800 RLU), by more than noise explains.');
    expect(fall.sentences).toContain('High first readings tend to fall without treatment; part of this fall is that.');
    const rise = withPast(40_000, [past]);
    expect(rise.change?.verdict).toBe('rise');
    expect(rise.sentences.join(' ')).not.toMatch(/High first|improve|better/);
  });

  it('leaves out of the limit what the two readings share, and says no more of it', () => {
    const same = { ...past, operator: 'Asha', lotId: 'lot-1' };
    expect(withPast(5150, [same]).sentences.join(' ')).toContain('day-to-day variation 50 % (assumed). Over 6 readings');
    const otherLot = withPast(5150, [{ ...same, lotId: 'lot-0' }]).sentences.join(' ');
    expect(otherLot).toContain('day-to-day variation 50 % (assumed). Differences between swab lots are not known here and not in it.');
  });

  it('compares only with the most recent counted reading of the same meter', () => {
    const older = { ...past, takenAt: '2025-09-01T09:00:00Z', rlu: 700 };
    const notCounted: PastReading = { ...past, takenAt: '2026-06-01T09:00:00Z', state: 'void' };
    const otherMeter = { ...past, takenAt: '2026-06-02T09:00:00Z', meterId: 'b' };
    const later = { ...past, takenAt: '2026-09-01T09:00:00Z', rlu: 999 };
    expect(withPast(5150, [older, past, notCounted, otherMeter, later]).change?.sincePast).toEqual(past);
  });

  it('does not compare across meters', () => {
    const got = withPast(5150, [{ ...past, meterId: 'b' }]);
    expect(got.change).toBe(undefined);
    expect(got.sentences).toContain('Earlier readings are from a different meter: no comparison.');
  });

  test.each([
    ['far above a lower bound then', { rlu: 900, bound: 'at-least' as const }, { rlu: 30_000 }],
    ['a low lower bound now', { rlu: 30_000 }, { rlu: 900, bound: 'at-least' as const }],
    ['a high upper bound now', { rlu: 900 }, { rlu: 30_000, bound: 'at-most' as const }],
    ['far below an upper bound then', { rlu: 30_000, bound: 'at-most' as const }, { rlu: 900 }],
  ])('a bound that leaves room for no change shows none: %s', (_what, first, second) => {
    const got = assess(second, { pastReadings: [{ ...past, ...first }] });
    expect(got.change).toBe(undefined);
    expect(got.sentences.join(' ')).toContain('leaves the change open');
  });

  test.each([
    ['a limit then, far lower now', 60_000, 900, 'fall'],
    ['a limit then, not far lower now', 60_000, 30_000, undefined],
    ['a limit now, far lower then', 900, 60_000, 'rise'],
    ['the same limit twice', 60_000, 60_000, undefined],
    ['from one limit to the other', 40, 60_000, 'rise'],
    ['a low limit then, the same neighbourhood now', 40, 50, undefined],
  ])('with bounds, %s', (_what, first, second, verdict) => {
    const got = withPast(second, [{ ...past, rlu: first }]);
    expect(got.change?.verdict).toBe(verdict);
    if (verdict === undefined) expect(got.sentences.join(' ')).toContain('leaves the change open');
  });
});

describe('with own studies', () => {
  // Repeatability: (4 ln 1.09 + 54 x 0.02) / 58 = 0.024564, cv 0.1577; hands: (2 ln 1.0225 + 2 x 0.01) / 4 = 0.016125, cv 0.1275.
  const found = { studyId: 's1', reportedOn: '2026-05-01', kind: 'hands' } as const;
  const own: Meter['own'] = [
    { component: 'repeatability', variance: 0.02, degreesOfFreedom: 54, readings: 60, ...found },
    { component: 'operator', variance: 0.01, degreesOfFreedom: 2, ...found },
  ];

  it('the verdict uses them, and names each part with its weight', () => {
    const got = assess({ rlu: 6300 }, { meter: { ...meter, own } });
    // Guard band: 4200 exp(1.644854 sqrt(0.024564 + 0.016125)) = 5853; with the assumed 30 % it is 6808.
    expect([assess({ rlu: 6300 }).verdict, got.verdict]).toEqual(['too-close', 'above']);
    expect(assess({ rlu: 5850 }, { meter: { ...meter, own } }).verdict).toBe('too-close');
    expect(assess({ rlu: 5856 }, { meter: { ...meter, own } }).verdict).toBe('above');
    expect(got.sentences).toContain(
      'Swab noise here: repeatability 16 % (own study of 60 swabs, 93 % of the weight; the rest assumed, 30 %) and hands 13 % (own study, 50 % of the weight; the rest assumed, 15 %). Differences between swab lots are not known here and not in it.',
    );
  });

  it('the limit of change holds hands where they differ or are not known to be the same', () => {
    const limitOf = (operator: string | undefined) =>
      assess({}, { meter: { ...meter, own }, pastReadings: [{ ...past, lotId: 'lot-1', ...(operator && { operator }) }] }).change
        ?.riseFraction ?? 0;
    const z = 2.5688;
    // By the sums above, ln 1.25 from day to day; tolerance of the rounded z.
    expect(Math.abs(Math.log1p(limitOf('Asha')) - z * Math.sqrt(2 * (0.024564 + Math.log(1.25))))).toBeLessThan(1e-3);
    expect(Math.abs(Math.log1p(limitOf('Ben')) - z * Math.sqrt(2 * (0.024564 + 0.016125 + Math.log(1.25))))).toBeLessThan(1e-3);
    expect(limitOf(undefined)).toBe(limitOf('Ben'));
  });
});

describe('refuses', () => {
  test.each<[Partial<SwabReading>, RegExp]>([
    [{ rlu: -5 }, /reading\.rlu/],
    [{ rlu: Number.NaN }, /reading\.rlu/],
    [{ rlu: 60_001 }, /reading\.rlu/],
    [{ rlu: 39 }, /reading\.rlu/],
    [{ minutesSinceEating: -1 }, /reading\.minutesSinceEating/],
    [{ takenAt: '2026-07-03T10:36:00' }, /reading\.takenAt/],
  ])('%j', (changes, field) => {
    expect(() => assess(changes)).toThrow(field);
    expect(() => assess(changes)).toThrow(RangeError);
  });

  it('an earlier reading without its zone', () =>
    expect(() => assess({}, { pastReadings: [{ ...past, takenAt: 'March' }] })).toThrow(/pastReadings\.0\.takenAt/));
});

describe('whatever was noted', () => {
  const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: undefined });
  const anyReading: fc.Arbitrary<SwabReading> = fc.record({
    takenAt: maybe(fc.constantFrom('2026-07-03T10:36:00+01:00', '2026-07-03T09:36:00Z', '2026-07-04T01:00:00Z')),
    rlu: maybe(fc.oneof(fc.constantFrom(40, 4200, 60_000), fc.integer({ min: 40, max: 60_000 }))),
    bound: maybe(fc.constantFrom('exact' as const, 'at-most' as const, 'at-least' as const)),
    lotId: maybe(fc.constantFrom('lot-1', 'x')),
    operator: maybe(fc.record({ name: fc.constant('A'), trained: fc.boolean() })),
    site: maybe(fc.constantFrom('lower-front-tongue-side' as const, 'other' as const)),
    beforeCleaning: maybe(fc.boolean()),
    minutesSinceEating: maybe(fc.integer({ min: 0, max: 120 })),
    failed: maybe(fc.boolean()),
    notTaken: maybe(fc.constantFrom('declined' as const, 'other' as const)),
  });
  const anyPast = fc.array(
    fc.record({
      takenAt: fc.constantFrom('2026-07-02T10:36:00Z', '2026-03-01T09:00:00Z', '2026-07-03T09:30:00Z'),
      rlu: fc.constantFrom(0, 40, 900, 60_000),
      bound: fc.constantFrom('exact' as const, 'at-most' as const, 'at-least' as const),
      state: fc.constantFrom('valid' as const, 'flagged' as const, 'void' as const),
      meterId: fc.constantFrom('a', 'b'),
    }),
    { maxLength: 3 },
  );

  it('a number never stands without what it is for and what it does not say; only a counted one has a verdict', () => {
    fc.assert(
      fc.property(anyReading, anyPast, fc.boolean(), (reading, pastReadings, named) => {
        const got = assessReading(input(reading, { pastReadings, meter: named ? meter : undefined }));
        const text = got.sentences.join(' ');
        if (got.rlu !== undefined) {
          expect(text).toContain('It does not say decay.');
          expect(text).toContain('whether an antimicrobial belongs in the home care; it does not enter the risk level');
        } else {
          expect(text).toContain('The visit is complete without a reading.');
        }
        expect(got.counted).toBe(got.rlu !== undefined && named && (got.state === 'valid' || got.state === 'flagged'));
        if (!got.counted) expect([got.verdict, got.change, got.probabilityAbove]).toEqual([undefined, undefined, undefined]);
        if (got.counted) expect(text).toContain('has not been shown to predict decay');
        expect(`${got.headline} ${text}`).not.toMatch(/NaN|undefined|Infinity|null/);
      }),
      { numRuns: 500 },
    );
  });
});
