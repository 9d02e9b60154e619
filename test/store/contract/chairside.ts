import { describe, expect, test } from 'vitest';
import { addAppointment } from '../../../src/actions/addAppointment.ts';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { closeVisit } from '../../../src/actions/closeVisit.ts';
import { createPractice } from '../../../src/actions/createPractice.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { readClock } from '../../../src/actions/readClock.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { append } from '../../../src/store/chain.ts';
import { first } from '../../../src/store/migrations/first.ts';
import { listAppointmentsOfDay } from '../../../src/store/read/appointments.ts';
import { listCourses } from '../../../src/store/read/courses.ts';
import { listDraftPast, readDraft } from '../../../src/store/read/draftFields.ts';
import { listVisits } from '../../../src/store/read/visits.ts';
import type { Db } from '../../../src/store/schema.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { clock, countedBytes, EMPTY_CLOSING, PRACTICE } from '../practice.ts';

export function chairsideContract(bench: Bench): void {
  const newVisit = async () => {
    const { as, newPatient } = bench.practice();
    const patientId = await newPatient();
    return { patientId, visitId: (await openVisit(as('assistant'), { patientId, kind: 'chair', onDate: '2026-03-04' })).id };
  };

  describe('a store of the first version', () => {
    // Rows as the first version wrote them: its actions are gone, so they are laid here as it left them.
    const oldCourse = (state: string, signature: object | null) => ({
      fromDate: null,
      toDate: null,
      state,
      reason: null,
      adherence: null,
      stopReason: null,
      signature: signature && JSON.stringify(signature),
    });
    const SIGNED = { shelfItemId: 'strong-paste', by: 'Member dentist', at: '2026-03-04T10:00:00.000Z' };

    test('keeps the word of the person apart from the signature, and its log still agrees with every row', async () => {
      const place = await bench.engine.newPlace();
      const old = await place.open([first]);
      const base = { db: old.db, now: clock, newId: bench.practice().as('lead').newId, random: countedBytes };
      const firstMember = { name: 'M', roles: ['lead'] } as const;
      const { scope, memberId } = await createPractice(base, { practice: PRACTICE, locale: 'en', firstMember });
      const actor = { memberId, name: 'M', roles: ['lead'] };
      const { patientId } = await addPatient({ ...base, scope, actor }, { name: 'P', birthDate: '1990-01-01' });
      const row = { siteId: scope.siteId, version: 1 };
      const visit = { ...row, id: 'v', patientId, kind: 'chair', onDate: '2026-03-04', state: 'closed', answers: '{}', allExamined: null };
      const rows = [
        ['visit', { ...visit, closedBy: memberId }],
        ['course', { ...row, id: 'c1', patientId, visitId: 'v', shelfItemId: 'paste', ...oldCourse('declined', null) }],
        ['course', { ...row, id: 'c2', patientId, visitId: 'v', shelfItemId: 'varnish', ...oldCourse('waiting', null) }],
        ['course', { ...row, id: 'c3', patientId, visitId: 'v', shelfItemId: 'strong-paste', ...oldCourse('signed', SIGNED) }],
      ] as const;
      await old.db.transaction().execute(async (trx) => {
        for (const [table, values] of rows)
          await trx
            .insertInto(table as 'task')
            .values(values as never)
            .execute();
        const changes = rows.map(([table, body]) => {
          const entity = { table, id: body.id };
          return { at: clock(), member: memberId, action: 'closeVisit', entity, reason: null, body };
        });
        await append(trx, scope, 'record', changes, countedBytes);
      });
      expect(await rowsOf(old.db)).toEqual(['declined', 'waiting', 'signed']);
      await old.close();

      const store = await place.open();
      const courses = await listCourses(store.db, scope, patientId);
      expect(courses.map(({ state, release, signature, refusal }) => [state, release, signature?.by ?? null, refusal])).toEqual([
        ['declined', 'not-needed', null, null],
        ['offered', 'waiting', null, null],
        ['offered', 'signed', 'Member dentist', null],
      ]);
      expect((await verify(store.db)).problems).toEqual([]);
      await store.db.updateTable('course').set({ state: 'agreed' }).where('id', '=', 'c1').execute();
      expect((await verify(store.db)).problems).toMatchObject([{ table: 'course', id: 'c1' }]);
      await store.close();
    });
  });

  describe('earlier values of a field', () => {
    test('are kept when it is changed and when the visit closes', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { visitId } = await newVisit();
      for (const [version, value] of [3, 4, null].entries())
        await recordAnswer(as('assistant'), { visitId, path: 'answers.snacks', value, expectedVersion: version });
      const { digest } = await readDraft(db, scope, visitId);
      expect((await listDraftPast(db, scope, visitId)).map(({ value }) => value)).toEqual([3, 4]);
      await closeVisit(as('hygienist'), { ...EMPTY_CLOSING, visitId, draftDigest: digest });
      const past = await listDraftPast(db, scope, visitId);
      expect(past.map(({ path, version, value, memberId }) => [path, version, value, memberId])).toEqual(
        [3, 4, null].map((value, i) => ['answers.snacks', i + 1, value, as('assistant').actor.memberId]),
      );
    });

    test('a change that is refused keeps nothing', async () => {
      const { scope, as } = bench.practice();
      const { visitId } = await newVisit();
      await recordAnswer(as('assistant'), { visitId, path: 'p', value: 1 });
      await expect(recordAnswer(as('assistant'), { visitId, path: 'p', value: 2, expectedVersion: 7 })).rejects.toMatchObject({
        code: 'CONFLICT',
      });
      expect(await listDraftPast(bench.store().db, scope, visitId)).toEqual([]);
    });
  });

  describe('appointments', () => {
    test('stand by time, those without a time last', async () => {
      const { db } = bench.store();
      const { scope, as, newPatient } = bench.practice();
      const patientId = await newPatient();
      for (const atTime of ['11:20', undefined, '09:00'])
        await addAppointment(as('assistant'), { patientId, onDate: '2026-03-04', atTime });
      await addAppointment(as('assistant'), { patientId, onDate: '2026-03-05', atTime: '08:00' });
      expect((await listAppointmentsOfDay(db, scope, '2026-03-04')).map(({ atTime }) => atTime)).toEqual(['09:00', '11:20', null]);
      expect((await verify(db)).problems).toEqual([]);
    });

    test.each(['9:40', '24:00', '09:60', 'noon'])('%s is no time of the day', async (atTime) => {
      const { as, newPatient } = bench.practice();
      const patientId = await newPatient();
      await expect(addAppointment(as('assistant'), { patientId, onDate: '2026-03-04', atTime })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
      });
    });
  });

  describe('a clock that was set back', () => {
    const at = (now: string) => ({ ...bench.practice().as('assistant'), now: () => now });

    test('opens no visit until somebody says that it is right; one that is open already is found', async () => {
      const { newPatient } = bench.practice();
      const patientId = await newPatient();
      const visit = { patientId, kind: 'chair', onDate: '2020-01-01' } as const;
      const back = at('2020-01-01T00:03:00.000Z');
      expect(await readClock(back)).toMatchObject({ isBehind: true, now: '2020-01-01T00:03:00.000Z' });
      await expect(openVisit(back, visit)).rejects.toMatchObject({ code: 'CLOCK_BACK', message: expect.stringContaining('2020-01-01') });
      const opened = await openVisit(back, { ...visit, clockIsRight: true });
      expect(await openVisit(back, visit)).toEqual(opened);
    });

    test('a few minutes are no reason to ask', async () => {
      const { newPatient } = bench.practice();
      const patientId = await newPatient();
      const newest = Date.parse((await readClock(at('2030-01-01T00:00:00.000Z'))).newestAt ?? '');
      expect((await readClock(at(new Date(newest - 4 * 60_000).toISOString()))).isBehind).toBe(false);
      expect((await readClock(at(new Date(newest - 6 * 60_000).toISOString()))).isBehind).toBe(true);
      await openVisit(at(new Date(newest).toISOString()), { patientId, kind: 'chair', onDate: '2026-03-04' });
    });
  });

  describe('charts that were merged', () => {
    test('are read as one, by way of others too, and nothing is moved', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      const charts = [await newVisit(), await newVisit(), await newVisit()] as const;
      const [kept, middle, end] = charts;
      const merge = (from: string, into: string) =>
        db.updateTable('patient').set({ state: 'merged', mergedInto: into }).where('id', '=', from).execute();
      await merge(end.patientId, middle.patientId);
      await merge(middle.patientId, kept.patientId);
      const visitsOf = async (patientId: string) => (await listVisits(db, scope, patientId)).map(({ id }) => id);
      expect(await visitsOf(kept.patientId)).toEqual(charts.map(({ visitId }) => visitId).sort());
      expect(await visitsOf(end.patientId)).toEqual([end.visitId]);
    });
  });
}

async function rowsOf(db: Db): Promise<string[]> {
  const rows = await db.selectFrom('course').select('state').orderBy('id').execute();
  return rows.map(({ state }) => state);
}
