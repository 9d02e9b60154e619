import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { testMeter as meter } from '../../../../test/testMeter.ts';
import { readingNoise } from '../../../content/readingNoise.ts';
import { swabConditions } from '../../../content/swabConditions.ts';
import type { ControlSpan } from '../../../core/checks/controlSpan.ts';
import { assessReading } from '../../../core/reading/assessReading.ts';
import { checkReading } from '../../../core/reading/checkReading.ts';
import type { PastReading, SwabReading } from '../../../core/reading/types.ts';
import { afterEvent } from './afterEvent.ts';
import { findStep } from './findStep.ts';
import { listChoices } from './listChoices.ts';
import { beginFlow, findMeter, type SwabFlow, type SwabMoment, type SwabSetting, secondsLeft } from './swabFlow.ts';

const compared = { lotId: 'old', studyId: 's', onDate: '2026-06-30', verdict: 'same-within' } as const;
const setting: SwabSetting = {
  meters: [meter],
  lots: [
    { id: 'old', name: 'Alder', expiresOn: '2026-07-02' },
    { id: 'late', name: 'Cedar', expiresOn: '2027-06-30', compared },
    { id: 'soon', name: 'Birch', expiresOn: '2026-07-03', compared },
  ],
  members: [
    { name: 'Tomas', trainedSwab: true },
    { name: 'Ines', trainedSwab: false },
  ],
  pastReadings: [],
  conditions: swabConditions,
  onDate: '2026-07-03',
  timeZone: 'Europe/London',
  mouth: null,
};
const NOON = Date.parse('2026-07-03T12:00:00Z');
const later = (seconds: number): string => new Date(NOON + 1000 * seconds).toISOString();
const past = (hoursAgo: number): PastReading => ({
  takenAt: later(-3600 * hoursAgo),
  rlu: 900,
  bound: 'exact',
  state: 'void',
  meterId: 'a',
});

const controlOf = (lotId: string, state: ControlSpan['state'], seconds: number): ControlSpan => ({
  meterId: 'a',
  lotId,
  controlId: `${lotId} ${seconds}`,
  from: later(seconds),
  state,
  says: 'control rule 2 of 6',
});

/** Keys, typed texts and waits one after another, on a clock that may be set back. */
type Doing = { readonly key: string } | { readonly typed: string } | { readonly waitS: number } | { readonly setBackS: number };

interface Run {
  readonly flow: SwabFlow;
  readonly moment: SwabMoment;
}

function run(doings: readonly Doing[], over: Partial<SwabSetting> = {}, reading: SwabReading = {}): Run {
  const here = { ...setting, ...over };
  let clockS = 0;
  let flow = beginFlow(reading, here.meters[0]?.id);
  const moment = (): SwabMoment => {
    const { activatedAt } = flow.reading;
    const since = activatedAt === undefined ? undefined : (NOON + clockS * 1000 - Date.parse(activatedAt)) / 1000;
    return { now: later(clockS), sinceActivationS: since !== undefined && since < 0 ? undefined : since };
  };
  for (const doing of doings) {
    if ('waitS' in doing) clockS += doing.waitS;
    else if ('setBackS' in doing) clockS -= doing.setBackS;
    else flow = afterEvent(flow, doing, here, moment());
  }
  return { flow, moment: moment() };
}

const keys = (text: string): Doing[] => [...text].map((key) => ({ key }));
const stepAfter = (doings: readonly Doing[], over: Partial<SwabSetting> = {}, reading: SwabReading = {}) => {
  const { flow, moment } = run(doings, over, reading);
  return findStep(flow, { ...setting, ...over }, moment);
};
const wait = (waitS: number): Doing => ({ waitS });
const typed = (text: string): Doing => ({ typed: text });

const READ = [...keys('yy1ys'), wait(38), typed('5150')];

