import { describe, expect, test } from 'vitest';
import { changePatient } from '../../../src/actions/changePatient.ts';
import { loadVisit } from '../../../src/actions/loadVisit.ts';
import { listCourses, listCoursesOfVisit } from '../../../src/store/read/courses.ts';
import { listTasksOfPatient } from '../../../src/store/read/tasks.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { demoVisits } from '../demoVisit.ts';

export function planRecordContract(bench: Bench): void {
  describe('what was agreed, declined and used', () => {
    test('a declined item that was replaced stays on the record, apart from the one taken in its place', async () => {
      const visits = await demoVisits(bench);
      const { db } = bench.store();
      const first = await visits.whole('2026-03-04');
      const second = await visits.begin('2026-06-04');
      const { alternatives, lines } = await visits.planOf(second);
      expect((await listCoursesOfVisit(db, visits.scope, first)).length).toBe(lines.length);
      const swap = alternatives[0];
      if (!swap) throw new Error('the invented shelf has no alternative here');
      const [from, to] = [swap.insteadOf, swap.line.shelfItemId];
      const agreed = { items: { [from]: 'declined', [to]: 'agreed' }, declinedWhy: { [from]: 'taste' }, instead: { [from]: to } };
      await visits.save(second, { agreed });
      const swapped = (await visits.planOf(second)).lines.map(({ shelfItemId }) => shelfItemId);
      expect(swapped).toContain(to);
      expect(swapped).not.toContain(from);
      await visits.close(second);
      const courses = await listCoursesOfVisit(db, visits.scope, second);
      expect(courses.find((course) => course.shelfItemId === from)).toMatchObject({ state: 'declined', reason: 'taste', fromDate: null });
      expect(courses.find((course) => course.shelfItemId === to)).toMatchObject({ state: 'agreed' });
      const third = await visits.open('2026-09-04');
      const { pastCare } = (await loadVisit(db, visits.scope, third)).input.visit;
      expect(pastCare?.find((care) => care.shelfItemId === from)).toMatchObject({
        turnedDown: 'declined',
        stopReason: 'taste',
        since: '2026-06-04',
      });
      expect((await verify(db)).problems).toEqual([]);
    });

    test('an earlier item ends when it is turned down or stopped, and goes on while nobody says so', async () => {
      const visits = await demoVisits(bench);
      const { db } = bench.store();
      const second = await visits.begin('2026-03-06');
      const items = Object.fromEntries((await visits.planOf(second)).lines.map(({ shelfItemId }) => [shelfItemId, 'agreed']));
      await visits.save(second, { agreed: { items } });
      await visits.close(second);

      const third = await visits.open('2026-06-06');
      const { pastCare = [] } = (await loadVisit(db, visits.scope, third)).input.visit;
      const [stopped] = pastCare;
      if (!stopped) throw new Error('nothing was agreed before');
      await visits.save(third, { used: { [stopped.shelfItemId]: { adherence: 'stopped', why: 'taste' } } });
      await visits.close(third);
      const courses = await listCourses(db, visits.scope, visits.patientId);
      const ofSecond = courses.filter((course) => course.visitId === second && course.state === 'agreed');
      expect(ofSecond.find((course) => course.shelfItemId === stopped.shelfItemId)).toMatchObject({
        adherence: 'stopped',
        stopReason: 'taste',
        toDate: '2026-06-06',
      });
      expect(ofSecond.length).toBeGreaterThan(1);
      for (const course of ofSecond.filter((c) => c.shelfItemId !== stopped.shelfItemId)) expect(course.adherence).toBeNull();
      const fourth = await visits.open('2026-07-06');
      const after = (await loadVisit(db, visits.scope, fourth)).input.visit.pastCare;
      expect(after?.find((care) => care.shelfItemId === stopped.shelfItemId)).toMatchObject({ until: '2026-06-06', stopReason: 'taste' });
    });

    test('how the days run is carried with the day on which it was said, and only from earlier visits', async () => {
      const visits = await demoVisits(bench);
      const { db } = bench.store();
      const pastOf = async (visitId: string) => (await loadVisit(db, visits.scope, visitId)).input.visit.pastRhythm;
      const first = await visits.whole('2026-03-04', { agreed: { rhythm: 'night' } });
      await visits.whole('2026-04-04', { agreed: { tasksAccepted: 3 } });
      const third = await visits.open('2026-06-04');
      expect(await pastOf(third)).toEqual({ rhythm: 'night', askedOn: '2026-03-04' });
      expect(await pastOf(first)).toBeUndefined();
      await visits.save(third, { agreed: { rhythm: 'early' } });
      expect(await pastOf(third)).toEqual({ rhythm: 'night', askedOn: '2026-03-04' });
    });

    test('a language said at a visit is that of the next, until the person has one of their own', async () => {
      const visits = await demoVisits(bench);
      const { db } = bench.store();
      const { as, patientId, scope } = visits;
      const languageOf = async (visitId: string) => (await loadVisit(db, scope, visitId)).input.visit.language;
      await visits.whole('2026-03-04', { language: 'fr' });
      const closed = await visits.whole('2026-04-04');
      const open = await visits.open('2026-06-04');
      expect([await languageOf(closed), await languageOf(open)]).toEqual(['fr', 'fr']);
      const details = { name: 'Ana Núñez-O’Neil', birthDate: '1984-03-02', language: 'es', largePrint: true } as const;
      await changePatient(as('assistant'), { patientId, details, expectedVersion: 1 });
      expect([await languageOf(closed), await languageOf(open)]).toEqual(['fr', 'es']);
    });

    test('goals stay open until the person says what became of them', async () => {
      const visits = await demoVisits(bench);
      const { db } = bench.store();
      await visits.whole('2026-03-04', { goals: ['keep my own teeth', 'no sensitive tooth', 'fresh breath'] });
      const second = await visits.open('2026-06-04');
      const { pastGoals = [] } = (await loadVisit(db, visits.scope, second)).input.visit;
      expect(pastGoals.map(({ text, since }) => [text, since])).toEqual([
        ['keep my own teeth', '2026-03-04'],
        ['no sensitive tooth', '2026-03-04'],
        ['fresh breath', '2026-03-04'],
      ]);
      const [kept, reached, dropped] = pastGoals.map(({ id }) => id);
      await visits.save(second, {
        goalsSince: { [kept ?? '']: 'still-on', [reached ?? '']: 'reached', [dropped ?? '']: 'dropped' },
        goals: ['keep my own teeth', 'one new goal'],
      });
      await visits.close(second);
      const goals = (await listTasksOfPatient(db, visits.scope, visits.patientId)).filter(({ kind }) => kind === 'goal');
      expect(goals.map(({ note, state }) => `${note}: ${state}`).sort()).toEqual([
        'fresh breath: dropped',
        'keep my own teeth: open',
        'no sensitive tooth: done',
        'one new goal: open',
      ]);
      expect((await loadVisit(db, visits.scope, second)).input.visit.pastGoals?.map(({ id }) => id).sort()).toEqual(
        pastGoals.map(({ id }) => id).sort(),
      );
      expect((await verify(db)).problems).toEqual([]);
    });
  });
}
