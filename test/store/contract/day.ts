import { describe, expect, test } from 'vitest';
import { addAppointment } from '../../../src/actions/addAppointment.ts';
import { changeAppointment } from '../../../src/actions/changeAppointment.ts';
import { type ImportedDay, importDay } from '../../../src/actions/importDay.ts';
import type { DayRow } from '../../../src/core/day/dayRow.ts';
import { listAppointmentsOfDay } from '../../../src/store/read/appointments.ts';
import { listChangesOf, listLastReasons, listLatestChanges } from '../../../src/store/read/changes.ts';
import { listEveryPatient, listPatients } from '../../../src/store/read/patients.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';

const DAY = '2026-03-05';
const row = (at: number, time: string, name: string, birthday: string, chartNumber = ''): DayRow => ({
  row: at,
  time,
  name,
  birthday,
  chartNumber,
});
const ROWS = [
  row(1, '9:00', 'Ana Nuñez-O’Neil', '1984-03-02', 'A-1'),
  row(2, '9:30', 'سارة الحداد', '1990-01-01', 'A-2'),
  row(3, '10:00', "Una O'Neil", '1971-02-03'),
];

/** Filling a day from a list, and what becomes of an appointment. */
export function dayContract(bench: Bench): void {
  const take = (rows: readonly DayRow[]): Promise<ImportedDay> =>
    importDay(bench.practice().as('assistant'), { onDate: DAY, today: '2026-03-04', rows });
  const onFile = () => listEveryPatient(bench.store().db, bench.practice().scope);
  const onDay = () => listAppointmentsOfDay(bench.store().db, bench.practice().scope, DAY);

  describe('a day from a list', () => {
    test('known people are found in spite of accents and apostrophes, new ones are added, all through the log', async () => {
      const { db } = bench.store();
      const { scope, newPatient } = bench.practice();
      const ana = await newPatient();
      expect(await take(ROWS)).toMatchObject({ taken: 3, added: 2 });
      expect((await onDay()).map(({ atTime }) => atTime)).toEqual(['09:00', '09:30', '10:00']);
      const found = async (text: string) => (await listPatients(db, scope, text)).map(({ id, profile }) => [id, profile.chartNumber]);
      expect(await found('A-1')).toEqual([[ana, 'A-1']]);
      expect(await found('سارة')).toHaveLength(1);
      expect(await found('oneil')).toHaveLength(2);
      const actions = (await listLatestChanges(db, scope, 'record', 6)).map(({ action, entity }) => `${action} ${entity}`);
      expect(new Set(actions)).toEqual(new Set(['importDay patient', 'importDay appointment']));
      expect((await verify(db)).problems).toEqual([]);
    });

    test('the same list twice changes nothing', async () => {
      await take(ROWS);
      const before = [await onFile(), await onDay()];
      expect(await take(ROWS)).toMatchObject({
        taken: 0,
        added: 0,
        verdicts: [{ kind: 'nothing' }, { kind: 'nothing' }, { kind: 'nothing' }],
      });
      expect([await onFile(), await onDay()]).toEqual(before);
    });

    test('of a list that is half wrong the right rows are taken, and the others come back with what is wrong', async () => {
      const wrong = [row(4, '10:99', 'Ben Ode', '2001-01-01'), row(5, '11:00', 'Ita Moss', '31/02/1980')];
      const { taken, verdicts } = await take([...ROWS, ...wrong]);
      expect(taken).toBe(3);
      expect(verdicts.slice(3).map(({ kind, says }) => [kind, says])).toEqual([
        ['wrong', 'row 4, time “10:99”: not a time of the day such as 9:40'],
        ['wrong', 'row 5, birthday “31/02/1980”: no such day in the calendar'],
      ]);
      expect(await onDay()).toHaveLength(3);
      expect(await onFile()).toHaveLength(3);
    });

    test('two members who take the same list at once put nobody down twice', async () => {
      const taken = await Promise.all([take(ROWS), take(ROWS), take(ROWS)]);
      expect(taken.map((t) => t.taken).sort()).toEqual([0, 0, 3]);
      expect(await onDay()).toHaveLength(3);
      expect(await onFile()).toHaveLength(3);
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });

    test('moved keeps the appointment, with its history', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      await take(ROWS);
      const [first] = await onDay();
      expect(await take([{ ...row(1, '8:00', '', '', 'A-1'), choice: 'move' }])).toMatchObject({ taken: 1, added: 0 });
      expect((await onDay())[0]).toMatchObject({ id: first?.id, atTime: '08:00', version: 2 });
      expect(await listChangesOf(db, scope, { table: 'appointment', id: first?.id ?? '' })).toHaveLength(2);
    });
  });

  describe('what becomes of an appointment', () => {
    const putDown = async () => {
      const { as, newPatient } = bench.practice();
      return addAppointment(as('assistant'), { patientId: await newPatient(), onDate: DAY, atTime: '09:40' });
    };

    test('put down at the same time again, it is the same one', async () => {
      const { as, newPatient } = bench.practice();
      const input = { patientId: await newPatient(), onDate: DAY, atTime: '09:40' };
      expect(await addAppointment(as('assistant'), input)).toEqual(await addAppointment(as('lead'), input));
      expect(await onDay()).toHaveLength(1);
    });

    test('cancelled and missed take a reason, which is read from the log; expected again takes it back', async () => {
      const { db } = bench.store();
      const { as, scope } = bench.practice();
      const { appointmentId: id } = await putDown();
      const reasons = async () => (await listLastReasons(db, scope, 'appointment', [id])).get(id);
      await expect(changeAppointment(as('assistant'), { id, expectedVersion: 1, state: 'missed', reason: ' ' })).rejects.toMatchObject({
        code: 'REASON_REQUIRED',
      });
      await changeAppointment(as('assistant'), { id, expectedVersion: 1, state: 'missed', reason: 'did not come' });
      expect([(await onDay())[0]?.state, await reasons()]).toEqual(['missed', 'did not come']);
      await changeAppointment(as('assistant'), { id, expectedVersion: 2, state: 'planned' });
      expect([(await onDay())[0]?.state, await reasons()]).toEqual(['planned', undefined]);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('of two who change it at once one is told', async () => {
      const { as } = bench.practice();
      const { appointmentId: id } = await putDown();
      await changeAppointment(as('lead'), { id, expectedVersion: 1, atTime: '10:00' });
      await expect(changeAppointment(as('assistant'), { id, expectedVersion: 1, state: 'cancelled', reason: 'ill' })).rejects.toMatchObject(
        { code: 'CONFLICT' },
      );
      expect((await onDay())[0]).toMatchObject({ atTime: '10:00', state: 'planned' });
    });
  });
}
