import { describe, expect, test } from 'vitest';
import { finishVisit } from '../../../src/actions/finishVisit.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { overrideStop } from '../../../src/actions/overrideStop.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { type RecordMeterCheckInput, recordMeterCheck } from '../../../src/actions/recordMeterCheck.ts';
import { saveControlPlan } from '../../../src/actions/saveControlPlan.ts';
import { saveMeterCheckPlan } from '../../../src/actions/saveMeterCheckPlan.ts';
import { voidReading } from '../../../src/actions/voidReading.ts';
import { listControls } from '../../../src/store/read/checks.ts';
import { findMeterCheck, listMeterChecks } from '../../../src/store/read/meterChecks.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { control, FAR_TOO_HIGH, IN_LINE, PLAN } from '../swabChecks.ts';

const TODAY = '2026-03-04';
const LIMITS = { lowRlu: 900, highRlu: 1100 };

/** Checks of a meter itself, and the stop that one gives. */
export function meterChecksContract(bench: Bench): void {
  const as = (role: 'assistant' | 'hygienist' | 'lead') => bench.practice().as(role);
  const db = () => bench.store().db;
  const scope = () => bench.practice().scope;
  const check = (more: Partial<RecordMeterCheckInput> = {}) =>
    recordMeterCheck(as('assistant'), { meterId: 'meter-a', checkedBy: 'device', ...more });
  const setLimits = () =>
    saveMeterCheckPlan(as('lead'), { plan: { meterId: 'meter-a', everyDays: 30, limits: LIMITS }, expectedVersion: 0 });

  describe('a check of a meter', () => {
    test('comes back as it was noted, apart from the controls of its swabs', async () => {
      const { id } = await check({ passed: true, temperatureDegC: 21.5, words: 'lens wiped first', takenAt: '2026-03-01T08:00:00+01:00' });
      await control(as('assistant'), IN_LINE);
      expect(await listMeterChecks(db(), scope())).toEqual([
        {
          ...{
            id,
            meterId: 'meter-a',
            operator: 'Member assistant',
            takenAt: '2026-03-01T07:00:00.000Z',
            state: 'valid',
            voidReason: null,
          },
          ...{ rlu: null, bound: 'exact', version: 1 },
          note: { checkedBy: 'device', passed: true, temperatureDegC: 21.5, words: 'lens wiped first' },
        },
      ]);
      expect(await listControls(db(), scope())).toMatchObject([{ rlu: IN_LINE }]);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('with a number and the limits of the device it is judged by them, and keeps them', async () => {
      await setLimits();
      expect(await check({ rlu: 1000 })).toMatchObject({ passed: true });
      expect(await check({ rlu: 812 })).toMatchObject({ passed: false });
      expect((await listMeterChecks(db(), scope())).map(({ rlu, note }) => [rlu, note.passed, note.limits])).toEqual([
        [1000, true, LIMITS],
        [812, false, LIMITS],
      ]);
      await expect(check({ rlu: 812, passed: true })).rejects.toMatchObject({
        message: 'passed: 812 RLU lies outside the limits of the device, 900 to 1,100',
      });
    });

    test.each([
      ['an outcome nobody said', { rlu: 1000 }, 'INPUT_INVALID', /^passed: must be said/],
      ['a meter nobody has', { meterId: 'none', passed: true }, 'METER_NOT_FOUND', /no meter none/],
      ['a number outside the meter', { rlu: 39, passed: true }, 'INPUT_INVALID', /^rlu: below the lowest/],
      ['a time still to come', { takenAt: '2036-01-01T09:00:00Z', passed: true }, 'INPUT_INVALID', /^takenAt:.*in the future/],
      ['an oven', { temperatureDegC: 180, passed: true }, 'INPUT_INVALID', /^temperatureDegC:/],
    ])('%s is refused by name and nothing is kept', async (_, part, code, message) => {
      await expect(check(part)).rejects.toMatchObject({ code, message: expect.stringMatching(message) });
      expect(await listMeterChecks(db(), scope())).toEqual([]);
    });

    test.each([
      [{ everyDays: 0 }, /^everyDays:/],
      [{ limits: { lowRlu: 1100, highRlu: 1100 } }, /^limits.highRlu:/],
    ])('an interval or limits that cannot be are refused: %o', async (part, message) => {
      const plan = { meterId: 'meter-a', everyDays: 30, ...part };
      await expect(saveMeterCheckPlan(as('lead'), { plan, expectedVersion: 0 })).rejects.toMatchObject({
        message: expect.stringMatching(message),
      });
    });
  });

  describe('a check that did not pass', () => {
    const takenToday = async (): Promise<string> => {
      const { id } = await openVisit(as('hygienist'), { patientId: await bench.practice().newPatient(), kind: 'chair', onDate: TODAY });
      const reading = { rlu: 5000, bound: 'exact', lotId: 'lot-1', takenAt: as('hygienist').now(), beforeCleaning: true };
      for (const [path, value] of Object.entries({ meterId: 'meter-a', reading }))
        await recordAnswer(as('hygienist'), { visitId: id, path, value, expectedVersion: 0 });
      return id;
    };
    const closed = async (visitId: string) => (await finishVisit(as('hygienist'), visitId)).reading;

    test('stops the meter with every lot, also with a control in line, until one passes', async () => {
      await saveControlPlan(as('lead'), { plan: PLAN, expectedVersion: 0 });
      await check({ passed: false });
      await control(as('assistant'), IN_LINE);
      const stopped = await takenToday();
      await check({ passed: true });
      const after = await takenToday();
      const reading = await closed(stopped);
      expect(reading).toMatchObject({ counted: false, state: 'void' });
      expect(reading.headline).toMatch(/^Not counted: the meter's own check of 4 March 2026, .* did not pass \(by its own check device\)/);
      expect(await closed(after)).toMatchObject({ counted: true });
    });

    test('without any control it stops all the same', async () => {
      await check({ passed: false });
      expect(await closed(await takenToday())).toMatchObject({ counted: false });
    });

    test('with an override the reading counts, and carries who and why; a lot that its control stops stays stopped', async () => {
      await saveControlPlan(as('lead'), { plan: PLAN, expectedVersion: 0 });
      const { id } = await check({ passed: false });
      const first = await takenToday();
      const given = await overrideStop(as('hygienist'), { controlId: id, onDate: TODAY, reason: 'came from far' });
      expect(given).toEqual({
        controlId: id,
        meterId: 'meter-a',
        onDate: TODAY,
        by: 'Member hygienist',
        at: given.at,
        reason: 'came from far',
      });
      const reading = await closed(first);
      expect(reading).toMatchObject({ counted: true, state: 'flagged' });
      expect(JSON.stringify(reading)).toContain('Member hygienist let readings count that day: came from far');
      await control(as('assistant'), FAR_TOO_HIGH);
      expect(await closed(await takenToday())).toMatchObject({ counted: false });
      expect((await verify(db())).problems).toEqual([]);
    });

    test('an override answers the newest check alone, and only one that did not pass', async () => {
      const { id: first } = await check({ passed: false });
      const { id: second } = await check({ passed: true });
      for (const controlId of [first, second])
        await expect(overrideStop(as('hygienist'), { controlId, onDate: TODAY, reason: 'r' })).rejects.toMatchObject({
          message: expect.stringMatching(/^This check stops nothing/),
        });
    });

    test('noted by mistake it stops nothing, and stays with its reason', async () => {
      const { id } = await check({ passed: false });
      await voidReading(as('hygienist'), { id, expectedVersion: 1, reason: 'the other meter' });
      expect(await findMeterCheck(db(), scope(), id)).toMatchObject({ state: 'void', voidReason: 'the other meter' });
      expect(await closed(await takenToday())).toMatchObject({ counted: true });
    });
  });
}
