import { describe, expect, test } from 'vitest';
import { type CorrectVisitInput, correctVisit } from '../../../src/actions/correctVisit.ts';
import { readStoredAssessment } from '../../../src/actions/finishVisit.ts';
import { loadVisit } from '../../../src/actions/loadVisit.ts';
import { saveShelfItem } from '../../../src/actions/saveShelfItem.ts';
import { withdrawLevel } from '../../../src/actions/withdrawLevel.ts';
import type { Finding } from '../../../src/core/visit/types.ts';
import { listCatalog } from '../../../src/store/read/catalog.ts';
import { listChangesOf } from '../../../src/store/read/changes.ts';
import { listCoursesOfVisit } from '../../../src/store/read/courses.ts';
import { listFindingRows, listFindings } from '../../../src/store/read/findings.ts';
import { listReadings } from '../../../src/store/read/readings.ts';
import { findConfirmedLevel, listResults } from '../../../src/store/read/results.ts';
import { listOpenTasks } from '../../../src/store/read/tasks.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { askedOn, CAVITY, type DemoVisits, demoVisits } from '../demoVisit.ts';

const ON = '2026-03-04';
const SWAB = { takenAt: '2026-03-04T09:36:00Z', rlu: 5150, bound: 'exact', beforeCleaning: true, site: 'lower-front-tongue-side' } as const;
const SPOT: Finding = { tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: true };