describe('the way to a number', () => {
  test('five keys, the number, and every condition is met', () => {
    const { flow } = run(READ);
    expect(flow.reading).toEqual({
      beforeCleaning: true,
      minutesSinceEating: 60,
      minutesSinceBrushing: 60,
      minutesSinceRinsing: 60,
      lotId: 'soon',
      operator: { name: 'Tomas', trained: true },
      site: 'lower-front-tongue-side',
      activatedAt: later(0),
      takenAt: later(38),
      rlu: 5150,
      bound: 'exact',
    });
    const got = assessReading({ ...setting, noise: readingNoise, reading: flow.reading, meter });
    expect(got).toMatchObject({ state: 'valid', counted: true });
    // Of the control nothing is known here.
    expect(got.conditions.filter((c) => c.state !== 'met').map(({ id }) => id)).toEqual(['control-in-line']);
    expect(checkReading(flow.reading, meter, setting.lots, later(38))).toEqual([]);
  });

  test.each([
    ['', 'before-cleaning'],
    ['y', 'since'],
    ['yn', 'since-eating'],
    ['yn1', 'since-brushing'],
    ['yn12', 'since-rinsing'],
    ['yn12d', 'taken-by'],
    ['yy', 'taken-by'],
    ['yy1', 'site'],
    ['yy1y', 'start'],
    ['yy1ys', 'count-down'],
    ['n', 'after-cleaning'],
    ['yy1o', 'other-site'],
    ['w', 'choose-reason'],
    ['w0', 'type-note'],
    ['w1', 'not-taken'],
    ['yy1ysf', 'failed'],
  ])('after "%s" stands %s', (text, step) => expect(stepAfter(keys(text))).toBe(step));

  test('the count-down is the meter its own, and the box comes when it is over', () => {
    expect(stepAfter([...keys('yy1ys'), wait(24.9)])).toBe('count-down');
    expect(stepAfter([...keys('yy1ys'), wait(25)])).toBe('number');
    expect(stepAfter(keys('yy1ys'), { meters: [{ ...meter, countdownS: 0 }] })).toBe('number');
    expect(run([...keys('yy1ys'), typed('5150')]).flow.reading.rlu).toBeUndefined();
    expect([0, 0.1, 14.9, 15, 24.9, 25, 99].map((s) => secondsLeft(25, { now: '', sinceActivationS: s }))).toEqual([
      25, 25, 11, 10, 1, 0, 0,
    ]);
    expect(secondsLeft(25, { now: '', sinceActivationS: undefined })).toBe(0);
  });

  test('a clock set back after activation leaves the time unknown, never negative, and the number is taken', () => {
    const { flow } = run([...keys('yy1ys'), { setBackS: 3600 }, typed('5150')]);
    expect(flow.reading).toMatchObject({ rlu: 5150, activatedAt: later(0), takenAt: later(-3600) });
    const { conditions } = assessReading({ ...setting, noise: readingNoise, reading: flow.reading, meter });
    expect(conditions.find((c) => c.id === 'time-to-reading')).toMatchObject({ state: 'unknown' });
  });

  test('shorter times and what is not known are kept as they are', () => {
    const { flow } = run(keys('yn1d3'));
    expect(flow.reading).toMatchObject({ minutesSinceEating: 60, minutesSinceRinsing: 30 });
    expect(flow.reading.minutesSinceBrushing).toBeUndefined();
  });
});

describe('the pack', () => {
  test('in date and soonest to expire goes along; another is one key; what is past its date goes no further', () => {
    expect(
      listChoices('taken-by', run(keys('yy')).flow, setting).flatMap(({ key, does, isChosen }) =>
        does.kind === 'lot' ? [[key, does.lotId, isChosen]] : [],
      ),
    ).toEqual([
      ['a', 'soon', true],
      ['b', 'late', false],
      ['c', 'old', false],
    ]);
    expect(run(keys('yyb1')).flow.reading.lotId).toBe('late');
    expect(stepAfter(keys('yyc1'))).toBe('taken-by');
    expect(stepAfter(keys('yyc1a'))).toBe('site');
  });

  test('without one in date nobody gets to the start', () => {
    const lots = [{ id: 'old', name: 'Alder', expiresOn: '2026-07-02' }];
    expect(stepAfter(keys('yy1ys'), { lots })).toBe('taken-by');
    expect(stepAfter(keys('yy1ays'), { lots: [] })).toBe('taken-by');
  });
});

