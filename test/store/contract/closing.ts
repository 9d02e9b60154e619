import { describe, expect, test } from 'vitest';
import { type CloseVisitInput, closeVisit } from '../../../src/actions/closeVisit.ts';
import { confirmLevel } from '../../../src/actions/confirmLevel.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { recordAnswer } from '../../../src/actions/recordAnswer.ts';
import type { Finding } from '../../../src/core/visit/types.ts';
import { listCoursesOfVisit } from '../../../src/store/read/courses.ts';
import { readDraft } from '../../../src/store/read/draftFields.ts';
import { listFindings } from '../../../src/store/read/findings.ts';
import { listReadings } from '../../../src/store/read/readings.ts';
import { findConfirmedLevel, listResults } from '../../../src/store/read/results.ts';
import { listOpenTasks, listTasksOfPatient } from '../../../src/store/read/tasks.ts';
import { findVisit } from '../../../src/store/read/visits.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { ASSESSED, EMPTY_CLOSING, LEVEL, RESULT } from '../practice.ts';

const FINDINGS: readonly Finding[] = [
  { tooth: '36', surface: 'occlusal', kind: 'cavity', activity: 'active', isNew: true },
  { tooth: '11', kind: 'restoration', isNew: false },
  { tooth: '31', surface: 'root', kind: 'root-exposed', isNew: false },
];
const SWAB = {
  activatedAt: '2026-03-04T10:35:22+01:00',
  takenAt: '2026-03-04T10:36:00+01:00',
  rlu: 5100.5,
  lotId: 'lot-1',
  operator: { name: 'Member assistant', trained: true },
} as const;

