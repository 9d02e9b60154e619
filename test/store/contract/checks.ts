import { describe, expect, test } from 'vitest';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { dropStudy } from '../../../src/actions/dropStudy.ts';
import { finishVisit } from '../../../src/actions/finishVisit.ts';
import { importStudyReadings } from '../../../src/actions/importStudyReadings.ts';
import { loadVisit } from '../../../src/actions/loadVisit.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { overrideStop } from '../../../src/actions/overrideStop.ts';
import { planStudy } from '../../../src/actions/planStudy.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { recordControl } from '../../../src/actions/recordControl.ts';
import { recordStudyReading } from '../../../src/actions/recordStudyReading.ts';
import { recordTraining } from '../../../src/actions/recordTraining.ts';
import { reportStudy } from '../../../src/actions/reportStudy.ts';
import { saveControlPlan } from '../../../src/actions/saveControlPlan.ts';
import { saveMeter } from '../../../src/actions/saveMeter.ts';
import { voidReading } from '../../../src/actions/voidReading.ts';
import { findCatalogEntry } from '../../../src/store/read/catalog.ts';
import { listChangesOf } from '../../../src/store/read/changes.ts';
import { listControls, listStudyReadings } from '../../../src/store/read/checks.ts';
import { listFollowedReadings } from '../../../src/store/read/followedReadings.ts';
import { findMember } from '../../../src/store/read/members.ts';
import { findReadingOfVisit } from '../../../src/store/read/readings.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { control, FAR_TOO_HIGH, IN_LINE, PLAN, STUDY } from '../swabChecks.ts';

const TODAY = '2026-03-04';

