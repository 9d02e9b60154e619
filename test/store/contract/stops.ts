import { describe, expect, test } from 'vitest';
import { correctVisit } from '../../../src/actions/correctVisit.ts';
import { finishVisit } from '../../../src/actions/finishVisit.ts';
import { loadVisit } from '../../../src/actions/loadVisit.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { planStudy } from '../../../src/actions/planStudy.ts';
import { questionReadings } from '../../../src/actions/questionReadings.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import { recordControl } from '../../../src/actions/recordControl.ts';
import { recordStudyReading } from '../../../src/actions/recordStudyReading.ts';
import { reportStudy } from '../../../src/actions/reportStudy.ts';
import { resolveStop } from '../../../src/actions/resolveStop.ts';
import { saveControlPlan } from '../../../src/actions/saveControlPlan.ts';
import { saveLot } from '../../../src/actions/saveLot.ts';
import { setTarget } from '../../../src/actions/setTarget.ts';
import { useUncompared } from '../../../src/actions/useUncompared.ts';
import { voidReading } from '../../../src/actions/voidReading.ts';
import type { StopDone } from '../../../src/core/checks/control.ts';
import { judgeControls } from '../../../src/core/checks/judgeControls.ts';
import { findCatalogEntry, listCatalog } from '../../../src/store/read/catalog.ts';
import { listChangesOf } from '../../../src/store/read/changes.ts';
import { listControls } from '../../../src/store/read/checks.ts';
import { findReadingOfVisit } from '../../../src/store/read/readings.ts';
import { listComputedResults } from '../../../src/store/read/results.ts';
import { findVisit } from '../../../src/store/read/visits.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { control, FAR_TOO_HIGH, IN_LINE, PLAN, STUDY } from '../swabChecks.ts';

const TODAY = '2026-03-04';
const NEW_BOTTLE: StopDone = { answer: 'new-solution', note: 'the old one had stood in the sun' };