export function closingContract(bench: Bench): void {
  const newVisit = async () => {
    const { newPatient, as } = bench.practice();
    const patientId = await newPatient();
    const { id: visitId } = await openVisit(as('assistant'), { patientId, kind: 'chair', onDate: '2026-03-04' });
    return { patientId, visitId };
  };
  const close = async (visitId: string, input: Partial<CloseVisitInput> = {}) => {
    const { scope, as } = bench.practice();
    const { digest } = await readDraft(bench.store().db, scope, visitId);
    return closeVisit(as('hygienist'), { ...EMPTY_CLOSING, visitId, draftDigest: digest, ...input });
  };

  describe('closeVisit', () => {
    test('turns the draft into the record', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { patientId, visitId } = await newVisit();
      const answers = { snacks: { how: 'asked', value: 3, askedOn: '2026-03-04' }, water: { how: 'does-not-know' } } as const;
      await recordAnswer(as('assistant'), { visitId, path: 'answers.snacks', value: answers.snacks });
      const { closedAt } = await close(visitId, {
        answers,
        allExamined: false,
        reading: { swab: SWAB, assessed: ASSESSED, meterId: 'meter-a' },
        findings: FINDINGS,
        results: [RESULT],
        courses: [
          { shelfItemId: 'paste', state: 'agreed', release: 'not-needed', fromDate: '2026-03-04' },
          { shelfItemId: 'varnish', state: 'declined', release: 'not-needed', reason: 'taste' },
        ],
        tasks: [{ kind: 'recall', due: '2026-09-04', note: 'shorter end' }],
      });

      expect(await findVisit(db, scope, visitId)).toMatchObject({
        state: 'closed',
        answers,
        allExamined: false,
        closedBy: as('hygienist').actor.memberId,
        version: 2,
      });
      expect((await readDraft(db, scope, visitId)).fields).toEqual([]);
      expect(await listFindings(db, scope, visitId)).toEqual(FINDINGS);
      expect(await listReadings(db, scope, patientId)).toMatchObject([
        {
          visitId,
          takenAt: '2026-03-04T09:36:00.000Z',
          rlu: 5100.5,
          bound: 'exact',
          state: 'flagged',
          reasons: ['time since eating not known'],
          swab: SWAB,
          operator: 'Member assistant',
          activatedAt: '2026-03-04T09:35:22.000Z',
        },
      ]);
      expect(await listResults(db, scope, visitId)).toMatchObject([
        { kind: 'regimen', body: RESULT.body, madeAt: closedAt, decision: null },
      ]);
      expect((await listCoursesOfVisit(db, scope, visitId)).map(({ shelfItemId, state, reason }) => [shelfItemId, state, reason])).toEqual([
        ['paste', 'agreed', null],
        ['varnish', 'declined', 'taste'],
      ]);
      expect(await listOpenTasks(db, scope)).toMatchObject([{ kind: 'recall', due: '2026-09-04', patientId }]);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('a swab that was not taken keeps its reason and no number; nothing noted leaves no reading', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      const first = await newVisit();
      await close(first.visitId, {
        reading: { swab: { notTaken: 'bleeding' }, assessed: { ...ASSESSED, state: 'not-taken', counted: false } },
      });
      expect(await listReadings(db, scope, first.patientId)).toMatchObject([
        {
          state: 'not-taken',
          reasons: ['bleeding'],
          rlu: null,
          activatedAt: null,
          takenAt: null,
          bound: null,
          meterId: null,
          operator: null,
        },
      ]);
      const second = await newVisit();
      await close(second.visitId);
      expect(await listReadings(db, scope, second.patientId)).toEqual([]);
      expect(await findVisit(db, scope, second.visitId)).toMatchObject({ allExamined: null, answers: {} });
    });

    test('an item that stands in the plan twice is named, and the visit stays open', async () => {
      const { scope } = bench.practice();
      const { visitId } = await newVisit();
      const courses = [
        { shelfItemId: 'paste', state: 'agreed', release: 'not-needed' },
        { shelfItemId: 'paste', state: 'declined', release: 'not-needed' },
      ] as const;
      await expect(close(visitId, { courses })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
        message: 'paste stands in the plan twice.',
      });
      expect((await findVisit(bench.store().db, scope, visitId))?.state).toBe('open');
    });

    test('an answer saved after the assessment was made stops the closing', async () => {
      const { scope, as } = bench.practice();
      const { visitId } = await newVisit();
      const seen = await readDraft(bench.store().db, scope, visitId);
      await recordAnswer(as('assistant'), { visitId, path: 'answers.late', value: true });
      await expect(close(visitId, { draftDigest: seen.digest })).rejects.toMatchObject({ code: 'CONFLICT' });
      const { fields } = await readDraft(bench.store().db, scope, visitId);
      expect(fields.map(({ path }) => path)).toEqual(['answers.late']);
      expect((await findVisit(bench.store().db, scope, visitId))?.state).toBe('open');
    });

    test('answers racing with the closing are either in it or refused, never lost', async () => {
      const { scope, as } = bench.practice();
      const { visitId } = await newVisit();
      const write = (value: number) => recordAnswer(as('assistant'), { visitId, path: `answers.q${value}`, value });
      await write(0);
      const [closing, ...writes] = await Promise.allSettled([close(visitId), ...Array.from({ length: 8 }, (_, index) => write(index + 1))]);
      const acknowledged = 1 + writes.filter(({ status }) => status === 'fulfilled').length;
      const { fields } = await readDraft(bench.store().db, scope, visitId);
      // Closed with what was there and nothing saved after, or not closed and everything there.
      if (closing.status === 'fulfilled') expect([acknowledged, fields.length]).toEqual([acknowledged, 0]);
      else expect(fields).toHaveLength(acknowledged);
      expect((await findVisit(bench.store().db, scope, visitId))?.state).toBe(closing.status === 'fulfilled' ? 'closed' : 'open');
    });

    test('a closed visit takes no answer, no level and no second closing', async () => {
      const { as } = bench.practice();
      const { visitId } = await newVisit();
      await close(visitId);
      const closed = { code: 'VISIT_CLOSED' };
      await expect(recordAnswer(as('assistant'), { visitId, path: 'p', value: 1 })).rejects.toMatchObject(closed);
      await expect(confirmLevel(as('hygienist'), { ...LEVEL, visitId })).rejects.toMatchObject(closed);
      await expect(close(visitId)).rejects.toMatchObject(closed);
      await expect(close('none')).rejects.toMatchObject({ code: 'VISIT_NOT_FOUND' });
    });

    test('a failing part leaves the visit open with its draft', async () => {
      const { scope, as } = bench.practice();
      const { visitId } = await newVisit();
      await recordAnswer(as('assistant'), { visitId, path: 'p', value: 1 });
      await expect(close(visitId, { tasks: [{ kind: 'recall', due: 'soon' }] })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(close(visitId, { courses: [{ shelfItemId: 'unknown', state: 'agreed', release: 'not-needed' }] })).rejects.toMatchObject(
        {
          code: 'SHELF_ITEM_NOT_FOUND',
        },
      );
      expect((await findVisit(bench.store().db, scope, visitId))?.state).toBe('open');
      expect((await readDraft(bench.store().db, scope, visitId)).fields).toHaveLength(1);
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });

    test('the recall that led to the visit is done when the visit closes', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { patientId, visitId } = await newVisit();
      await close(visitId, {
        tasks: [
          { kind: 'recall', due: '2026-09-04' },
          { kind: 'goal', due: '2026-04-01' },
        ],
      });
      const next = await openVisit(as('assistant'), { patientId, kind: 'chair', onDate: '2026-09-01' });
      await close(next.id, { tasks: [{ kind: 'recall', due: '2027-03-01' }] });
      expect((await listTasksOfPatient(db, scope, patientId)).map(({ kind, due, state }) => [kind, due, state])).toEqual([
        ['goal', '2026-04-01', 'open'],
        ['recall', '2026-09-04', 'done'],
        ['recall', '2027-03-01', 'open'],
      ]);
      expect((await listOpenTasks(db, scope, '2026-04-01')).map(({ kind }) => kind)).toEqual(['goal']);
    });
  });

  describe('confirmLevel', () => {
    test('keeps every decision, and the newest counts', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { visitId } = await newVisit();
      expect(await confirmLevel(as('hygienist'), { ...LEVEL, visitId })).toEqual({
        level: 'high',
        protocol: LEVEL.protocol,
        edition: '1',
        by: 'Member hygienist',
        at: expect.stringMatching(/^2026-03-04T/),
      });
      await expect(confirmLevel(as('dentist'), { ...LEVEL, visitId, level: 'extreme' })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await expect(confirmLevel(as('dentist'), { ...LEVEL, visitId, proposed: null })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      const changed = await confirmLevel(as('dentist'), { ...LEVEL, visitId, level: 'extreme', reason: 'dry mouth since March' });
      expect(changed).toMatchObject({ level: 'extreme', by: 'Member dentist', changedFrom: 'high', reason: 'dry mouth since March' });
      expect(await findConfirmedLevel(db, scope, visitId)).toEqual(changed);
      expect((await listResults(db, scope, visitId, 'risk')).map(({ level, decision }) => [level, decision])).toEqual([
        ['high', 'confirmed'],
        ['extreme', 'changed'],
      ]);
    });

    test('the newest counts although the clock was set back in between', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { visitId } = await newVisit();
      const first = await confirmLevel(as('hygienist'), { ...LEVEL, visitId });
      const back = { ...as('hygienist'), now: () => '2020-01-01T00:00:00.000Z' };
      const second = await confirmLevel(back, { ...LEVEL, visitId, level: 'extreme', reason: 'dry mouth since March' });
      expect(second.level).toBe('extreme');
      expect(second.at > first.at).toBe(true);
      expect(await findConfirmedLevel(db, scope, visitId)).toEqual(second);
    });
  });
}