describe('what stops it', () => {
  test('a swab less than 24 hours ago is said first; at 24 hours it may begin', () => {
    expect(stepAfter([], { pastReadings: [past(23.9)] })).toBe('too-soon');
    expect(stepAfter(keys('yy1ys'), { pastReadings: [past(23.9)] })).toBe('too-soon');
    expect(stepAfter([], { pastReadings: [past(24)] })).toBe('before-cleaning');
    expect(stepAfter([], { pastReadings: [past(-2)] })).toBe('too-soon');
  });

  test('a swab for a study in 24 hours is said first as any other', () => {
    expect(stepAfter([], { studySwabs: [past(23.9)] })).toBe('too-soon');
    expect(stepAfter([], { studySwabs: [past(24)] })).toBe('before-cleaning');
  });

  test('no place to swab comes before anything else, and may be noted', () => {
    const mouth = { site: 'none', says: 'Nowhere to swab.' } as const;
    expect(stepAfter(keys('yy1ys'), { mouth, pastReadings: [past(2)] })).toBe('no-site');
    expect(run(keys('w2'), { mouth }).flow.reading).toEqual({ notTaken: 'no-site' });
    expect(stepAfter(keys('yy1y'), { mouth: { site: 'may-be-covered', says: 'Look.' } })).toBe('start');
  });

  test('a control out of limits stops the pack in use; another pack goes on, and an override lets it', () => {
    const span = controlOf('soon', 'out', -3600);
    expect(stepAfter([], { controls: [span] })).toBe('control-out');
    expect(listChoices('control-out', run([]).flow, setting).filter(({ does }) => does.kind === 'lot')).toHaveLength(3);
    expect(stepAfter([], { controls: [{ ...span, state: 'in-control' }] })).toBe('before-cleaning');
    expect(stepAfter(keys('b'), { controls: [span] })).toBe('before-cleaning');
    const override = { by: 'Ines', at: later(-60), reason: 'r' };
    expect(stepAfter(keys('yy1y'), { controls: [{ ...span, override }] })).toBe('start');
  });

  test('no meter, or several and none named', () => {
    expect(stepAfter([], { meters: [] })).toBe('no-meter');
    const two = [meter, { ...meter, id: 'b', name: 'Demo meter B', countdownS: 40 }];
    const { flow } = run(keys('yyg1'), { meters: two });
    expect(flow.meterId).toBe('b');
    expect(findMeter({ ...setting, meters: two }, undefined)).toBeUndefined();
    expect(stepAfter([...keys('yyg1ys'), wait(30)], { meters: two })).toBe('count-down');
  });

  test('a number is refused in words when it is none or outside the meter, and not asked for once the day of the lot has gone by', () => {
    const at = keys('yy1ys');
    expect(run([...at, wait(30), typed('abc')]).flow.problem).toBe('A number is needed here.');
    expect(run([...at, wait(30), typed('60001')]).flow).toMatchObject({
      problem: expect.stringContaining('above the highest reading of this meter, 60,000'),
    });
    const nextDay = [...at, wait(86_400), typed('5150')];
    expect(stepAfter(nextDay)).toBe('taken-by');
    expect(run(nextDay).flow.reading.rlu).toBeUndefined();
    expect(run([...at, wait(30), typed('<40')]).flow.reading).toMatchObject({ rlu: 40, bound: 'at-most' });
    expect(run([...at, wait(30), typed('>60000')]).flow.reading).toMatchObject({ rlu: 60_000, bound: 'at-least' });
  });
});

