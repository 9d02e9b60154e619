import { describe, expect, test } from 'vitest';
import { formatClock } from '../../format.ts';
import { CONDITIONS_AS_USUAL, parseNumber, presetLot, readingAfter, type SwabPlace, sayWholeReading, swabLines } from './swabLines.ts';

const lots = [
  { id: 'late', name: '26-120', expiresOn: '2027-06-30' },
  { id: 'old', name: '25-001', expiresOn: '2026-11-24' },
  { id: 'soon', name: '26-114', expiresOn: '2027-01-31' },
];
const members = [
  { name: 'Tomas', trainedSwab: true },
  { name: 'Ines', trainedSwab: false },
];
const place = (reading: SwabPlace['reading']): SwabPlace => ({ reading, lots, members, onDate: '2026-11-25' });
const presets = { now: '2026-11-25T10:36:00Z', lotId: 'soon', operator: { name: 'Tomas', trained: true } };
const number = { kind: 'number', min: 0, bounds: true } as const;

describe('swabLines', () => {
  test('without a reading nothing is asked for', () => {
    const lines = swabLines(place({}));
    expect(lines.map((l) => l.id)).toEqual(['rlu', 'notTaken', 'failed']);
    expect(lines.some((l) => l.wanted)).toBe(false);
  });

  test('with a number every condition not noted is unknown, and wanted', () => {
    const lines = swabLines(place({ rlu: 5150 }));
    expect(lines.filter((l) => l.wanted).map((l) => l.id)).toEqual([
      'beforeCleaning',
      'site',
      'minutesSinceEating',
      'minutesSinceBrushing',
      'minutesSinceRinsing',
      'lotId',
      'operator',
    ]);
    expect(
      swabLines(place({ rlu: 5150, lotId: 'soon', operator: presets.operator, ...CONDITIONS_AS_USUAL })).filter((l) => l.wanted),
    ).toEqual([]);
  });

  test('every letter is used once', () => {
    const letters = swabLines(place({ rlu: 5150 })).map((l) => l.letter);
    expect(new Set(letters).size).toBe(letters.length);
    for (const taken of 'dnxyut') expect(letters).not.toContain(taken);
  });
});

describe('readingAfter', () => {
  test('the first number brings time, lot and taker; a corrected one keeps what was noted', () => {
    const first = readingAfter({ notTaken: 'bleeding' }, 'rlu', { how: 'asked', value: 5150 }, place({}), presets);
    expect(first).toEqual({ takenAt: presets.now, lotId: 'soon', operator: presets.operator, rlu: 5150, bound: 'exact' });
    const next = readingAfter(first, 'rlu', { how: 'asked', value: 40, bound: 'at-most' }, place(first), {
      ...presets,
      now: 'later',
      lotId: 'late',
    });
    expect(next).toEqual({ ...first, rlu: 40, bound: 'at-most' });
  });

  test('no preset lot is no lot, not an empty one', () => {
    const bare = readingAfter({}, 'rlu', { how: 'asked', value: 1 }, place({}), { now: 'n', lotId: undefined, operator: undefined });
    expect(Object.keys(bare)).toEqual(['takenAt', 'rlu', 'bound']);
  });

  test('not taken and failed have no number', () => {
    expect(readingAfter({ rlu: 5 }, 'notTaken', { how: 'asked', value: 'no-stock' }, place({}), presets)).toEqual({ notTaken: 'no-stock' });
    expect(readingAfter({ rlu: 5 }, 'failed', { how: 'asked', value: true }, place({}), presets)).toEqual({
      takenAt: presets.now,
      lotId: 'soon',
      operator: presets.operator,
      failed: true,
    });
  });

  test('the taker is kept with the training on record', () => {
    expect(readingAfter({ rlu: 5 }, 'operator', { how: 'asked', value: 'Ines' }, place({}), presets).operator).toEqual({
      name: 'Ines',
      trained: false,
    });
  });
});

test.each([
  ['5150', 5150, undefined],
  ['5,150', 5150, undefined],
  ['<40', 40, 'at-most'],
  ['> 60000', 60000, 'at-least'],
  ['0.18', 0.18, undefined],
])('typed %s', (typed, value, bound) => {
  const reply = parseNumber(typed, number);
  expect(reply).toMatchObject({ how: 'asked', value });
  expect('bound' in reply ? reply.bound : undefined).toBe(bound);
});

test.each(['', 'abc', '-5', '5 150x', '1e5', '5.'])('typed %s is no number', (typed) => {
  expect(parseNumber(typed, number)).toHaveProperty('problem');
});

test('limits are said, and a bound is refused where it makes no sense', () => {
  expect(parseNumber('21', { kind: 'number', max: 20 })).toEqual({ problem: 'The highest number here is 20.' });
  expect(parseNumber('<5', { kind: 'number' })).toHaveProperty('problem');
});

test('the preset lot is in date and expires soonest', () => {
  expect(presetLot(lots, '2026-11-25')).toBe('soon');
  expect(presetLot([], '2026-11-25')).toBeUndefined();
});

describe('sayWholeReading', () => {
  const read: SwabPlace['reading'] = {
    rlu: 5150,
    bound: 'exact',
    takenAt: '2026-11-25T10:36:00Z',
    activatedAt: '2026-11-25T10:35:22Z',
    lotId: 'soon',
    operator: presets.operator,
    ...CONDITIONS_AS_USUAL,
  };
  const clock = (time: string) => formatClock(`2026-11-25T${time}Z`);

  test('tells the number and how it was taken', () => {
    expect(sayWholeReading(read, lots)).toBe(
      `5,150 RLU, before cleaning, 60 minutes or more since eating, brushing and rinsing, lot 26-114, taken by Tomas, lower front teeth, tongue side, activated at ${clock('10:35:22')}, read at ${clock('10:36:00')}`,
    );
  });

  test.each([
    [null, 'nothing noted'],
    [{}, 'nothing noted'],
    [{ beforeCleaning: false, minutesSinceEating: 30 }, 'no number yet, after cleaning, 30 minutes since eating'],
    [{ notTaken: 'declined' }, 'no swab today, declined'],
    [{ notTaken: 'other', notTakenNote: 'asleep' }, 'no swab today, another reason: asleep'],
    [{ failed: true, lotId: 'nowhere' }, 'swab or meter failed, lot not on record'],
    [{ rlu: 40, bound: 'at-most', site: 'other' }, '40 RLU or less, another site'],
  ] as const)('%j: %s', (reading, said) => expect(sayWholeReading(reading, lots)).toBe(said));

  test('two readings that differ in anything noted read differently', () => {
    const changes: SwabPlace['reading'][] = [
      { rlu: 5151 },
      { bound: 'at-least' },
      { takenAt: '2026-11-25T10:36:01Z' },
      { activatedAt: undefined },
      { lotId: 'late' },
      { operator: { name: 'Ines', trained: false } },
      { site: 'other' },
      { beforeCleaning: undefined },
      { minutesSinceRinsing: 10 },
    ];
    const said = [{}, ...changes].map((change) => sayWholeReading({ ...read, ...change }, lots));
    expect(new Set(said).size).toBe(said.length);
  });
});

test('a swab that fails keeps how it was taken', () => {
  const begun = { activatedAt: 'a', beforeCleaning: true, rlu: 5, bound: 'exact', takenAt: 't' } as const;
  expect(readingAfter(begun, 'failed', { how: 'asked', value: true }, place(begun), presets)).toEqual({
    takenAt: 't',
    lotId: 'soon',
    operator: presets.operator,
    activatedAt: 'a',
    beforeCleaning: true,
    failed: true,
  });
});
