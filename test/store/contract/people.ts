import { describe, expect, test } from 'vitest';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { changePatient } from '../../../src/actions/changePatient.ts';
import { closeVisit } from '../../../src/actions/closeVisit.ts';
import { loadVisit } from '../../../src/actions/loadVisit.ts';
import { mergePatients, unmergePatient } from '../../../src/actions/mergePatients.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { releasePrivate } from '../../../src/actions/releasePrivate.ts';
import { listChangesOf } from '../../../src/store/read/changes.ts';
import { listDraftPast, readDraft } from '../../../src/store/read/draftFields.ts';
import { findKeptPatient, findPatient, listPatients, type Patient } from '../../../src/store/read/patients.ts';
import { findVisit, listVisits } from '../../../src/store/read/visits.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { EMPTY_CLOSING } from '../practice.ts';

const BIRTH = '2012-05-06';

export function peopleContract(bench: Bench): void {
  const db = () => bench.store().db;
  const scope = () => bench.practice().scope;
  const as = (role: 'assistant' | 'hygienist' | 'lead') => bench.practice().as(role);
  const chart = async (id: string): Promise<Patient> => {
    const found = await findPatient(db(), scope(), id);
    if (!found) throw new Error(`no chart ${id}`);
    return found;
  };
  const add = async (name: string, birthDate = BIRTH, chartNumber?: string) =>
    (await addPatient(as('assistant'), { name, birthDate, chartNumber })).patientId;
  const visitOn = async (patientId: string, onDate: string) => {
    const { id } = await openVisit(as('assistant'), { patientId, kind: 'chair', onDate });
    await closeVisit(as('hygienist'), { ...EMPTY_CLOSING, visitId: id, draftDigest: (await readDraft(db(), scope(), id)).digest });
    return id;
  };
  const merge = async (keptId: string, mergedId: string, role: 'hygienist' | 'lead' = 'hygienist') => {
    const [kept, merged] = [await chart(keptId), await chart(mergedId)];
    await mergePatients(as(role), { kept, merged, reason: 'entered twice' });
  };
  const undo = async (mergedId: string) => unmergePatient(as('hygienist'), { merged: await chart(mergedId), reason: 'twins' });
  const found = async (text: string) => (await listPatients(db(), scope(), text)).map(({ id }) => id);

  describe('the details of a person', () => {
    test('are changed against a version; the history holds each of them, with the reason of a new name', async () => {
      const patientId = await add('Ana Lind');
      const details = {
        name: 'Ana Lund',
        birthDate: BIRTH,
        chartNumber: ' 1002 ',
        interpreter: '',
        homes: [{ name: 'with her father', language: 'es' }],
      } as const;
      await expect(changePatient(as('assistant'), { patientId, details, expectedVersion: 1 })).rejects.toMatchObject({
        code: 'REASON_REQUIRED',
      });
      expect(await changePatient(as('assistant'), { patientId, details, expectedVersion: 1, reason: 'new family name' })).toEqual({
        version: 2,
      });
      const stored = await chart(patientId);
      expect(stored.profile).toEqual({ ...details, birthDate: undefined, chartNumber: '1002' });
      expect(await found('1002')).toEqual([patientId]);
      expect(await found('lund')).toEqual([patientId]);
      expect(await found('lind')).toEqual([]);
      const clash = changePatient(as('hygienist'), { patientId, details: { name: 'Ana Lund', birthDate: BIRTH }, expectedVersion: 1 });
      await expect(clash).rejects.toMatchObject({ code: 'CONFLICT', current: { version: 2, profile: { chartNumber: '1002' } } });
      const history = await listChangesOf(db(), scope(), { table: 'patient', id: patientId });
      expect(history.map(({ action, reason, memberId }) => [action, reason, memberId])).toEqual([
        ['addPatient', null, as('assistant').actor.memberId],
        ['changePatient', 'new family name', as('assistant').actor.memberId],
      ]);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('a birthday after a visit on record is refused', async () => {
      const patientId = await add('Ana Lind');
      await visitOn(patientId, '2026-03-04');
      const details = { name: 'Ana Lind', birthDate: '2026-03-05' };
      await expect(changePatient(as('lead'), { patientId, details, expectedVersion: 1, reason: 'mistyped' })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
      });
      await changePatient(as('lead'), {
        patientId,
        details: { ...details, birthDate: '2026-03-04' },
        expectedVersion: 1,
        reason: 'mistyped',
      });
    });

    test('the same chart number, or the same name and birthday, is asked back and not refused', async () => {
      await add('Ana Núñez-O’Neil', BIRTH, 'A-7');
      const again = { name: "ana nunez o'neil", birthDate: BIRTH };
      const numbered = { name: 'Bo', birthDate: '1999-12-31', chartNumber: 'a 7' };
      for (const person of [again, numbered]) {
        await expect(addPatient(as('assistant'), { ...person, isAnotherPerson: false })).rejects.toMatchObject({
          code: 'LIKELY_SAME_PERSON',
        });
        await addPatient(as('assistant'), { ...person, isAnotherPerson: true });
      }
      await addPatient(as('assistant'), { name: "ana nunez o'neil", birthDate: '2012-05-07', isAnotherPerson: false });
      const other = await add('Cy Marsh');
      const details = { name: 'Cy Marsh', birthDate: BIRTH, chartNumber: 'A 7' };
      const change = { patientId: other, details, expectedVersion: 1 };
      await expect(changePatient(as('assistant'), change)).rejects.toMatchObject({ code: 'LIKELY_SAME_PERSON' });
      await changePatient(as('assistant'), { ...change, isAnotherPerson: true });
      // Once said, the number that stands there is not asked about again.
      await changePatient(as('assistant'), { ...change, details: { ...details, language: 'es' }, expectedVersion: 2 });
    });
  });

  describe('two charts of one person', () => {
    test('are read as one: every link leads to the kept one, and either name or number finds it once', async () => {
      const kept = await add('Ana Lind', BIRTH, '1001');
      const merged = await add('Anna Lindt', BIRTH, '2002');
      const visits = [await visitOn(merged, '2026-01-10'), await visitOn(kept, '2026-02-10'), await visitOn(merged, '2026-03-10')];
      await merge(kept, merged);
      expect((await listVisits(db(), scope(), kept)).map(({ id }) => id)).toEqual(visits);
      expect((await findKeptPatient(db(), scope(), merged))?.id).toBe(kept);
      for (const text of ['lind', 'lindt', 'anna', '1001', '2002']) expect([text, await found(text)]).toEqual([text, [kept]]);
      const visit = await openVisit(as('assistant'), { patientId: merged, kind: 'chair', onDate: '2026-04-10' });
      expect(visit.patientId).toBe(kept);
      const loaded = await loadVisit(db(), scope(), visits[2] ?? '');
      expect([loaded.patient.id, loaded.input.person.name, loaded.lastVisitOn]).toEqual([kept, 'Ana Lind', '2026-02-10']);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('undoing brings both back as they were; what was written since stays with the kept one', async () => {
      const kept = await add('Ana Lind', BIRTH, '1001');
      const merged = await add('Anna Lindt', '2012-05-07', '2002');
      const [early, own] = [await visitOn(merged, '2026-01-10'), await visitOn(kept, '2026-02-10')];
      const before = [await chart(kept), await chart(merged)];
      await merge(kept, merged);
      const later = await visitOn(kept, '2026-05-10');
      await undo(merged);
      expect([await chart(kept), await chart(merged)]).toEqual(before.map((c) => ({ ...c, version: c.version + 2 })));
      expect((await listVisits(db(), scope(), kept)).map(({ id }) => id)).toEqual([own, later]);
      expect((await listVisits(db(), scope(), merged)).map(({ id }) => id)).toEqual([early]);
      expect(await found('2002')).toEqual([merged]);
      const actions = (await listChangesOf(db(), scope(), { table: 'patient', id: merged })).map(({ action, reason }) => [action, reason]);
      expect(actions).toEqual([
        ['addPatient', null],
        ['mergePatients', 'entered twice'],
        ['unmergePatient', 'twins'],
      ]);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('a chain of merges is one person, comes apart in any order, and cannot close to a loop', async () => {
      const [a, b, c] = [await add('Ada'), await add('Bea'), await add('Cleo')];
      await merge(b, c);
      await merge(a, b);
      expect(await found('cleo')).toEqual([a]);
      await expect(merge(c, a)).rejects.toMatchObject({ code: 'MERGE_REFUSED' });
      await expect(merge(b, a)).rejects.toMatchObject({ code: 'MERGE_REFUSED' });
      await undo(c);
      expect(await found('cleo')).toEqual([c]);
      expect(await found('bea')).toEqual([a]);
      await undo(b);
      await merge(c, b);
      expect(await found('bea')).toEqual([c]);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('refused: with itself, unknown, merged already, both visits open, born after a visit, without a reason, seen too long ago', async () => {
      const kept = await add('Ana Lind');
      const merged = await add('Anna Lindt');
      await expect(merge(kept, kept)).rejects.toMatchObject({ code: 'MERGE_REFUSED' });
      const versions = { kept: await chart(kept), merged: await chart(merged) };
      const unknown = { ...versions, merged: { id: 'nobody', version: 1 }, reason: 'r' };
      await expect(mergePatients(as('lead'), unknown)).rejects.toMatchObject({ code: 'PATIENT_NOT_FOUND' });
      await expect(mergePatients(as('lead'), { ...versions, reason: ' ' })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      const old = { ...versions, kept: { id: kept, version: 0 }, reason: 'r' };
      await expect(mergePatients(as('lead'), old)).rejects.toMatchObject({ code: 'CONFLICT' });
      const open = await openVisit(as('assistant'), { patientId: kept, kind: 'chair', onDate: '2026-03-04' });
      const other = await openVisit(as('assistant'), { patientId: merged, kind: 'chair', onDate: '2026-03-04' });
      await expect(merge(kept, merged)).rejects.toMatchObject({ code: 'MERGE_REFUSED', message: expect.stringContaining('open visit') });
      await closeVisit(as('hygienist'), {
        ...EMPTY_CLOSING,
        visitId: other.id,
        draftDigest: (await readDraft(db(), scope(), other.id)).digest,
      });
      const young = await add('Young', '2026-03-05');
      await expect(merge(young, merged)).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(undo(merged)).rejects.toMatchObject({ code: 'MERGE_REFUSED' });
      await merge(kept, merged);
      await expect(merge(await add('Third'), merged)).rejects.toMatchObject({ code: 'MERGE_REFUSED' });
      await expect(
        changePatient(as('lead'), { patientId: merged, details: { name: 'X', birthDate: BIRTH }, expectedVersion: 2, reason: 'r' }),
      ).rejects.toMatchObject({ code: 'PATIENT_NOT_FOUND' });
      expect((await chart(kept)).version).toBe(2);
      expect((await findVisit(db(), scope(), open.id))?.state).toBe('open');
    });

    test('an erased chart is merged with nothing', async () => {
      const [kept, erased] = [await add('Ana Lind'), await add('Anna Lindt')];
      await db().updateTable('patient').set({ state: 'erased' }).where('id', '=', erased).execute();
      await expect(merge(kept, erased)).rejects.toMatchObject({ code: 'PATIENT_NOT_FOUND' });
      await expect(merge(erased, kept)).rejects.toMatchObject({ code: 'PATIENT_NOT_FOUND' });
    });

    test('the two ways round at once: one of them holds', async () => {
      const [a, b] = [await add('Ada'), await add('Bea')];
      const outcomes = await Promise.allSettled([merge(a, b), merge(b, a, 'lead')]);
      expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
      const [chartA, chartB] = [await chart(a), await chart(b)];
      expect([chartA.state, chartB.state].sort()).toEqual(['active', 'merged']);
      expect((await verify(db())).problems).toEqual([]);
    });
  });

  describe('a private answer', () => {
    test('goes on the leaflet by a professional only, with who and when, and comes off again', async () => {
      const { id: visitId } = await openVisit(as('assistant'), { patientId: await add('Ana Lind'), kind: 'chair', onDate: '2026-03-04' });
      await recordAnswer(as('assistant'), {
        visitId,
        path: 'answers.pregnant',
        value: { how: 'asked', value: 'pregnant', askedOn: '2026-03-04' },
      });
      const release = { visitId, question: 'pregnant', isReleased: true, heard: 'patient' } as const;
      await expect(releasePrivate(as('assistant'), release)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      const mark = await releasePrivate(as('hygienist'), release);
      expect(mark).toEqual({ by: 'Member hygienist', at: expect.stringMatching(/^2026-.*Z$/), heard: 'patient' });
      expect((await loadVisit(db(), scope(), visitId)).input.visit.released).toEqual({ pregnant: mark });
      await releasePrivate(as('hygienist'), { ...release, isReleased: false });
      expect((await loadVisit(db(), scope(), visitId)).input.visit.released).toBeUndefined();
      expect((await listDraftPast(db(), scope(), visitId)).map(({ path, value }) => [path, value])).toEqual([['released.pregnant', mark]]);
    });

    test('told alone stays marked when it is carried into the next visit', async () => {
      const patientId = await add('Ana Lind');
      const { id: visitId } = await openVisit(as('assistant'), { patientId, kind: 'chair', onDate: '2026-03-04' });
      const told = { how: 'asked', value: 'pregnant', askedOn: '2026-03-04', alone: true } as const;
      const { digest } = await readDraft(db(), scope(), visitId);
      await closeVisit(as('hygienist'), { ...EMPTY_CLOSING, answers: { pregnant: told }, visitId, draftDigest: digest });
      const next = await openVisit(as('assistant'), { patientId, kind: 'chair', onDate: '2026-06-04' });
      expect((await loadVisit(db(), scope(), next.id)).input.visit.answers).toEqual({ pregnant: { ...told, how: 'carried' } });
    });
  });
}
