import { describe, expect, test } from 'vitest';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { saveLot } from '../../../src/actions/saveLot.ts';
import { listCatalog } from '../../../src/store/read/catalog.ts';
import { listMembers } from '../../../src/store/read/members.ts';
import { findPatient, listPatients } from '../../../src/store/read/patients.ts';
import { findPractice } from '../../../src/store/read/sites.ts';
import { findVisit, listVisits, listVisitsOfDay } from '../../../src/store/read/visits.ts';
import { findMemberScope } from '../../../src/store/siteScope.ts';
import type { Bench } from '../contract.ts';
import { PRACTICE, testPractice } from '../practice.ts';

export function readsContract(bench: Bench): void {
  describe('reading', () => {
    test('the practice comes back as it was given, numbers and missing values included', async () => {
      const { scope } = bench.practice();
      const shelf = [...PRACTICE.shelf].sort((a, b) => (a.id < b.id ? -1 : 1));
      expect(await findPractice(bench.store().db, scope)).toEqual({ practice: { ...PRACTICE, shelf }, locale: 'en-GB', version: 1 });
    });

    test('texts sort by code point on both engines', async () => {
      const { scope, as } = bench.practice();
      for (const id of ['b', 'B', 'a', 'Ä', '_'])
        await saveLot(as('lead'), { lot: { id, name: id, expiresOn: '2027-01-31' }, expectedVersion: 0 });
      expect((await listCatalog(bench.store().db, scope, 'lot')).map(({ id }) => id)).toEqual(['B', '_', 'a', 'b', 'lot-1', 'Ä']);
    });

    test.each([
      ['nunez', true],
      ['NÚÑEZ ana', true],
      ['oneil', true],
      ["O'Neil", true],
      ['ana nuñ 1984', true],
      ['1984-03', true],
      ['1985', false],
      ['unez', false],
      ['ana bo', false],
      ['an%', true],
      ['%', true],
      ['a_a', false],
    ])('searching %s finds the person: %s', async (text, isFound) => {
      const { scope, newPatient, as } = bench.practice();
      const id = await newPatient('Ana Núñez-O’Neil');
      await addPatient(as('lead'), { name: 'Bo Sørensen', birthDate: '1999-12-31' });
      expect((await listPatients(bench.store().db, scope, text)).some((patient) => patient.id === id)).toBe(isFound);
    });

    test('a person keeps name, guardians and permissions', async () => {
      const { scope, as } = bench.practice();
      const profile = {
        name: 'Kim Tran',
        language: 'es',
        guardians: [{ name: 'Mai Tran', relation: 'mother' }],
        permissions: { messages: { given: false, by: 'Mai Tran', on: '2026-03-04' } },
      } as const;
      const { patientId } = await addPatient(as('assistant'), { ...profile, birthDate: '2019-02-28' });
      expect(await findPatient(bench.store().db, scope, patientId)).toEqual({
        id: patientId,
        birthDate: '2019-02-28',
        profile,
        state: 'active',
        mergedInto: null,
        searchKey: 'kim tran',
        version: 1,
      });
    });

    test('no query sees another site', async () => {
      const { db } = bench.store();
      const other = await testPractice(bench.store(), 'Second practice');
      const patientId = await other.newPatient();
      const visit = await openVisit(other.as('assistant'), { patientId, kind: 'chair', onDate: '2026-03-04' });
      const { scope } = bench.practice();
      expect(await findPatient(db, scope, patientId)).toBeUndefined();
      expect(await findVisit(db, scope, visit.id)).toBeUndefined();
      expect(await listPatients(db, scope)).toEqual([]);
      expect(await listVisits(db, scope, patientId)).toEqual([]);
      expect(await listVisitsOfDay(db, scope, '2026-03-04')).toEqual([]);
      expect((await listVisitsOfDay(db, other.scope, '2026-03-05')).map(({ id }) => id)).toEqual([visit.id]);
      await expect(openVisit(bench.practice().as('assistant'), { patientId, kind: 'chair', onDate: '2026-03-04' })).rejects.toMatchObject({
        code: 'PATIENT_NOT_FOUND',
      });
    });

    test('members with their roles, and the scope of one who is active', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      expect((await listMembers(db, scope)).map(({ name, roles, trainedSwab }) => [name, roles, trainedSwab])).toEqual([
        ['Lead member', ['lead'], false],
        ['Member assistant', ['assistant'], true],
        ['Member dentist', ['dentist'], false],
        ['Member hygienist', ['hygienist'], false],
      ]);
      const { actor } = as('dentist');
      expect(await findMemberScope(db, { siteId: scope.siteId, memberId: actor.memberId })).toEqual({ scope, member: actor });
      expect(await findMemberScope(db, { siteId: scope.siteId, memberId: 'nobody' })).toBeUndefined();
      await db.updateTable('member').set({ active: 0 }).where('id', '=', actor.memberId).execute();
      expect(await findMemberScope(db, { siteId: scope.siteId, memberId: actor.memberId })).toBeUndefined();
    });
  });
}