export function correctionContract(bench: Bench): void {
  const loaded = (visits: DemoVisits, visitId: string) => loadVisit(bench.store().db, visits.scope, visitId);
  const correct = async (visits: DemoVisits, visitId: string, part: Partial<CorrectVisitInput>) => {
    const { visit } = await loaded(visits, visitId);
    const base = { visitId, expectedVersion: visit.version, reason: 'typed in the wrong line', onDate: '2026-03-09', changes: [] };
    return correctVisit(visits.as('hygienist'), { ...base, ...part });
  };
  const meterOf = async (visits: DemoVisits, visitId: string) => (await loaded(visits, visitId)).input.practice.meters[0]?.id;

  describe('withdrawLevel', () => {
    test('the level counts as not confirmed, the decision stays, and a newer one is not touched', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.open(ON);
      await visits.save(visitId, { findings: [CAVITY] });
      await visits.confirm(visitId, 'high');
      const first = await findConfirmedLevel(db, visits.scope, visitId);
      await visits.confirm(visitId, 'extreme');
      const withdraw = (decidedAt = '') => withdrawLevel(visits.as('hygienist'), { visitId, decidedAt });
      await expect(withdraw(first?.at)).rejects.toMatchObject({ code: 'CONFLICT' });
      const second = await findConfirmedLevel(db, visits.scope, visitId);
      expect(second?.level).toBe('extreme');
      await withdraw(second?.at);
      expect(await findConfirmedLevel(db, visits.scope, visitId)).toBeUndefined();
      await expect(withdraw(second?.at)).rejects.toMatchObject({ code: 'CONFLICT' });
      expect((await listResults(db, visits.scope, visitId, 'risk')).map(({ decision, level }) => [decision, level])).toEqual([
        ['confirmed', 'high'],
        ['changed', 'extreme'],
        ['withdrawn', null],
      ]);
      await visits.confirm(visitId, 'high');
      expect((await findConfirmedLevel(db, visits.scope, visitId))?.level).toBe('high');
      await visits.close(visitId);
      await expect(withdraw((await findConfirmedLevel(db, visits.scope, visitId))?.at)).rejects.toMatchObject({ code: 'VISIT_CLOSED' });
      expect((await verify(db)).problems).toEqual([]);
    });
  });

  describe('correctVisit', () => {
    test('an answer: computed anew beside the old result, with both values and the reason on the record', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.whole(ON);
      const before = await readStoredAssessment(db, visits.scope, await loaded(visits, visitId));
      expect(before.facts.allergies).toEqual([]);
      await correct(visits, visitId, { changes: [{ path: 'answers.allergies', value: askedOn(ON, ['milk-protein']) }] });
      const after = await loaded(visits, visitId);
      const stored = await readStoredAssessment(db, visits.scope, after);
      expect(stored.facts.allergies).toEqual(['milk-protein']);
      expect(stored.leaflet.date).toBe('4 March 2026, corrected on 9 March 2026');
      expect(after.visit.answers?.allergies?.value).toEqual(['milk-protein']);
      expect(after.visit.said?.corrections).toMatchObject([
        {
          by: 'Member hygienist',
          on: '2026-03-09',
          reason: 'typed in the wrong line',
          changes: [{ path: 'answers.allergies', before: { value: [] }, after: { value: ['milk-protein'] } }],
        },
      ]);
      expect((await listResults(db, visits.scope, visitId, 'needs')).length).toBe(2);
      const log = await listChangesOf(db, visits.scope, { table: 'visit', id: visitId });
      expect(log.map(({ action, reason }) => [action, reason])).toEqual([
        ['openVisit', null],
        ['closeVisit', null],
        ['correctVisit', 'typed in the wrong line'],
      ]);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('findings: one noted by mistake stays and says so, one that was left out is added', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.whole(ON, { findings: [CAVITY, SPOT, SPOT] });
      await correct(visits, visitId, { changes: [{ path: 'findings', value: [SPOT, { ...CAVITY, tooth: '46' }] }] });
      expect(await listFindings(db, visits.scope, visitId)).toEqual([SPOT, { ...CAVITY, tooth: '46' }]);
      expect((await listFindingRows(db, visits.scope, visitId)).map(({ tooth, voidReason }) => [tooth, voidReason])).toEqual([
        ['36', 'typed in the wrong line'],
        ['13', null],
        ['13', 'typed in the wrong line'],
        ['46', null],
      ]);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('a reading: another number, then noted by mistake, then there after all', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.open(ON);
      const meterId = await meterOf(visits, visitId);
      await visits.save(visitId, { reading: SWAB, meterId });
      await visits.close(visitId);
      const readings = () => listReadings(db, visits.scope, visits.patientId);
      await correct(visits, visitId, { changes: [{ path: 'reading', value: { ...SWAB, rlu: 1550 } }] });
      expect(await readings()).toMatchObject([{ rlu: 1550, swab: { rlu: 1550 } }]);
      await correct(visits, visitId, { changes: [{ path: 'reading', value: null }] });
      expect(await readings()).toMatchObject([{ rlu: null, takenAt: null, swab: null, state: 'not-taken', reasons: ['noted by mistake'] }]);
      expect((await loaded(visits, visitId)).input.visit.reading).toBeUndefined();
      await correct(visits, visitId, { changes: [{ path: 'reading', value: SWAB }] });
      expect(await readings()).toMatchObject([{ rlu: 5150 }]);
      expect((await loaded(visits, visitId)).visit.said?.corrections).toHaveLength(3);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('what was said, the next date, and a level confirmed anew', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.whole(ON, { nextOn: '2026-06-04' });
      const [course] = await listCoursesOfVisit(db, visits.scope, visitId);
      const id = course?.shelfItemId ?? '';
      const agreed = { items: { [id]: 'declined' }, declinedWhy: { [id]: 'taste' } };
      await correct(visits, visitId, {
        changes: [
          { path: 'agreed', value: agreed },
          { path: 'nextOn', value: '2026-07-06' },
        ],
        level: 'extreme',
      });
      expect((await listCoursesOfVisit(db, visits.scope, visitId)).find((c) => c.shelfItemId === id)).toMatchObject({
        state: 'declined',
        reason: 'taste',
      });
      expect((await listOpenTasks(db, visits.scope)).map(({ kind, due }) => [kind, due])).toEqual([['recall', '2026-07-06']]);
      expect(await findConfirmedLevel(db, visits.scope, visitId)).toMatchObject({ level: 'extreme', by: 'Member hygienist' });
      const { visit } = await loaded(visits, visitId);
      expect(visit.said?.corrections?.[0]?.changes.map(({ path }) => path)).toEqual(['agreed', 'nextOn', 'level']);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('a correction counts although the clock was set back in between', async () => {
      const visits = await demoVisits(bench);
      const visitId = await visits.whole(ON, {});
      const { visit } = await loaded(visits, visitId);
      const back = { ...visits.as('hygienist'), now: () => '2020-01-01T00:00:00.000Z' };
      const part = {
        visitId,
        expectedVersion: visit.version,
        reason: 'seen again',
        onDate: '2026-03-09',
        changes: [],
        level: 'extreme',
      } as const;
      await correctVisit(back, part);
      expect(await findConfirmedLevel(bench.store().db, visits.scope, visitId)).toMatchObject({ level: 'extreme', reason: 'seen again' });
      const stored = await readStoredAssessment(bench.store().db, visits.scope, await loaded(visits, visitId));
      expect(stored.confirmed?.level).toBe('extreme');
    });

    test('a date alone leaves the items as they are, whatever is in stock today', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.whole(ON);
      const before = await listCoursesOfVisit(db, visits.scope, visitId);
      for (const { id, body, version } of await listCatalog(db, visits.scope, 'shelf-item'))
        await saveShelfItem(visits.as('hygienist'), { item: { ...body, id, inStock: false }, expectedVersion: version });
      await correct(visits, visitId, { changes: [{ path: 'nextOn', value: '2026-07-06' }] });
      expect(await listCoursesOfVisit(db, visits.scope, visitId)).toEqual(before);
      const { plan } = await readStoredAssessment(db, visits.scope, await loaded(visits, visitId));
      expect(plan.lines.map(({ shelfItemId }) => shelfItemId).sort()).toEqual(before.map(({ shelfItemId }) => shelfItemId).sort());
    });

    test('an item that the corrected answers keep out ends with the correction', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.whole(ON);
      const before = (await listCoursesOfVisit(db, visits.scope, visitId)).map(({ shelfItemId }) => shelfItemId);
      const natural = { path: 'answers.natural_teeth', value: askedOn(ON, 'none') };
      await correct(visits, visitId, { changes: [natural, { path: 'findings', value: [] }] });
      const after = await listCoursesOfVisit(db, visits.scope, visitId);
      const kept = (await readStoredAssessment(db, visits.scope, await loaded(visits, visitId))).plan.lines.map((line) => line.shelfItemId);
      const gone = before.filter((id) => !kept.includes(id));
      expect(gone.length).toBeGreaterThan(0);
      for (const id of gone) {
        const course = after.find(({ shelfItemId }) => shelfItemId === id);
        expect([course?.toDate, course?.stopReason]).toEqual(['2026-03-09', 'taken out by a correction: typed in the wrong line']);
      }
      expect((await verify(db)).problems).toEqual([]);
    });

    test('refuses an open visit, an old version, no reason and no change, and then writes nothing', async () => {
      const { db } = bench.store();
      const visits = await demoVisits(bench);
      const visitId = await visits.whole(ON);
      const changes = [{ path: 'nextOn', value: '2026-07-06' }];
      await expect(correct(visits, visitId, { changes, reason: ' ' })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await expect(correct(visits, visitId, {})).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(correct(visits, visitId, { changes, expectedVersion: 1 })).rejects.toMatchObject({ code: 'CONFLICT' });
      await expect(correct(visits, visitId, { changes, level: 'unheard' as 'high' })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      const open = await visits.open('2026-08-04');
      await expect(correct(visits, open, { changes })).rejects.toMatchObject({ code: 'VISIT_NOT_FOUND' });
      const both = await Promise.allSettled([correct(visits, visitId, { changes }), correct(visits, visitId, { changes })]);
      expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
      expect((await loaded(visits, visitId)).visit.said?.corrections).toHaveLength(1);
      expect((await verify(db)).problems).toEqual([]);
    });
  });
}
