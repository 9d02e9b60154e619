import { describe, expect, test } from 'vitest';
import type { MeterCheck } from '../../../core/checks/meterCheck.ts';
import type { Meter } from '../../../core/reading/types.ts';
import { listCheckedMeters, sayCheckPlan, sayDueMeters, sayLastCheck, sayStoppedMeters } from './sayMeterChecks.ts';

const TODAY = '2026-11-26';
const meters = ['a', 'b'].map((id) => ({ meter: { id, name: `Meter ${id.toUpperCase()}` } as Meter, version: 1 }));
const check = (id: string, meterId: string, passed: boolean): MeterCheck => ({
  ...{ id, meterId, operator: 'Ines Marrow', takenAt: '2026-11-20T08:00:00.000Z', state: 'valid', voidReason: null, version: 1 },
  ...{ rlu: passed ? 1012 : null, bound: 'exact', note: { checkedBy: 'device', passed } },
});
const plan = (meterId: string) => ({ plan: { meterId, everyDays: 5, limits: { lowRlu: 900, highRlu: 1100 } }, version: 1 });
const override = { controlId: 'x', meterId: 'a', onDate: TODAY, by: 'Una', at: `${TODAY}T09:00:00.000Z`, reason: 'r' };
const list = (meterChecks: readonly MeterCheck[], more: { readonly overrides?: readonly (typeof override)[] } = {}) =>
  listCheckedMeters({ meters, meterChecks, meterCheckPlans: [plan('a')], overrides: [], today: TODAY, timeZone: 'UTC', ...more });

describe('checks of meters in words', () => {
  test('the first sentence names a meter that did not pass, and says when readings count all the same', () => {
    expect(sayStoppedMeters(list([check('x', 'a', true)]))).toBe('');
    const failed = [check('x', 'a', false), check('y', 'b', true)];
    expect(sayStoppedMeters(list(failed))).toBe('The check of Meter A did not pass. Run today without swabs.');
    expect(sayStoppedMeters(list(failed, { overrides: [override] }))).toMatch(/today's readings count all the same, by a named decision/);
    expect(sayStoppedMeters(list([check('x', 'a', false), check('y', 'b', false)], { overrides: [override] }))).toBe(
      'The check of Meter A and Meter B did not pass. Run today without swabs.',
    );
  });

  test('a meter is due by its interval, once; one that is stopped is not asked for twice, one without an interval never', () => {
    expect(sayDueMeters(list([]))).toBe('A check of the meter is due: Meter A.');
    expect(sayDueMeters(list([check('x', 'a', true)]))).toBe('A check of the meter is due: Meter A.');
    expect(sayDueMeters(list([check('x', 'a', false)]))).toBe('');
  });

  test('the last check with its number and name, or that there is none', () => {
    const [a, b] = list([check('x', 'a', true)]);
    if (!a || !b) throw new Error('two meters');
    expect(sayLastCheck(a)).toBe('Last check of the meter: 20 November 2026, passed, by its own check device, 1,012 RLU (Ines Marrow).');
    expect(sayLastCheck(b)).toBe('No check of the meter itself is on record.');
    expect(sayCheckPlan(a.entry?.plan)).toBe('Checked every 5 days; its device should show 900 to 1,100 RLU.');
    expect(sayCheckPlan(b.entry?.plan)).toBe('');
  });
});
