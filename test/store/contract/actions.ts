import { describe, expect, test } from 'vitest';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { createPractice } from '../../../src/actions/createPractice.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { saveCatalogEntry } from '../../../src/actions/saveCatalogEntry.ts';
import { saveMeter } from '../../../src/actions/saveMeter.ts';
import { saveSettings } from '../../../src/actions/saveSettings.ts';
import { saveShelfItem } from '../../../src/actions/saveShelfItem.ts';
import { ConflictError } from '../../../src/store/errors.ts';
import { findCatalogEntry } from '../../../src/store/read/catalog.ts';
import { readDraft } from '../../../src/store/read/draftFields.ts';
import { listPatients } from '../../../src/store/read/patients.ts';
import { findPractice } from '../../../src/store/read/sites.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { PRACTICE } from '../practice.ts';

const VISIT = { kind: 'chair', onDate: '2026-03-04' } as const;

export function actionsContract(bench: Bench): void {
  describe('openVisit', () => {
    test('gives the open visit of a person instead of a second one, also when two open it at once', async () => {
      const { newPatient, as } = bench.practice();
      const patientId = await newPatient();
      const opened = await Promise.all(
        (['assistant', 'hygienist', 'dentist', 'lead'] as const).map((role) => openVisit(as(role), { ...VISIT, patientId })),
      );
      const later = await openVisit(as('hygienist'), { kind: 'phone', onDate: '2026-03-05', patientId });
      expect(new Set([...opened, later].map(({ id }) => id)).size).toBe(1);
      expect(later).toMatchObject({ kind: 'chair', onDate: '2026-03-04', state: 'open', answers: null, allExamined: null });
      expect((await verify(bench.store().db)).ok).toBe(true);
    });

    test('refuses an unknown person and a date that does not exist', async () => {
      const { newPatient, as } = bench.practice();
      await expect(openVisit(as('assistant'), { ...VISIT, patientId: 'nobody' })).rejects.toMatchObject({ code: 'PATIENT_NOT_FOUND' });
      const patientId = await newPatient();
      await expect(openVisit(as('assistant'), { ...VISIT, onDate: '2026-02-30', patientId })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
      });
    });
  });

  describe('recordAnswer', () => {
    const values = [
      true,
      0,
      -1.5,
      '',
      'ñ \u0000 \ud83e\uddb7',
      null,
      [],
      ['a', 'b'],
      { how: 'asked', value: false, askedOn: '2026-03-04' },
    ].map((value: unknown) => ({ value }));
    test.each(values)('keeps $value as it was', async ({ value }) => {
      const { scope, as, newPatient } = bench.practice();
      const { id: visitId } = await openVisit(as('assistant'), { ...VISIT, patientId: await newPatient() });
      const saved = await recordAnswer(as('assistant'), { visitId, path: 'answers.x', value });
      const { fields } = await readDraft(bench.store().db, scope, visitId);
      expect(fields).toEqual([{ path: 'answers.x', value, memberId: as('assistant').actor.memberId, savedAt: saved.savedAt, version: 1 }]);
    });

    test('a version that is no longer the newest is a conflict that carries both values', async () => {
      const { as, newPatient } = bench.practice();
      const { id: visitId } = await openVisit(as('assistant'), { ...VISIT, patientId: await newPatient() });
      const save = (value: unknown, expectedVersion?: number) =>
        recordAnswer(as('hygienist'), { visitId, path: 'answers.x', value, expectedVersion });
      expect((await save('first', 0)).version).toBe(1);
      expect((await save('second', 1)).version).toBe(2);
      expect((await save('third')).version).toBe(3);
      for (const stale of [0, 1, 2, 4]) {
        const error: unknown = await save('mine', stale).catch((cause: unknown) => cause);
        expect(error).toBeInstanceOf(ConflictError);
        expect(error).toMatchObject({ code: 'CONFLICT', yours: 'mine', current: { value: 'third', version: 3 } });
      }
      await expect(recordAnswer(as('hygienist'), { visitId, path: 'answers.never', value: 1, expectedVersion: 1 })).rejects.toThrow(
        ConflictError,
      );
      expect((await readDraft(bench.store().db, bench.practice().scope, visitId)).fields).toHaveLength(1);
    });

    test('of many writers with the same version exactly one succeeds', async () => {
      const { as, newPatient } = bench.practice();
      const { id: visitId } = await openVisit(as('assistant'), { ...VISIT, patientId: await newPatient() });
      const writes = Array.from({ length: 12 }, (_, value) =>
        recordAnswer(as('hygienist'), { visitId, path: 'p', value, expectedVersion: 0 }),
      );
      const settled = await Promise.allSettled(writes);
      expect(settled.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    });

    test('refuses a visit that is not there and a value that JSON cannot hold', async () => {
      const { as, newPatient } = bench.practice();
      await expect(recordAnswer(as('assistant'), { visitId: 'none', path: 'p', value: 1 })).rejects.toMatchObject({
        code: 'VISIT_NOT_FOUND',
      });
      const { id: visitId } = await openVisit(as('assistant'), { ...VISIT, patientId: await newPatient() });
      await expect(recordAnswer(as('assistant'), { visitId, path: 'p', value: undefined })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
      });
      await expect(recordAnswer(as('assistant'), { visitId, path: '', value: 1 })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
    });
  });

  describe('catalog and settings', () => {
    const [paste] = PRACTICE.shelf;
    if (!paste) throw new Error('the shelf is empty');

    test('an item is changed at the version that was seen, and only then', async () => {
      const { scope, as } = bench.practice();
      const change = (priceCents: number, expectedVersion: number) =>
        saveShelfItem(as('hygienist'), { item: { ...paste, priceCents }, expectedVersion });
      expect(await change(500, 1)).toEqual({ version: 2 });
      await expect(change(600, 1)).rejects.toMatchObject({ code: 'CONFLICT', current: { body: { priceCents: 500 }, version: 2 } });
      await expect(change(600, 0)).rejects.toThrow(ConflictError);
      expect(await findCatalogEntry(bench.store().db, scope, 'shelf-item', paste.id)).toMatchObject({
        body: { priceCents: 500 },
        version: 2,
      });
    });

    test('what studies found on a meter is reported, never typed: a change of the meter keeps it', async () => {
      const { scope, as } = bench.practice();
      const [meter] = PRACTICE.meters;
      if (!meter) throw new Error('the practice has no meter');
      const found = { component: 'repeatability', variance: 0.02, degreesOfFreedom: 54, studyId: 's1', kind: 'hands' } as const;
      const own = [{ ...found, reportedOn: '2026-11-01' }];
      await saveCatalogEntry(as('lead'), 'saveMeter', { kind: 'meter', id: meter.id, body: { ...meter, own }, expectedVersion: 1 });
      await saveMeter(as('lead'), { meter: { ...meter, name: 'By the window', own: [] }, expectedVersion: 2 });
      const typed = { ...meter, id: 'typed', own };
      await saveMeter(as('lead'), { meter: typed, expectedVersion: 0 });
      const bodyOf = async (id: string) => (await findCatalogEntry(bench.store().db, scope, 'meter', id))?.body;
      expect(await bodyOf(meter.id)).toEqual({ ...meter, name: 'By the window', own });
      expect(await bodyOf('typed')).toEqual({ ...meter, id: 'typed' });
    });

    test('a setting is changed without the others', async () => {
      const { scope, as } = bench.practice();
      await saveSettings(as('lead'), { settings: { jurisdiction: 'US' }, expectedVersion: 1 });
      const stored = await findPractice(bench.store().db, scope);
      expect(stored).toMatchObject({ version: 2, practice: { invented: true, settings: { ...PRACTICE.settings, jurisdiction: 'US' } } });
      await expect(saveSettings(as('lead'), { settings: {}, expectedVersion: 1 })).rejects.toThrow(ConflictError);
    });
  });

  describe('all or nothing', () => {
    test('an action that fails at its last step leaves no row', async () => {
      const { scope, as } = bench.practice();
      const noSalt = { ...as('lead'), random: () => new Uint8Array(0) };
      const failing = {
        ...noSalt,
        random: () => {
          throw new Error('no randomness');
        },
      };
      await expect(addPatient(failing, { name: 'Half', birthDate: '2000-01-01' })).rejects.toThrow('no randomness');
      expect(await listPatients(bench.store().db, scope)).toEqual([]);
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });

    test('names that no engine could keep are refused', async () => {
      const { as } = bench.practice();
      for (const name of ['', '   ', 'a\u0000b', 'x'.repeat(201)]) {
        await expect(addPatient(as('lead'), { name, birthDate: '2000-01-01' })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      }
    });

    test('two entries of one id, an unknown time zone or a first member who leads nothing make no practice', async () => {
      const { as } = bench.practice();
      const { db, now, newId, actor } = as('lead');
      const make = (practice: Partial<typeof PRACTICE>, roles: readonly ['lead'] | readonly ['dentist'] = ['lead']) =>
        createPractice(
          { db, now, newId, actor },
          { practice: { ...PRACTICE, ...practice }, locale: 'en-GB', firstMember: { name: 'M', roles } },
        );
      await expect(make({ lots: [...PRACTICE.lots, ...PRACTICE.lots] })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(make({ timeZone: 'Nowhere/Land' })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(make({}, ['dentist'])).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      expect(await db.selectFrom('site').select('siteId').execute()).toHaveLength(1);
    });
  });
}