/** How a stop ends, and what becomes of the readings before it. */
export function stopsContract(bench: Bench): void {
  const as = (role: 'assistant' | 'hygienist' | 'lead') => bench.practice().as(role);
  const db = () => bench.store().db;
  const scope = () => bench.practice().scope;
  const plan = () => saveControlPlan(as('lead'), { plan: PLAN, expectedVersion: 0 });
  const records = async () => (await listCatalog(db(), scope(), 'stop-resolved')).map(({ body }) => body);
  const at = (time: string) => `${TODAY}T${time}:00Z`;
  const take = (rlu: number, time: string, did?: StopDone, lotId = 'lot-1') =>
    recordControl(as('assistant'), { meterId: 'meter-a', lotId, rlu, takenAt: at(time), ...(did && { did }) });
  const swabbed = async (time: string): Promise<string> => {
    const { id } = await openVisit(as('hygienist'), { patientId: await bench.practice().newPatient(), kind: 'chair', onDate: TODAY });
    const reading = { rlu: 5000, bound: 'exact', lotId: 'lot-1', takenAt: at(time), beforeCleaning: true };
    for (const [path, value] of Object.entries({ meterId: 'meter-a', reading }))
      await recordAnswer(as('hygienist'), { visitId: id, path, value, expectedVersion: 0 });
    return id;
  };

  describe('what was done about a stop', () => {
    test('is noted in one step with the control in line that shows it, and what did not help stays with its control', async () => {
      await plan();
      const { id: outId } = await take(FAR_TOO_HIGH, '06:00');
      const again = await take(FAR_TOO_HIGH, '06:05', { answer: 'repeated-control' });
      expect(again.resolved).toEqual([]);
      const { id, resolved } = await take(IN_LINE, '06:10', NEW_BOTTLE);
      expect(resolved).toMatchObject([{ outIds: [outId, again.id], controlId: id, lotId: 'lot-1', ...NEW_BOTTLE, by: 'Member assistant' }]);
      expect(await records()).toEqual(resolved);
      expect((await listControls(db(), scope())).map(({ note }) => note.did?.answer)).toEqual([
        undefined,
        'repeated-control',
        'new-solution',
      ]);
      expect((await finishVisit(as('hygienist'), await swabbed('06:20'))).reading.counted).toBe(true);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('left out, it is asked for: readings count with caution until it is noted, once', async () => {
      await plan();
      const { id: outId } = await take(FAR_TOO_HIGH, '06:00');
      await expect(resolveStop(as('assistant'), { outId, did: NEW_BOTTLE })).rejects.toMatchObject({
        message: /^controlId: no control is in line/,
      });
      const { id: controlId } = await take(IN_LINE, '06:10');
      const before = await finishVisit(as('hygienist'), await swabbed('06:20'));
      expect(before.reading).toMatchObject({ state: 'flagged', counted: true });
      expect(before.reading.sentences.join(' ')).toContain('what was done about it is not recorded');
      const noted = await resolveStop(as('assistant'), { outId, did: NEW_BOTTLE });
      expect(noted).toMatchObject({ controlId, ...NEW_BOTTLE });
      expect(await resolveStop(as('hygienist'), { outId, did: { answer: 'meter-cleaned' } })).toEqual(noted);
      const after = await finishVisit(as('hygienist'), await swabbed('06:21'));
      expect(after.reading.sentences.join(' ')).not.toContain('not recorded');
    });

    test('ends a run of controls too: the first after a repair begins anew, on the page as in the verdict of a reading', async () => {
      await plan();
      const low = 3000 * Math.exp(-0.11);
      for (const time of ['06:00', '06:01', '06:02', '06:03']) await take(low, time);
      expect((await take(low, '06:04', { answer: 'repeated-control' })).resolved).toEqual([]);
      expect((await finishVisit(as('hygienist'), await swabbed('06:05'))).reading.counted).toBe(false);
      expect((await take(low, '06:10', NEW_BOTTLE)).resolved).toMatchObject([NEW_BOTTLE]);
      expect((await finishVisit(as('hygienist'), await swabbed('06:20'))).reading.counted).toBe(true);
    });

    test('needs words where it is none of the list', async () => {
      await plan();
      await take(FAR_TOO_HIGH, '06:00');
      await expect(take(IN_LINE, '06:10', { answer: 'other', note: ' ' })).rejects.toMatchObject({ message: /^did\.note:/ });
      expect(await listControls(db(), scope())).toHaveLength(1);
    });

    test('a lot whose place another has taken is put away, and its readings still do not count', async () => {
      await saveLot(as('lead'), { lot: { id: 'lot-2', name: 'Lot 2', expiresOn: '2027-06-30' }, expectedVersion: 0 });
      const targets = [...PLAN.targets, ...PLAN.targets.map((target) => ({ ...target, lotId: 'lot-2' }))];
      await saveControlPlan(as('lead'), { plan: { ...PLAN, targets }, expectedVersion: 0 });
      const { id: outId } = await take(FAR_TOO_HIGH, '06:00');
      const { id: other } = await take(IN_LINE, '06:05', undefined, 'lot-2');
      const resolve = (did: StopDone) => resolveStop(as('assistant'), { outId, controlId: other, did });
      await expect(resolve(NEW_BOTTLE)).rejects.toMatchObject({ message: /^controlId: a control of another lot/ });
      expect(await resolve({ answer: 'new-lot' })).toMatchObject({ lotId: 'lot-1', controlId: other });
      expect((await finishVisit(as('hygienist'), await swabbed('06:20'))).reading.counted).toBe(false);
    });

    test('whose control in line turns out to be a mistake is open again, and the record stays', async () => {
      await plan();
      const { id: outId } = await take(FAR_TOO_HIGH, '06:00');
      const first = await take(IN_LINE, '06:10', NEW_BOTTLE);
      await voidReading(as('hygienist'), { id: first.id, expectedVersion: 1, reason: 'the swab of a patient' });
      expect((await finishVisit(as('hygienist'), await swabbed('06:20'))).reading.counted).toBe(false);
      await take(IN_LINE, '06:30');
      await resolveStop(as('assistant'), { outId, did: { answer: 'meter-cleaned' } });
      expect((await records()).map(({ answer }) => answer).sort()).toEqual(['meter-cleaned', 'new-solution']);
    });
  });

  describe('readings before a control out of limits', () => {
    const drift = async () => {
      await plan();
      await take(IN_LINE, '05:00');
      const counted = await swabbed('05:10');
      await finishVisit(as('hygienist'), counted);
      const open = await swabbed('05:20');
      const { id: outId } = await take(FAR_TOO_HIGH, '06:00');
      return { counted, open, outId };
    };
    const question = (outId: string, decision: 'under-question' | 'left', expectedVersion: number) =>
      questionReadings(as('hygienist'), { outId, decision, reason: 'the solution was a week old', expectedVersion });
    const told = async (visitId: string) =>
      (await listComputedResults(db(), scope(), [visitId], 'reading')).map(
        ({ body }) => (body as { reading: { counted: boolean } }).reading.counted,
      );

    test('count as they did until somebody says otherwise; then they count no more, and what was told stays', async () => {
      const { counted, open, outId } = await drift();
      expect(await findReadingOfVisit(db(), scope(), counted)).toMatchObject({ state: 'flagged' });
      expect(await question(outId, 'under-question', 0)).toEqual({ version: 1, changed: 1 });
      const row = await findReadingOfVisit(db(), scope(), counted);
      expect(row).toMatchObject({ state: 'void', rlu: 5000 });
      expect(row?.reasons).toContain(
        'put this reading under question: the solution was a week old (control rule 2 of 6: one far too high)',
      );
      expect(await told(counted)).toEqual([true]);
      expect((await finishVisit(as('hygienist'), open)).reading).toMatchObject({ counted: false });
      const changes = await listChangesOf(db(), scope(), { table: 'reading', id: row?.id ?? '' });
      expect(changes.at(-1)).toMatchObject({ action: 'questionReadings', reason: 'the solution was a week old' });
      expect((await verify(db())).problems).toEqual([]);
    });

    test('a correction of the visit leaves the question on the reading', async () => {
      const { counted, outId } = await drift();
      await question(outId, 'under-question', 0);
      const { input } = await loadVisit(db(), scope(), counted);
      const expectedVersion = (await findVisit(db(), scope(), counted))?.version ?? 0;
      const changes = [{ path: 'reading', value: { ...input.visit.reading, rlu: 5100 } }];
      await correctVisit(as('hygienist'), { visitId: counted, expectedVersion, reason: 'misread', onDate: TODAY, changes });
      expect(await findReadingOfVisit(db(), scope(), counted)).toMatchObject({ state: 'void', rlu: 5100 });
    });

    test('left later, they count again as they did before; each word stays', async () => {
      const { counted, outId } = await drift();
      const before = await findReadingOfVisit(db(), scope(), counted);
      await question(outId, 'under-question', 0);
      await expect(question(outId, 'left', 0)).rejects.toThrow(/changed/i);
      await expect(question(outId, 'under-question', 1)).rejects.toMatchObject({ message: /^decision:/ });
      expect(await question(outId, 'left', 1)).toEqual({ version: 2, changed: 1 });
      const after = await findReadingOfVisit(db(), scope(), counted);
      expect(after).toMatchObject({ state: before?.state, reasons: before?.reasons });
      const [entry] = await listCatalog(db(), scope(), 'stop-readings');
      expect(entry?.body.decisions.map(({ decision }) => decision)).toEqual(['under-question', 'left']);
      expect((await verify(db())).problems).toEqual([]);
    });

    test('readings before the last control in line, of another lot or taken after it are not touched', async () => {
      await plan();
      const early = await swabbed('04:50');
      await control(as('assistant'), IN_LINE, at('05:00'));
      await finishVisit(as('hygienist'), early);
      const { id: outId } = await take(FAR_TOO_HIGH, '06:00');
      expect(await question(outId, 'under-question', 0)).toEqual({ version: 1, changed: 0 });
      expect((await findReadingOfVisit(db(), scope(), early))?.state).not.toBe('void');
    });
  });

  describe('what controls of a lot are held against', () => {
    const set = (expectedVersion: number, more = {}) => {
      const input = { meterId: 'meter-a', lotId: 'lot-1', meanRlu: 4000, cv: 0.1, reason: 'a bottle of another strength', expectedVersion };
      return setTarget(as('hygienist'), { ...input, ...more });
    };
    const storedPlan = async () => (await findCatalogEntry(db(), scope(), 'control-plan', 'meter-a'))?.body;
    const states = async () => {
      const stored = await storedPlan();
      return judgeControls(await listControls(db(), scope()), stored ? [stored] : [], [])[0]?.controls.map(({ state }) => state);
    };

    test('set by hand holds from then on; the old one is kept, and what it said of earlier controls stays', async () => {
      await plan();
      await take(IN_LINE, '06:00');
      await expect(set(1, { cv: 0 })).rejects.toMatchObject({ message: /^cv:/ });
      await expect(set(1, { reason: ' ' })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      expect(await set(1)).toEqual({ version: 2 });
      await control(as('assistant'), 4000);
      await control(as('assistant'), IN_LINE);
      expect(await states()).toEqual(['in-control', 'in-control', 'warning']);
      const stored = await storedPlan();
      expect(stored?.targets).toMatchObject([{ from: 'hand', set: { by: 'Member hygienist', reason: 'a bottle of another strength' } }]);
      expect(stored?.pastTargets).toMatchObject([{ ...PLAN.targets[0], until: stored?.targets[0]?.since }]);
      // A plan that is typed again never touches targets.
      await saveControlPlan(as('lead'), { plan: { ...PLAN, every: { kind: 'daily' } }, expectedVersion: 2 });
      expect(await storedPlan()).toMatchObject({ every: { kind: 'daily' }, targets: stored?.targets, pastTargets: stored?.pastTargets });
      expect((await verify(db())).problems).toEqual([]);
    });

    test('is not carried to a new lot by a comparison that cannot say, and the lot still asks for one', async () => {
      await plan();
      await saveLot(as('lead'), { lot: { id: 'lot-2', name: 'Lot 2', expiresOn: '2027-06-30' }, expectedVersion: 0 });
      const compare = async (verdict: 'too-few' | 'differs') => {
        const { id } = await planStudy(as('hygienist'), { ...STUDY, kind: 'new-lot' });
        await recordStudyReading(as('assistant'), { studyId: id, run: 0, rlu: 3000 });
        const body = { oldId: 'lot-1', newId: 'lot-2', pairs: 8, verdict, ratio: 1.1, low: 0.8, high: 1.5 };
        const report = { sentences: ['s'], estimates: [], body };
        await reportStudy(as('hygienist'), { studyId: id, expectedVersion: 2, onDate: TODAY, report });
      };
      await compare('too-few');
      expect((await storedPlan())?.targets).toHaveLength(1);
      const { lot: went } = await useUncompared(as('assistant'), { lotId: 'lot-2', reason: 'the old lot is used up' });
      expect(went.uncompared).toMatchObject({ by: 'Member assistant', reason: 'the old lot is used up' });
      const { compared: _, uncompared: __, ...typed } = went;
      await saveLot(as('lead'), { lot: { ...typed, name: 'Lot two' }, expectedVersion: 3 });
      await compare('differs');
      const lot = await findCatalogEntry(db(), scope(), 'lot', 'lot-2');
      expect(lot?.body).toMatchObject({ name: 'Lot two', uncompared: went.uncompared, compared: { lotId: 'lot-1', verdict: 'differs' } });
      await expect(useUncompared(as('assistant'), { lotId: 'lot-2', reason: 'r' })).rejects.toMatchObject({ message: /^lotId:/ });
    });
  });
}