describe('no number', () => {
  test('a pack that was not compared asks why first; with a reason, or with another pack, it goes on', () => {
    const lots = setting.lots.map((lot) => (lot.id === 'soon' ? { ...lot, compared: undefined } : lot));
    expect(stepAfter([], { lots })).toBe('not-compared');
    expect(stepAfter(keys('b'), { lots })).toBe('before-cleaning');
    const uncompared = { by: 'Ines', at: later(-60), reason: 'the old lot is used up' };
    expect(stepAfter([], { lots: lots.map((lot) => ({ ...lot, uncompared })) })).toBe('before-cleaning');
    expect(stepAfter([], { lots: lots.map((lot) => ({ ...lot, compared: { ...compared, verdict: 'too-few' as const } })) })).toBe(
      'not-compared',
    );
  });

  test('each reason is one key after w', () => {
    expect('1234567890'.split('').map((key) => run(keys(`w${key}`)).flow.reading.notTaken)).toEqual([
      'declined',
      'no-site',
      'appliance',
      'bleeding',
      'calculus',
      'could-not-tolerate',
      'meter-out',
      'control-out',
      'no-stock',
      undefined,
    ]);
    expect(run([...keys('w0'), typed(' fell asleep ')]).flow.reading).toEqual({ notTaken: 'other', notTakenNote: 'fell asleep' });
    expect(run([...keys('w0'), typed('')]).flow.reading).toEqual({ notTaken: 'other' });
    expect(run([...keys('w0'), typed('x'.repeat(121))]).flow).toMatchObject({ reading: {}, problem: expect.stringContaining('120') });
  });

  test('it may be said from every step before the number, and Escape closes the list', () => {
    for (const way of ['', 'y', 'yn', 'yy', 'yy1', 'yy1y', 'yy1ys', 'n', 'yy1o'])
      expect(stepAfter(keys(`${way}w4`)), way).toBe('not-taken');
    expect(stepAfter([...keys('w'), { key: 'Escape' }])).toBe('before-cleaning');
  });

  test('a failed swab keeps when and how, and offers no second one', () => {
    const { flow, moment } = run([...keys('yy1ys'), wait(10), { key: 'f' }]);
    expect(flow.reading).toMatchObject({ failed: true, activatedAt: later(0), takenAt: later(10), lotId: 'soon' });
    expect(listChoices(findStep(flow, setting, moment), flow, setting).map((c) => c.does.kind)).toEqual(['undo']);
  });
});

describe('undo', () => {
  test('takes back each key of the page, one by one', () => {
    for (const way of ['y', 'yn', 'yn1', 'yy1', 'yyb', 'yy1ys', 'w', 'w3', 'yy1ysf']) {
      expect(run(keys(`${way}z`)).flow, way).toEqual(run(keys(way.slice(0, -1))).flow);
    }
    const { before: _, ...again } = run([...READ, ...keys('z')]).flow;
    expect(again.reading.rlu).toBeUndefined();
    expect(stepAfter([...READ, ...keys('z')])).toBe('number');
  });

  test('on a page opened anew goes back through what was noted, but leaves a number that others typed', () => {
    const { reading } = run(keys('yy1ys')).flow;
    const back = (n: number) => stepAfter(keys('z'.repeat(n)), {}, reading);
    expect([1, 2, 3, 4, 5, 6].map(back)).toEqual(['start', 'site', 'taken-by', 'since', 'before-cleaning', 'before-cleaning']);
    expect(run(keys('z'), {}, { rlu: 5150 }).flow.reading).toEqual({ rlu: 5150 });
    expect(run(keys('z'), {}, { notTaken: 'other', notTakenNote: 'asleep' }).flow.reading).toEqual({});
  });
});

