import { describe, expect, test } from 'vitest';
import { addAccount } from '../../../src/actions/addAccount.ts';
import { addAppointment } from '../../../src/actions/addAppointment.ts';
import { addMember } from '../../../src/actions/addMember.ts';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { changeAppointment } from '../../../src/actions/changeAppointment.ts';
import { changeMember } from '../../../src/actions/changeMember.ts';
import { changePassword } from '../../../src/actions/changePassword.ts';
import { changePatient } from '../../../src/actions/changePatient.ts';
import { closeVisit } from '../../../src/actions/closeVisit.ts';
import { confirmLevel } from '../../../src/actions/confirmLevel.ts';
import type { ActionContext } from '../../../src/actions/context.ts';
import { correctStock } from '../../../src/actions/correctStock.ts';
import { correctVisit } from '../../../src/actions/correctVisit.ts';
import { createPractice } from '../../../src/actions/createPractice.ts';
import { dispenseItem } from '../../../src/actions/dispenseItem.ts';
import { dropStudy } from '../../../src/actions/dropStudy.ts';
import { importDay } from '../../../src/actions/importDay.ts';
import { importShelf } from '../../../src/actions/importShelf.ts';
import { linkStudyPerson } from '../../../src/actions/linkStudyPerson.ts';
import { logAccess } from '../../../src/actions/logAccess.ts';
import { mergePatients, unmergePatient } from '../../../src/actions/mergePatients.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { overrideStop } from '../../../src/actions/overrideStop.ts';
import { planStudy } from '../../../src/actions/planStudy.ts';
import { questionReadings } from '../../../src/actions/questionReadings.ts';
import { receiveStock } from '../../../src/actions/receiveStock.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { recordControl } from '../../../src/actions/recordControl.ts';
import { recordMeterCheck } from '../../../src/actions/recordMeterCheck.ts';
import { recordStudyReading } from '../../../src/actions/recordStudyReading.ts';
import { recordTraining } from '../../../src/actions/recordTraining.ts';
import { refillItem } from '../../../src/actions/refillItem.ts';
import { refuseItem } from '../../../src/actions/refuseItem.ts';
import { releasePrivate } from '../../../src/actions/releasePrivate.ts';
import { reportStudy } from '../../../src/actions/reportStudy.ts';
import { resolveStop } from '../../../src/actions/resolveStop.ts';
import { retireLocalProtocol } from '../../../src/actions/retireLocalProtocol.ts';
import { type ActionName, RIGHTS } from '../../../src/actions/rights.ts';
import { saveControlPlan } from '../../../src/actions/saveControlPlan.ts';
import { saveLocalProtocol } from '../../../src/actions/saveLocalProtocol.ts';
import { saveLot } from '../../../src/actions/saveLot.ts';
import { saveMeter } from '../../../src/actions/saveMeter.ts';
import { saveMeterCheckPlan } from '../../../src/actions/saveMeterCheckPlan.ts';
import { saveSettings } from '../../../src/actions/saveSettings.ts';
import { saveShelfItem } from '../../../src/actions/saveShelfItem.ts';
import { saveStandingOrder } from '../../../src/actions/saveStandingOrder.ts';
import { setCode } from '../../../src/actions/setCode.ts';
import { setTarget } from '../../../src/actions/setTarget.ts';
import { signItem } from '../../../src/actions/signItem.ts';
import { stopRefill } from '../../../src/actions/stopRefill.ts';
import { takeBackMove } from '../../../src/actions/takeBackMove.ts';
import { useUncompared } from '../../../src/actions/useUncompared.ts';
import { voidReading } from '../../../src/actions/voidReading.ts';
import { withdrawLevel } from '../../../src/actions/withdrawLevel.ts';
import { withdrawRelease } from '../../../src/actions/withdrawRelease.ts';
import { withdrawStandingOrder } from '../../../src/actions/withdrawStandingOrder.ts';
import type { Role } from '../../../src/api/apiTypes.ts';
import { regimenTables } from '../../../src/content/regimenTables.ts';
import type { Bench } from '../contract.ts';
import { EMPTY_CLOSING, LEVEL, PRACTICE } from '../practice.ts';
import { PLAN, STUDY } from '../swabChecks.ts';
import { OWN_RINSE } from './localProtocols.ts';

const IN_PLAN = { place: 'in-plan', bars: [], isForDentist: false, isTurnedDown: false } as const;