/** Controls, the stop they give and its override, studies and training. */
export function checksContract(bench: Bench): void {
  const as = (role: 'assistant' | 'hygienist' | 'lead') => bench.practice().as(role);
  const db = () => bench.store().db;
  const scope = () => bench.practice().scope;
  const plan = () => saveControlPlan(as('lead'), { plan: PLAN, expectedVersion: 0 });
  const study = (id: string) => findCatalogEntry(db(), scope(), 'study', id);

  describe('readings with what was seen of the teeth afterwards', () => {
    const visit = async (patientId: string, onDate: string, { isWhole = true, newLesion = false, isVoid = false } = {}) => {
      const [siteId, id] = [scope().siteId, as('lead').newId()];
      const row = { siteId, id, version: 1, patientId, kind: 'chair', onDate, state: 'closed', said: null } as const;
      await db()
        .insertInto('visit')
        .values({ ...row, answers: null, allExamined: isWhole ? 1 : 0, closedBy: null })
        .execute();
      if (!newLesion) return id;
      const finding = {
        siteId,
        id: as('lead').newId(),
        version: 1,
        visitId: id,
        tooth: '36',
        surface: 'O',
        caries: 'cavity',
        restored: null,
      };
      await db()
        .insertInto('finding')
        .values({ ...finding, activity: null, signs: '[]', isNew: 1, missingReason: null, voidReason: isVoid ? 'wrong tooth' : null })
        .execute();
      return id;
    };
    const swab = (patientId: string, takenAt: string, state: 'valid' | 'void' = 'valid') =>
      db()
        .insertInto('reading')
        .values({
          ...{ siteId: scope().siteId, id: as('lead').newId(), version: 1, use: 'patient', patientId, visitId: null, studyId: null },
          ...{ meterId: 'meter-a', lotId: 'lot-1', operator: null, activatedAt: null, takenAt, rlu: 5000, bound: 'exact', state },
          ...{ reasons: '[]', swab: null },
        })
        .execute();
    const person = async (name: string) => (await addPatient(as('lead'), { name, birthDate: '1980-01-01' })).patientId;
    const followed = () =>
      listFollowedReadings(db(), scope(), { meterId: 'meter-a', onDateOf: (utc) => utc.slice(0, 10) }).then((list) =>
        list.map(({ takenOn, newLesionOn, followedUntil }) => [takenOn, newLesionOn, followedUntil]),
      );

    test('a lesion of the day itself, one noted by mistake and a look at some teeth do not count; a merged chart does', async () => {
      const id = await person('Ada');
      await swab(id, '2025-01-10T09:00:00.000Z');
      await swab(id, '2025-01-12T09:00:00.000Z', 'void');
      await visit(id, '2025-01-10', { newLesion: true });
      await visit(id, '2025-05-01', { newLesion: true, isVoid: true });
      expect(await followed()).toEqual([['2025-01-10', undefined, '2025-05-01']]);
      await visit(id, '2025-09-01', { isWhole: false, newLesion: true });
      expect(await followed()).toEqual([['2025-01-10', '2025-09-01', '2025-05-01']]);
      const other = await person('Ada again');
      await visit(other, '2025-08-01', { newLesion: true });
      await db().updateTable('patient').set({ state: 'merged', mergedInto: id }).where('id', '=', other).execute();
      expect(await followed()).toEqual([['2025-01-10', '2025-08-01', '2025-08-01']]);
      expect(await listFollowedReadings(db(), scope(), { meterId: 'another', onDateOf: () => '2025-01-01' })).toEqual([]);
    });
  });

  describe('a control', () => {
    test('comes back as it was noted, oldest first, at a limit of the meter as a bound', async () => {
      const note = { solution: { name: 'ATP solution', lot: 'S-1' }, temperatureDegC: 21.5, storage: 'fridge' } as const;
      const { id } = await recordControl(as('assistant'), { meterId: 'meter-a', lotId: 'lot-1', rlu: 2950, note });
      await control(as('assistant'), 60_000, '2026-03-01T08:00:00+01:00');
      expect(await listControls(db(), scope(), { meterId: 'meter-a' })).toEqual([
        expect.objectContaining({ rlu: 60_000, bound: 'at-least', takenAt: '2026-03-01T07:00:00.000Z', note: {} }),
        expect.objectContaining({ id, rlu: 2950, bound: 'exact', operator: 'Member assistant', state: 'valid', voidReason: null, note }),
      ]);
      expect(await listControls(db(), scope(), { until: '2026-03-02T00:00:00.000Z' })).toHaveLength(1);
      expect(await listControls(db(), scope(), { meterId: 'another' })).toEqual([]);
      expect((await verify(db())).problems).toEqual([]);
    });

    test.each([
      ['a meter nobody has', { meterId: 'none' }, 'METER_NOT_FOUND', /no meter none/],
      ['a lot nobody has', { lotId: 'none' }, 'LOT_NOT_FOUND', /no swab lot none/],
      ['a number outside the meter', { rlu: 39 }, 'INPUT_INVALID', /^rlu: below the lowest/],
      ['a time still to come', { takenAt: '2036-01-01T09:00:00Z' }, 'INPUT_INVALID', /^takenAt:.*in the future/],
      ['an oven', { note: { temperatureDegC: 180 } }, 'INPUT_INVALID', /^temperatureDegC:/],
      ['colder than any freezer', { note: { temperatureDegC: -31 } }, 'INPUT_INVALID', /^temperatureDegC:/],
    ])('%s is refused by name and nothing is kept', async (_, part, code, message) => {
      const wrong = { meterId: 'meter-a', lotId: 'lot-1', rlu: 3000, ...part };
      await expect(recordControl(as('assistant'), wrong)).rejects.toMatchObject({ code, message: expect.stringMatching(message) });
      expect(await listControls(db(), scope())).toEqual([]);
    });

    test('noted by mistake stays with its number and the reason; a second void changes nothing', async () => {
      const { id } = await control(as('assistant'), IN_LINE);
      const input = { id, expectedVersion: 1, reason: 'the swab of a patient' };
      expect(await voidReading(as('hygienist'), input)).toEqual({ version: 2 });
      expect(await voidReading(as('hygienist'), input)).toEqual({ version: 2 });
      expect(await listControls(db(), scope())).toMatchObject([{ rlu: IN_LINE, state: 'void', voidReason: 'the swab of a patient' }]);
      const changes = await listChangesOf(db(), scope(), { table: 'reading', id });
      expect(changes.map(({ action, reason }) => [action, reason])).toEqual([
        ['recordControl', null],
        ['voidReading', 'the swab of a patient'],
      ]);
    });
  });

  describe('a control out of limits', () => {
    const takenToday = async (rlu: number): Promise<string> => {
      const { id } = await openVisit(as('hygienist'), { patientId: await bench.practice().newPatient(), kind: 'chair', onDate: TODAY });
      const reading = { rlu, bound: 'exact', lotId: 'lot-1', takenAt: as('hygienist').now(), beforeCleaning: true };
      for (const [path, value] of Object.entries({ meterId: 'meter-a', reading }))
        await recordAnswer(as('hygienist'), { visitId: id, path, value, expectedVersion: 0 });
      return id;
    };

    test('keeps readings of its meter and lot out of every decision, and says so', async () => {
      await plan();
      await control(as('assistant'), IN_LINE);
      const before = await takenToday(5000);
      await control(as('assistant'), FAR_TOO_HIGH);
      const after = await takenToday(5000);
      expect((await finishVisit(as('hygienist'), before)).reading).toMatchObject({ counted: true });
      const { reading } = await finishVisit(as('hygienist'), after);
      expect(reading).toMatchObject({ counted: false, state: 'void' });
      expect(reading.headline).toMatch(
        /^Not counted: the control of 4 March 2026, .* was out of limits \(control rule 2 of 6: one far too high\)/,
      );
      expect(await findReadingOfVisit(db(), scope(), after)).toMatchObject({ rlu: 5000, state: 'void' });
    });

    test('with an override the reading counts, and carries who and why', async () => {
      await plan();
      const { id: controlId } = await control(as('assistant'), FAR_TOO_HIGH);
      const visitId = await takenToday(5000);
      const given = await overrideStop(as('hygienist'), { controlId, onDate: TODAY, reason: 'one patient who came far' });
      expect(await overrideStop(as('hygienist'), { controlId, onDate: TODAY, reason: 'again' })).toEqual(given);
      const { reading } = await finishVisit(as('hygienist'), visitId);
      expect(reading).toMatchObject({ counted: true, state: 'flagged' });
      const row = await findReadingOfVisit(db(), scope(), visitId);
      expect(row?.reasons).toContain('Member hygienist let readings count that day: one patient who came far');
      expect((await verify(db())).problems).toEqual([]);
    });

    test('an override answers one control on one day', async () => {
      await plan();
      const { id: first } = await control(as('assistant'), FAR_TOO_HIGH);
      await overrideStop(as('hygienist'), { controlId: first, onDate: TODAY, reason: 'r' });
      const { id: second } = await control(as('assistant'), FAR_TOO_HIGH);
      const visitId = await takenToday(5000);
      expect((await finishVisit(as('hygienist'), visitId)).reading).toMatchObject({ counted: false });
      await expect(overrideStop(as('hygienist'), { controlId: first, onDate: '2026-03-05', reason: 'r' })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
      });
      await voidReading(as('hygienist'), { id: second, expectedVersion: 1, reason: 'wrong solution' });
      await control(as('assistant'), IN_LINE);
      await expect(overrideStop(as('hygienist'), { controlId: first, onDate: TODAY, reason: 'r' })).resolves.toMatchObject({ reason: 'r' });
      expect((await loadVisit(db(), scope(), await takenToday(5000))).input.visit.controls?.at(-1)).toMatchObject({ state: 'in-control' });
    });
  });

  describe('a study', () => {
    const planned = async () => (await planStudy(as('hygienist'), STUDY)).id;
    const read = (studyId: string, run: number, rlu: number) => recordStudyReading(as('assistant'), { studyId, run, rlu });

    test('takes each swab of its run sheet once, begins with the first, and gives what it measured to the meter', async () => {
      const id = await planned();
      for (const run of STUDY.runs) await read(id, run.index, 3000 + run.index);
      await expect(read(id, 0, 3000)).rejects.toMatchObject({ code: 'CONFLICT' });
      await expect(read(id, 8, 3000)).rejects.toMatchObject({ code: 'INPUT_INVALID', message: /swabs 1 to 8/ });
      expect(await study(id)).toMatchObject({ version: 2, body: { state: 'running' } });
      expect((await listStudyReadings(db(), scope(), id)).map(({ run, operator }) => [run, operator]).at(-1)).toEqual([
        7,
        'Member hygienist',
      ]);
      const report = {
        sentences: ['Hands add 9 %.'],
        estimates: [{ component: 'operator', variance: 0.008, degreesOfFreedom: 1, readings: 8 }],
        body: { table: [] },
      } as const;
      await reportStudy(as('hygienist'), { studyId: id, expectedVersion: 2, onDate: TODAY, report });
      expect((await study(id))?.body).toMatchObject({
        state: 'reported',
        report: { by: 'Member hygienist', sentences: ['Hands add 9 %.'] },
      });
      const meter = await findCatalogEntry(db(), scope(), 'meter', 'meter-a');
      const own = [{ ...report.estimates[0], studyId: id, kind: 'hands', reportedOn: TODAY }];
      expect(meter?.body.own).toEqual(own);
      const { own: _, ...described } = meter?.body ?? { own };
      await saveMeter(as('lead'), { meter: { ...described, name: 'Renamed' } as never, expectedVersion: 2 });
      expect((await findCatalogEntry(db(), scope(), 'meter', 'meter-a'))?.body).toMatchObject({ name: 'Renamed', own });
      await expect(read(id, 0, 3000)).rejects.toMatchObject({ code: 'STUDY_OVER' });
      expect((await verify(db())).problems).toEqual([]);
    });

    test('a person swabbed again within a day is kept and not counted', async () => {
      const { id } = await planStudy(as('hygienist'), {
        ...STUDY,
        kind: 'paired-days',
        design: { ...STUDY.design, medium: 'people' },
        runs: [0, 1].map((index) => ({ index, part: 'Person 1', replicate: index + 1 })),
      });
      const at = (run: number, takenAt: string) => recordStudyReading(as('assistant'), { studyId: id, run, rlu: 3000, takenAt });
      expect(await at(0, '2026-03-02T09:00:00Z')).toMatchObject({ against: null });
      expect(await at(1, '2026-03-03T08:59:00Z')).toMatchObject({ against: 'within 24 hours of another swab of Person 1' });
      expect(await at(1, '2026-03-03T09:00:00Z')).toMatchObject({ against: null });
      expect((await listStudyReadings(db(), scope(), id)).map(({ state }) => state)).toEqual(['valid', 'void', 'valid']);
    });

    test('hands are not compared on people, since a swab takes the plaque away', async () => {
      const onPeople = { ...STUDY, design: { ...STUDY.design, medium: 'people' } } as const;
      await expect(planStudy(as('hygienist'), onPeople)).rejects.toMatchObject({ message: /takes the plaque away/ });
    });

    test('a table is taken whole or not at all, each problem by its line', async () => {
      const id = await planned();
      const take = (text: string) => importStudyReadings(as('assistant'), { studyId: id, text });
      const bad = 'run;rlu;operator\n1;3,010;\n1;3000;\n\nx;3000;\n99;3000;\n2;many;\n3;7;\n';
      expect(await take(bad)).toEqual({
        taken: 0,
        notCounted: [],
        problems: [
          { line: 3, message: 'run: swab 1 has its reading already' },
          { line: 5, message: 'run: "x" is not a number of the run sheet, from 1' },
          { line: 6, message: 'run: the run sheet has swabs 1 to 8, and not 99' },
          { line: 7, message: 'rlu: "many" is not a whole number; write 5150, <40 or >60000' },
          { line: 8, message: 'rlu: below the lowest reading of this meter, 40' },
        ],
      });
      expect(await listStudyReadings(db(), scope(), id)).toEqual([]);
      const good = 'run,rlu,operator,counted,not counted because\n1,"3,010",\n2,>60000,Ines,yes\n2,900,,no,spilt\n';
      expect(await take(good)).toEqual({ taken: 3, problems: [], notCounted: [{ line: 4, message: 'spilt' }] });
      expect(await listStudyReadings(db(), scope(), id)).toMatchObject([
        { run: 0, rlu: 3010, bound: 'exact', operator: 'Member assistant', lotId: 'lot-1' },
        { run: 1, rlu: 60_000, bound: 'at-least', operator: 'Ines', state: 'valid' },
        { run: 1, rlu: 900, state: 'void', voidReason: 'spilt' },
      ]);
    });

    test('of a new lot gives it a target in the plan, once, moved by the ratio', async () => {
      await plan();
      const body = { oldId: 'lot-1', newId: 'lot-2', pairs: 8, verdict: 'same-within', ratio: 1.1, low: 1.02, high: 1.19 };
      const compare = async () => {
        const { id } = await planStudy(as('hygienist'), { ...STUDY, kind: 'new-lot' });
        await read(id, 0, 3000);
        const report = { sentences: ['The new lot reads 10 % higher.'], estimates: [], body };
        await reportStudy(as('hygienist'), { studyId: id, expectedVersion: 2, onDate: TODAY, report });
      };
      await compare();
      await compare();
      const stored = await findCatalogEntry(db(), scope(), 'control-plan', 'meter-a');
      expect(stored).toMatchObject({
        version: 2,
        body: { targets: [PLAN.targets[0], { lotId: 'lot-2', sdLn: 0.1, count: 8, from: 'comparison' }] },
      });
      expect(stored?.body.targets[1]?.meanLn).toBeCloseTo(Math.log(3300), 12);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('given up, it keeps its readings and takes no more', async () => {
      const id = await planned();
      await read(id, 0, 3000);
      await dropStudy(as('hygienist'), { studyId: id, expectedVersion: 2, reason: 'the solution ran out' });
      expect((await study(id))?.body).toMatchObject({ state: 'dropped', dropped: { reason: 'the solution ran out' } });
      await expect(read(id, 1, 3000)).rejects.toMatchObject({ code: 'STUDY_OVER' });
      expect(await listStudyReadings(db(), scope(), id)).toHaveLength(1);
    });
  });

  describe('training', () => {
    test('each step is kept; a lead with a reason makes the swabs count without a caution', async () => {
      const { memberId } = as('hygienist').actor;
      const note = (step: Parameters<typeof recordTraining>[1]['step'], more = {}) =>
        recordTraining(as('assistant'), { memberId, step, onDate: TODAY, ...more });
      await note({ kind: 'read-card' });
      await note({ kind: 'supervised-swab', with: 'Member assistant' });
      const qualified = { kind: 'qualified-by-lead', reason: 'three swabs watched' } as const;
      await expect(note(qualified)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      expect(await findMember(db(), scope(), memberId)).toMatchObject({ trainedSwab: false });
      await recordTraining(as('lead'), { memberId, step: qualified, onDate: TODAY, dueOn: '2027-03-04' });
      expect(await findMember(db(), scope(), memberId)).toMatchObject({ trainedSwab: true });
      expect((await findCatalogEntry(db(), scope(), 'training', memberId))?.body).toMatchObject({
        dueOn: '2027-03-04',
        events: [{ kind: 'read-card', notedBy: 'Member assistant' }, { kind: 'supervised-swab' }, { ...qualified, notedBy: 'Lead member' }],
      });
      await expect(note({ kind: 'watched' }, { dueOn: TODAY })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      expect((await verify(db())).problems).toEqual([]);
    });
  });
}