describe('whatever is keyed', () => {
  const anyKey = fc.constantFrom(...'yn1234567890dabcoswfz', 'Escape', 'q').map((key) => ({ key }));
  const anyDoing: fc.Arbitrary<Doing> = fc.oneof(
    { weight: 6, arbitrary: anyKey },
    { weight: 2, arbitrary: fc.constantFrom(typed('5150'), typed('<40'), typed('>60000'), typed('60001'), typed('abc'), typed('')) },
    { weight: 2, arbitrary: fc.constantFrom(wait(0), wait(24.9), wait(25), wait(240), wait(90_000), { setBackS: 3600 }) },
  );
  const someWay = fc.constantFrom(...['yy1ys', 'yn1dd2ys', 'yyc1a', 'yyb2ys', 'nyy1ys', 'yy1oyys', 'yy', 'w'].map(keys));
  const someEnd = fc.constantFrom([], [wait(25), typed('5150')], [wait(300), typed('<40')], [{ setBackS: 60 }, typed('5150')]);
  /** Half of the runs go nearly all the way, where a number is close. */
  const anyDoings: fc.Arbitrary<Doing[]> = fc.oneof(
    fc.array(anyDoing, { maxLength: 30 }),
    fc.tuple(someWay, fc.array(anyDoing, { maxLength: 2 }), someEnd).map((parts) => parts.flat()),
  );
  const anyOver: fc.Arbitrary<Partial<SwabSetting>> = fc.oneof(
    fc.constant({}),
    fc.record({
      meters: fc.constantFrom([meter], [meter, { ...meter, id: 'b', lowestRlu: 100 }], []),
      lots: fc.constantFrom(setting.lots, [{ id: 'old', name: 'Alder', expiresOn: '2026-07-02' }], []),
      mouth: fc.constantFrom(null, { site: 'none' as const, says: '' }, { site: 'may-be-missing' as const, says: '' }),
      controls: fc.constantFrom(
        undefined,
        [controlOf('soon', 'out', -3600)],
        [controlOf('late', 'out', 20)],
        [controlOf('soon', 'out', 10)],
      ),
      pastReadings: fc.constantFrom([], [past(24)], [past(23.99)], [past(-1)], [past(900), past(1)]),
    }),
  );
  const anyReading: fc.Arbitrary<SwabReading> = fc.oneof(
    fc.constant({}),
    fc.record(
      {
        beforeCleaning: fc.boolean(),
        site: fc.constantFrom('lower-front-tongue-side' as const, 'other' as const),
        lotId: fc.constantFrom('soon', 'old', 'nowhere'),
        activatedAt: fc.constantFrom(later(-60), later(60)),
        operator: fc.constant({ name: 'Ines', trained: false }),
      },
      { requiredKeys: [] },
    ),
  );

  test('no row of keys ends in a counted number while a condition that voids fails or is not known', () => {
    let numbers = 0;
    fc.assert(
      fc.property(anyDoings, anyOver, anyReading, (doings, over, begun) => {
        const { flow } = run(doings, over, begun);
        const here = { ...setting, ...over };
        const got = assessReading({ ...here, noise: readingNoise, reading: flow.reading, meter: findMeter(here, flow.meterId) });
        if (flow.reading.rlu === undefined) return;
        numbers += 1;
        expect(got.counted).toBe(true);
        const required = swabConditions.filter((c) => c.failing === 'not-counted').map((c) => c.id);
        // A practice that takes no controls goes on: what is not known of them stops nobody.
        const mayBeUnknown = swabConditions.filter((c) => c.unknown === 'list').map((c) => c.id);
        const isOpen = ({ id, state }: (typeof got.conditions)[number]) =>
          state === 'failing' || (state === 'unknown' && !mayBeUnknown.includes(id));
        expect(got.conditions.filter((c) => required.includes(c.id) && isOpen(c))).toEqual([]);
        expect(flow.reading.activatedAt).toBeDefined();
        expect(flow.reading.operator).toBeDefined();
      }),
      { numRuns: 2000 },
    );
    // Else the property would hold of nothing.
    expect(numbers).toBeGreaterThan(50);
  });

  test('each key of a step stands for one thing, and a key that stands for nothing changes nothing', () => {
    fc.assert(
      fc.property(anyDoings, anyOver, fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz0123456789'), (doings, over, key) => {
        const here = { ...setting, ...over };
        const { flow, moment } = run(doings, over);
        const choices = listChoices(findStep(flow, here, moment), flow, here).map((c) => c.key);
        expect(new Set(choices).size).toBe(choices.length);
        // Keys of the page itself.
        for (const own of ['v', 'p', '?']) expect(choices).not.toContain(own);
        if (!choices.includes(key)) expect(afterEvent(flow, { key }, here, moment)).toBe(flow);
      }),
    );
  });
});
