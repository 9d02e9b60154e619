import { describe, expect, it, test } from 'vitest';
import type { StopOverride } from './control.ts';
import { type ControlSpan, findSpan } from './controlSpan.ts';
import { findDueCheck, findLastCheck, isWithinLimits, listMeterSpans, type MeterCheck, sayCheck } from './meterCheck.ts';

const check = (id: string, takenAt: string, passed: boolean, more: Partial<MeterCheck> = {}): MeterCheck => ({
  ...{ id, meterId: 'm', operator: 'Ines', takenAt, state: 'valid', voidReason: null, rlu: null, bound: 'exact', version: 1 },
  note: { checkedBy: 'device', passed },
  ...more,
});
const MORNING = '2026-11-26T08:00:00.000Z';
const NOON = '2026-11-26T12:00:00.000Z';
const EVENING = '2026-11-26T17:00:00.000Z';
const override: StopOverride = { controlId: 'b', meterId: 'm', onDate: '2026-11-26', by: 'Ines', at: NOON, reason: 'came from far' };

describe('a number against the limits of the check device', () => {
  const limits = { lowRlu: 900, highRlu: 1100 };
  test.each([
    { rlu: 900, within: true },
    { rlu: 1100, within: true },
    { rlu: 899.9, within: false },
    { rlu: 1100.1, within: false },
    { rlu: undefined, within: undefined },
  ])('$rlu: $within', ({ rlu, within }) => {
    expect(isWithinLimits(rlu, 'device', limits)).toBe(within);
  });

  it('judges nothing without limits, nor by the limits of another thing', () => {
    expect(isWithinLimits(1000, 'device', undefined)).toBeUndefined();
    expect(isWithinLimits(1000, 'solution', limits)).toBeUndefined();
  });
});

describe('how a meter stands by its own checks', () => {
  const control = (state: ControlSpan['state'], more: Partial<ControlSpan> = {}): ControlSpan => ({
    ...{ meterId: 'm', lotId: 'birch', controlId: 'c', from: '2026-11-26T07:00:00.000Z', state, says: '' },
    ...more,
  });
  const at = (checks: readonly MeterCheck[], iso: string, control?: ControlSpan, overrides: readonly StopOverride[] = []) =>
    findSpan(
      [...listMeterSpans(checks, MORNING, overrides), ...(control ? [control] : [])],
      { meterId: 'm', lotId: 'birch' },
      Date.parse(iso),
    );
  const failed = [check('a', '2026-11-20T08:00:00.000Z', true), check('b', NOON, false)];

  it('stops every lot from a check that did not pass until one passes, whatever the control of the lot says', () => {
    expect(at(failed, MORNING, control('in-control'))).toMatchObject({ controlId: 'c', state: 'in-control' });
    expect(at(failed, NOON, control('in-control'))).toMatchObject({ controlId: 'b', state: 'out', says: 'by its own check device' });
    const later = control('in-control', { from: '2026-11-26T13:00:00.000Z' });
    expect(at(failed, EVENING, later)).toMatchObject({ controlId: 'b', state: 'out' });
    expect(at([...failed, check('c2', EVENING, true)], EVENING, later)).toBe(later);
    expect(findSpan(listMeterSpans(failed, MORNING, []), { meterId: 'other', lotId: 'birch' }, Date.parse(EVENING))).toBeUndefined();
  });

  it('a check that is void stops nothing', () => {
    expect(at([check('b', NOON, false, { state: 'void' })], EVENING, control('in-control'))).toMatchObject({ state: 'in-control' });
  });

  it('an override carries its name and reason, and lets nothing count that a control of the lot stops', () => {
    expect(at(failed, EVENING, control('in-control'), [override])).toMatchObject({ controlId: 'b', override: { reason: 'came from far' } });
    expect(at(failed, EVENING, control('out'), [override])).toMatchObject({ controlId: 'c', state: 'out' });
    const question = { by: 'Una', at: EVENING, reason: 'r' };
    expect(at(failed, EVENING, control('in-control', { question }), [override])).toMatchObject({ controlId: 'c', question });
    expect(at(failed, EVENING, control('out'))).toMatchObject({ controlId: 'b', state: 'out' });
    expect(at(failed, EVENING, undefined, [{ ...override, controlId: 'a' }])?.override).toBeUndefined();
  });

  it('gives the check before the day and those within it', () => {
    const spans = listMeterSpans([check('0', '2026-01-01T08:00:00.000Z', false), ...failed], MORNING, []);
    expect(spans.map(({ controlId }) => controlId)).toEqual(['a', 'b']);
  });
});

test('the last check is the newest that counts, in whatever order they come', () => {
  const checks = [check('new', EVENING, true, { state: 'void' }), check('b', NOON, false), check('a', MORNING, true)];
  expect(findLastCheck(checks, 'm')?.id).toBe('b');
  expect(findLastCheck(checks, 'other')).toBeUndefined();
});

test('a check in words, with its number as it was shown', () => {
  expect(sayCheck(check('a', NOON, true))).toBe('by its own check device');
  expect(sayCheck(check('a', NOON, true, { rlu: 60_000, bound: 'at-least', note: { checkedBy: 'solution', passed: true } }))).toBe(
    'by the control solution, 60,000 RLU or more',
  );
});

describe('when a check is due', () => {
  const plan = { meterId: 'm', everyDays: 30 };
  const due = (last: MeterCheck | undefined, today: string, of = true) => findDueCheck(of ? plan : undefined, last, { today });
  const last = check('a', '2026-10-27T08:00:00.000Z', true);
  test.each([
    { today: '2026-11-25', isDue: false, says: 'The next is due on 26 November 2026.' },
    { today: '2026-11-26', isDue: true, says: 'The next is due today.' },
    { today: '2026-11-27', isDue: true, says: 'The next was due on 26 November 2026, overdue.' },
  ])('on $today: $says', ({ today, isDue, says }) => {
    expect(due(last, today)).toEqual({ isDue, says });
  });

  it('is due at once after one that did not pass, also where no interval is set', () => {
    const failed = check('a', '2026-11-26T08:00:00.000Z', false);
    for (const withPlan of [true, false])
      expect(due(failed, '2026-11-26', withPlan)).toEqual({ isDue: true, says: 'Another is due now, as the last did not pass.' });
  });

  it('is due at once where there is none, and never where the practice has set no interval', () => {
    expect(due(undefined, '2026-11-26')).toEqual({ isDue: true, says: 'A check is due today: there is none on record.' });
    expect(due(last, '2030-01-01', false)).toEqual({ isDue: false, says: 'How often it is checked is not set.' });
  });

  it('counts days on the calendar of the practice', () => {
    const late = check('a', '2026-10-27T23:30:00.000Z', true);
    expect(findDueCheck(plan, late, { today: '2026-11-26', timeZone: 'Australia/Sydney' }).says).toBe(
      'The next is due on 27 November 2026.',
    );
  });
});