/** Each action with input that only the right can make it refuse for NOT_ALLOWED; other refusals do not matter here. */
const CALLS: Readonly<Record<ActionName, (context: ActionContext) => Promise<unknown>>> = {
  createPractice: (context) => createPractice(context, { practice: PRACTICE, locale: 'en', firstMember: { name: 'M', roles: ['lead'] } }),
  addMember: (context) => addMember(context, { name: 'M', roles: ['assistant'], trainedSwab: false }),
  addAccount: (context) => addAccount(context, { memberId: 'none', login: 'm', passwordHash: 'h' }),
  changePassword: (context) => changePassword(context, { memberId: context.actor.memberId, passwordHash: 'h' }),
  setCode: (context) => setCode(context, { codeHash: 'h' }),
  changeMember: (context) =>
    changeMember(context, { memberId: 'none', roles: ['assistant'], trainedSwab: false, active: true, expectedVersion: 1 }),
  saveSettings: (context) => saveSettings(context, { settings: {}, expectedVersion: 99 }),
  saveMeter: (context) => saveMeter(context, { meter: { ...meter(), id: 'm2' }, expectedVersion: 0 }),
  saveLot: (context) => saveLot(context, { lot: { id: 'l2', name: 'l2', expiresOn: '2027-01-01' }, expectedVersion: 0 }),
  saveShelfItem: (context) => saveShelfItem(context, { item: { ...shelfItem(), id: 's2' }, expectedVersion: 0 }),
  importShelf: (context) =>
    importShelf(context, { text: '', seen: '', today: '2026-03-04', tables: regimenTables, leafletNameOf: () => undefined }),
  receiveStock: (context) => receiveStock(context, { shelfItemId: 'none', packs: 1, today: '2026-03-04' }),
  refillItem: (context) =>
    refillItem(context, {
      visitId: 'none',
      shelfItemId: 'none',
      nothingNew: true,
      today: '2026-03-04',
      refills: { notHere: null, lines: [] },
    }),
  stopRefill: (context) => stopRefill(context, { visitId: 'none', today: '2026-03-04' }),
  dispenseItem: (context) => dispenseItem(context, { visitId: 'none', shelfItemId: 'none', today: '2026-03-04', facts: IN_PLAN }),
  correctStock: (context) =>
    correctStock(context, { shelfItemId: 'none', lot: { lot: null, expiry: null }, as: 'expired', packs: 1, today: '2026-03-04' }),
  takeBackMove: (context) => takeBackMove(context, { moveId: 'none', today: '2026-03-04' }),
  saveStandingOrder: (context) =>
    saveStandingOrder(context, { id: 'o', order: { name: 'o', date: '2026-01-01', shelfItemIds: [] }, expectedVersion: 0 }),
  saveLocalProtocol: (context) => saveLocalProtocol(context, { id: 'p', protocol: OWN_RINSE }),
  retireLocalProtocol: (context) => retireLocalProtocol(context, { id: 'none', reason: 'none', on: '2026-03-04', expectedVersion: 1 }),
  withdrawStandingOrder: (context) => withdrawStandingOrder(context, { id: 'none', expectedVersion: 1 }),
  recordControl: (context) => recordControl(context, { meterId: 'none', lotId: 'none', rlu: 1000 }),
  voidReading: (context) => voidReading(context, { id: 'none', expectedVersion: 1, reason: 'r' }),
  recordMeterCheck: (context) => recordMeterCheck(context, { meterId: 'none', checkedBy: 'device', passed: true }),
  saveMeterCheckPlan: (context) => saveMeterCheckPlan(context, { plan: { meterId: 'none', everyDays: 30 }, expectedVersion: 0 }),
  saveControlPlan: (context) => saveControlPlan(context, { plan: PLAN, expectedVersion: 99 }),
  overrideStop: (context) => overrideStop(context, { controlId: 'none', onDate: '2026-03-04', reason: 'r' }),
  resolveStop: (context) => resolveStop(context, { outId: 'none', did: { answer: 'meter-cleaned' } }),
  questionReadings: (context) => questionReadings(context, { outId: 'none', decision: 'left', reason: 'r', expectedVersion: 0 }),
  setTarget: (context) => setTarget(context, { meterId: 'none', lotId: 'none', meanRlu: 1000, cv: 0.1, reason: 'r', expectedVersion: 99 }),
  useUncompared: (context) => useUncompared(context, { lotId: 'none', reason: 'r' }),
  planStudy: (context) => planStudy(context, { ...STUDY, runs: [] }),
  recordStudyReading: (context) => recordStudyReading(context, { studyId: 'none', run: 0, rlu: 1000 }),
  linkStudyPerson: (context) => linkStudyPerson(context, { studyId: 'none', part: 'Person 1', patientId: null, expectedVersion: 0 }),
  reportStudy: (context) =>
    reportStudy(context, {
      studyId: 'none',
      expectedVersion: 1,
      onDate: '2026-03-04',
      report: { sentences: ['s'], estimates: [], body: null },
    }),
  dropStudy: (context) => dropStudy(context, { studyId: 'none', expectedVersion: 1, reason: 'r' }),
  recordTraining: (context) => recordTraining(context, { memberId: 'none', step: { kind: 'watched' }, onDate: '2026-03-04' }),
  addPatient: (context) => addPatient(context, { name: 'P', birthDate: '2000-01-01' }),
  changePatient: (context) =>
    changePatient(context, { patientId: 'none', details: { name: 'P', birthDate: '2000-01-01' }, expectedVersion: 1 }),
  mergePatients: (context) => mergePatients(context, { kept: { id: 'a', version: 1 }, merged: { id: 'b', version: 1 }, reason: 'r' }),
  unmergePatient: (context) => unmergePatient(context, { merged: { id: 'b', version: 1 }, reason: 'r' }),
  releasePrivate: (context) => releasePrivate(context, { visitId: 'none', question: 'pregnant', isReleased: true }),
  addAppointment: (context) => addAppointment(context, { patientId: 'none', onDate: '2026-03-04' }),
  changeAppointment: (context) => changeAppointment(context, { id: 'none', expectedVersion: 1, state: 'planned' }),
  importDay: (context) => importDay(context, { onDate: '2026-03-04', today: '2026-03-04', rows: [] }),
  openVisit: (context) => openVisit(context, { patientId: 'none', kind: 'chair', onDate: '2026-03-04' }),
  recordAnswer: (context) => recordAnswer(context, { visitId: 'none', path: 'p', value: 1 }),
  confirmLevel: (context) => confirmLevel(context, { ...LEVEL, visitId: 'none' }),
  withdrawLevel: (context) => withdrawLevel(context, { visitId: 'none', decidedAt: '2026-03-04T10:00:00.000Z' }),
  correctVisit: (context) =>
    correctVisit(context, {
      visitId: 'none',
      expectedVersion: 2,
      reason: 'r',
      onDate: '2026-03-04',
      changes: [{ path: 'nextOn', value: null }],
    }),
  signItem: (context) => signItem(context, { visitId: 'none', shelfItemId: 'paste', stops: [] }),
  refuseItem: (context) => refuseItem(context, { visitId: 'none', shelfItemId: 'paste', reason: 'r' }),
  withdrawRelease: (context) => withdrawRelease(context, { visitId: 'none', shelfItemId: 'paste' }),
  closeVisit: (context) => closeVisit(context, { ...EMPTY_CLOSING, visitId: 'none', draftDigest: '' }),
  logAccess: (context) => logAccess(context, { action: 'open-record', entity: { table: 'patient', id: 'none' } }),
};

