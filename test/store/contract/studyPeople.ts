import { describe, expect, test } from 'vitest';
import { dropStudy } from '../../../src/actions/dropStudy.ts';
import { finishVisit } from '../../../src/actions/finishVisit.ts';
import { importStudyReadings } from '../../../src/actions/importStudyReadings.ts';
import { linkStudyPerson } from '../../../src/actions/linkStudyPerson.ts';
import { loadVisit } from '../../../src/actions/loadVisit.ts';
import { mergePatients, unmergePatient } from '../../../src/actions/mergePatients.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { planStudy } from '../../../src/actions/planStudy.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { recordStudyReading } from '../../../src/actions/recordStudyReading.ts';
import { voidReading } from '../../../src/actions/voidReading.ts';
import { listChangesOf } from '../../../src/store/read/changes.ts';
import { listStudyReadings } from '../../../src/store/read/checks.ts';
import { findPatient } from '../../../src/store/read/patients.ts';
import { listStudyPeople, listStudySwabs } from '../../../src/store/read/studyPeople.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { DAYS_STUDY, STUDY } from '../swabChecks.ts';

const DAY = '2026-03-03';

/** A person of a study who is linked to a chart: the 24 hours hold between visits and studies. */
export function studyPeopleContract(bench: Bench): void {
  const as = (role: 'assistant' | 'hygienist') => bench.practice().as(role);
  const db = () => bench.store().db;
  const scope = () => bench.practice().scope;
  const planned = async () => (await planStudy(as('hygienist'), DAYS_STUDY)).id;
  const person = () => bench.practice().newPatient();
  const link = (studyId: string, part: string, patientId: string | null, expectedVersion = 0) =>
    linkStudyPerson(as('assistant'), { studyId, part, patientId, expectedVersion });
  const read = (studyId: string, run: number, takenAt: string) => recordStudyReading(as('assistant'), { studyId, run, rlu: 3000, takenAt });
  const linkedStudy = async (patientId: string) => {
    const id = await planned();
    await link(id, 'Person 1', patientId);
    return id;
  };
  const swabbed = async (patientId: string, takenAt: string): Promise<string> => {
    const { id } = await openVisit(as('hygienist'), { patientId, kind: 'chair', onDate: DAY });
    const reading = { rlu: 5000, bound: 'exact', lotId: 'lot-1', takenAt, beforeCleaning: true };
    for (const [path, value] of Object.entries({ meterId: 'meter-a', reading }))
      await recordAnswer(as('hygienist'), { visitId: id, path, value, expectedVersion: 0 });
    return id;
  };
  const studySwabs = async (visitId: string) => (await loadVisit(db(), scope(), visitId)).input.visit.studySwabs;
  const tooSoon = (says: RegExp) => ({ code: 'SWAB_TOO_SOON', message: expect.stringMatching(says) });

  describe('a person of a study with a chart', () => {
    test('a swab at a visit within 24 hours of the study swab does not count, and says so; of nobody linked nothing is known', async () => {
      const patientId = await person();
      const id = await planned();
      await read(id, 0, `${DAY}T06:00:00Z`);
      await read(id, 1, `${DAY}T06:05:00Z`);
      const visitId = await swabbed(patientId, `${DAY}T08:00:00Z`);
      expect(await studySwabs(visitId)).toBeUndefined();
      await link(id, 'Person 1', patientId);
      expect(await studySwabs(visitId)).toEqual([{ takenAt: `${DAY}T06:00:00.000Z` }]);
      const { reading } = await finishVisit(as('hygienist'), visitId);
      expect(reading).toMatchObject({ state: 'void', counted: false });
      expect(reading.headline).toContain('2 hours after the last swab');
      await dropStudy(as('hygienist'), { studyId: id, expectedVersion: 2, reason: 'too few came' });
      expect(await listStudySwabs(db(), scope(), patientId)).toHaveLength(1);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('a closed visit knows of no swab from days after it', async () => {
      const patientId = await person();
      const id = await linkedStudy(patientId);
      const { id: visitId } = await openVisit(as('hygienist'), { patientId, kind: 'chair', onDate: '2026-03-01' });
      await read(id, 0, `${DAY}T06:00:00Z`);
      expect(await studySwabs(visitId)).toBeUndefined();
    });

    test('a number for the study is refused within 24 hours of a swab at a visit, open or closed, and kept at 24 hours', async () => {
      const patientId = await person();
      const id = await linkedStudy(patientId);
      const visitId = await swabbed(patientId, `${DAY}T08:00:00Z`);
      await expect(read(id, 0, `${DAY}T08:01:00Z`)).rejects.toMatchObject(tooSoon(/^Person 1 was swabbed at a visit on 3 March 2026 at/));
      await finishVisit(as('hygienist'), visitId);
      await expect(read(id, 0, '2026-03-02T08:01:00Z')).rejects.toMatchObject(tooSoon(/at a visit/));
      expect(await listStudyReadings(db(), scope(), id)).toEqual([]);
      expect(await read(id, 1, `${DAY}T08:01:00Z`)).toMatchObject({ against: null });
      expect(await read(id, 0, '2026-03-02T08:00:00Z')).toMatchObject({ against: null });
    });

    test('a number for the study is refused within 24 hours of one of this study or another', async () => {
      const patientId = await person();
      const [first, second] = [await linkedStudy(patientId), await linkedStudy(patientId)];
      const { id } = await read(first, 0, '2026-03-02T09:00:00Z');
      await expect(read(first, 2, '2026-03-03T08:59:00Z')).rejects.toMatchObject(tooSoon(/for a study/));
      await expect(read(second, 0, '2026-03-03T08:59:00Z')).rejects.toMatchObject(tooSoon(/for a study/));
      // Taken back, it stood in a wrong line.
      await voidReading(as('hygienist'), { id, expectedVersion: 1, reason: 'the number of Person 2' });
      expect(await read(second, 0, '2026-03-03T08:59:00Z')).toMatchObject({ against: null });
    });

    test('a table is refused by its line, for the lines of itself as well; a line that says it does not count is kept', async () => {
      const id = await linkedStudy(await person());
      const take = (counted: string) =>
        importStudyReadings(as('assistant'), {
          studyId: id,
          text: [
            'run,rlu,taken at,counted,not counted because',
            '1,3000,2026-03-02T09:00:00Z,yes,',
            '2,3000,2026-03-02T09:05:00Z,yes,',
            `3,3000,2026-03-03T08:00:00Z,${counted}`,
            '4,3000,2026-03-03T08:05:00Z,yes,',
          ].join('\n'),
        });
      const refused = await take('yes,');
      expect(refused).toMatchObject({
        taken: 0,
        problems: [{ line: 4, message: expect.stringMatching(/^run: Person 1 was swabbed for a study/) }],
      });
      expect(await take('no,a day too early')).toMatchObject({ taken: 4, problems: [] });
    });

    test('a link follows its chart into the one it is merged into, and back', async () => {
      const [kept, merged] = [await person(), await person()];
      const id = await linkedStudy(merged);
      await read(id, 0, `${DAY}T06:00:00Z`);
      const versionOf = async (of: string) => ({ id: of, version: (await findPatient(db(), scope(), of))?.version ?? 0 });
      const both = { kept: await versionOf(kept), merged: await versionOf(merged), reason: 'entered twice' };
      await mergePatients(as('hygienist'), both);
      expect(await studySwabs(await swabbed(kept, `${DAY}T08:00:00Z`))).toEqual([{ takenAt: `${DAY}T06:00:00.000Z` }]);
      await expect(link(id, 'Person 2', kept)).rejects.toMatchObject({
        message: 'patientId: this chart is Person 1 of this study already',
      });
      await expect(read(id, 2, '2026-03-04T07:59:00Z')).rejects.toMatchObject(tooSoon(/at a visit/));
      await unmergePatient(as('hygienist'), { merged: await versionOf(merged), reason: 'twins' });
      expect(await listStudySwabs(db(), scope(), kept)).toEqual([]);
      expect(await listStudySwabs(db(), scope(), merged)).toHaveLength(1);
    });

    test('is linked and unlinked against a version, on the record; a wrong link is refused by name', async () => {
      const patientId = await person();
      const id = await planned();
      expect(await link(id, 'Person 1', patientId)).toEqual({ version: 1 });
      await expect(link(id, 'Person 1', await person())).rejects.toMatchObject({ code: 'CONFLICT' });
      expect(await link(id, 'Person 1', null, 1)).toEqual({ version: 2 });
      expect(await listStudyPeople(db(), scope(), id)).toEqual([{ part: 'Person 1', patientId: null, version: 2 }]);
      expect(await link(id, 'Person 2', patientId)).toEqual({ version: 1 });
      const changes = await listChangesOf(db(), scope(), { table: 'catalog', id: `study-person/${id}/Person 1` });
      expect(changes.map(({ action }) => action)).toEqual(['linkStudyPerson', 'linkStudyPerson']);
      await expect(link(id, 'Person 9', patientId)).rejects.toMatchObject({ message: /^part: nobody .* "Person 9"/ });
      await expect(link(id, 'Person 1', 'nobody', 2)).rejects.toMatchObject({ code: 'PATIENT_NOT_FOUND' });
      const hands = (await planStudy(as('hygienist'), STUDY)).id;
      await expect(link(hands, 'A', patientId)).rejects.toMatchObject({ message: /^studyId: only a study on people/ });
      await dropStudy(as('hygienist'), { studyId: id, expectedVersion: 1, reason: 'nobody came' });
      await expect(link(id, 'Person 1', patientId, 2)).rejects.toMatchObject({ code: 'STUDY_OVER' });
      expect((await verify(db())).problems).toEqual([]);
    });
  });
}