function meter() {
  const [first] = PRACTICE.meters;
  if (!first) throw new Error('no meter');
  return first;
}

function shelfItem() {
  const [first] = PRACTICE.shelf;
  if (!first) throw new Error('no item');
  return first;
}

export function rightsContract(bench: Bench): void {
  describe('rights', () => {
    test.each(Object.keys(CALLS) as ActionName[])('%s is done by the roles of the table and by no other', async (action) => {
      const allowed: readonly Role[] = RIGHTS[action];
      for (const role of ['assistant', 'hygienist', 'dentist', 'lead'] as const) {
        const outcome = await CALLS[action](bench.practice().as(role)).then(
          () => 'done',
          (error: { code?: string }) => error.code,
        );
        expect([role, outcome === 'NOT_ALLOWED']).toEqual([role, !allowed.includes(role)]);
      }
    });

    test('a member without a role may do nothing', async () => {
      const context = bench.practice().as('lead');
      const nobody = { ...context, actor: { ...context.actor, roles: ['cleaner'] } };
      for (const call of Object.values(CALLS)) await expect(call(nobody)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
    });

    test('the first practice needs nobody, a second one a lead', async () => {
      const { db, now, newId } = bench.practice().as('lead');
      const input = { practice: PRACTICE, locale: 'en', firstMember: { name: 'M', roles: ['lead'] } } as const;
      await expect(createPractice({ db, now, newId }, input)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      const place = await bench.engine.newPlace();
      const fresh = await place.open();
      await createPractice({ db: fresh.db, now, newId }, input);
      await expect(createPractice({ db: fresh.db, now, newId }, input)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      await fresh.close();
    });
  });
}
