import { describe, expect, test } from 'vitest';
import { closeVisit } from '../../../src/actions/closeVisit.ts';
import type { ClosingCourse } from '../../../src/actions/closingCourses.ts';
import { logAccess } from '../../../src/actions/logAccess.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { type RefuseItemInput, refuseItem } from '../../../src/actions/refuseItem.ts';
import { saveShelfItem } from '../../../src/actions/saveShelfItem.ts';
import { saveStandingOrder } from '../../../src/actions/saveStandingOrder.ts';
import { type SignItemInput, signItem } from '../../../src/actions/signItem.ts';
import { withdrawRelease } from '../../../src/actions/withdrawRelease.ts';
import { withdrawStandingOrder } from '../../../src/actions/withdrawStandingOrder.ts';
import { findCatalogEntry } from '../../../src/store/read/catalog.ts';
import { listChangesOf } from '../../../src/store/read/changes.ts';
import { listCoursesOfVisit, listWaitingCourses } from '../../../src/store/read/courses.ts';
import { readDraft } from '../../../src/store/read/draftFields.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { EMPTY_CLOSING, PRACTICE } from '../practice.ts';

const ORDER = { name: 'Strong paste for high levels', date: '2026-01-15', until: '2026-12-31', shelfItemIds: ['strong-paste'] };

export function signaturesContract(bench: Bench): void {
  const newVisit = async () => {
    const { newPatient, as } = bench.practice();
    return (await openVisit(as('assistant'), { patientId: await newPatient(), kind: 'chair', onDate: '2026-03-04' })).id;
  };
  const sign = (role: 'dentist' | 'hygienist' | 'assistant' | 'lead', visitId: string, input: Partial<SignItemInput> = {}) =>
    signItem(bench.practice().as(role), { visitId, shelfItemId: 'strong-paste', stops: [], ...input });
  const close = async (visitId: string, course: ClosingCourse) => {
    const { scope, as } = bench.practice();
    const { digest } = await readDraft(bench.store().db, scope, visitId);
    return closeVisit(as('hygienist'), { ...EMPTY_CLOSING, visitId, draftDigest: digest, courses: [course] });
  };
  const courses = async (visitId: string) => {
    const list = await listCoursesOfVisit(bench.store().db, bench.practice().scope, visitId);
    return list.map(({ shelfItemId, state, release, signature }) => [shelfItemId, state, release, signature?.by ?? null]);
  };

  describe('signItem', () => {
    test('a dentist releases an item, once', async () => {
      const visitId = await newVisit();
      const signed = await sign('dentist', visitId);
      expect(signed).toEqual({ shelfItemId: 'strong-paste', by: 'Member dentist', at: expect.any(String) });
      expect(await sign('dentist', visitId)).toEqual(signed);
      expect(await courses(visitId)).toEqual([['strong-paste', 'offered', 'signed', 'Member dentist']]);
    });

    test.each(['hygienist', 'assistant', 'lead'] as const)('a %s releases nothing', async (role) => {
      const visitId = await newVisit();
      await expect(sign(role, visitId)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      expect(await courses(visitId)).toEqual([]);
    });

    test('a hygienist signs on a standing order that holds, and on no other', async () => {
      const { as } = bench.practice();
      const visitId = await newVisit();
      const onOrder = (standingOrderId: string, shelfItemId = 'strong-paste') =>
        sign('hygienist', visitId, { standingOrderId, shelfItemId, waits: true });
      await saveStandingOrder(as('dentist'), { id: 'later', order: { ...ORDER, date: '2026-03-05' }, expectedVersion: 0 });
      await saveStandingOrder(as('dentist'), { id: 'over', order: { ...ORDER, until: '2026-03-03' }, expectedVersion: 0 });
      await saveStandingOrder(as('dentist'), { id: 'withdrawn', order: { ...ORDER, withdrawn: true }, expectedVersion: 0 });
      await saveStandingOrder(as('dentist'), { id: 'holds', order: ORDER, expectedVersion: 0 });
      for (const id of ['none', 'later', 'over', 'withdrawn'])
        await expect(onOrder(id)).rejects.toMatchObject({ code: 'STANDING_ORDER_NOT_FOUND' });
      await expect(onOrder('holds', 'varnish')).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      const onHeld = (input: Partial<SignItemInput>) => sign('hygienist', visitId, { standingOrderId: 'holds', waits: true, ...input });
      // Nothing that a rule holds back until something is asked, and nothing that does not stand in the plan.
      for (const held of [{ asks: ['C05'] }, { waits: false }]) await expect(onHeld(held)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      await expect(onHeld({ stops: ['C12'] })).rejects.toMatchObject({ code: 'ITEM_STOPPED' });
      await expect(onHeld({ today: '2027-01-01' })).rejects.toMatchObject({ code: 'STANDING_ORDER_NOT_FOUND' });
      expect(await courses(visitId)).toEqual([]);
      expect(await onOrder('holds')).toMatchObject({
        by: 'Member hygienist',
        standingOrder: { name: ORDER.name, date: ORDER.date, by: 'Member dentist' },
      });
      await expect(sign('assistant', visitId, { standingOrderId: 'holds', waits: true })).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
    });

    test('an order that is withdrawn keeps who wrote it, says who withdrew it, and nobody signs on it from then on', async () => {
      const { scope, as } = bench.practice();
      const visitId = await newVisit();
      const { version } = await saveStandingOrder(as('dentist'), { id: 'holds', order: ORDER, expectedVersion: 0 });
      await withdrawStandingOrder(as('dentist'), { id: 'holds', expectedVersion: version });
      const order = (await findCatalogEntry(bench.store().db, scope, 'standing-order', 'holds'))?.body;
      expect(order).toMatchObject({ signedBy: 'Member dentist', withdrawn: true, withdrawnBy: { name: 'Member dentist' } });
      await expect(sign('hygienist', visitId, { standingOrderId: 'holds', waits: true })).rejects.toMatchObject({
        code: 'STANDING_ORDER_NOT_FOUND',
      });
      await expect(withdrawStandingOrder(as('dentist'), { id: 'none', expectedVersion: 1 })).rejects.toMatchObject({
        code: 'STANDING_ORDER_NOT_FOUND',
      });
    });

    test.each([
      ['without items', { shelfItemIds: [] }, 'INPUT_INVALID'],
      ['with an item that is not on the shelf', { shelfItemIds: ['strong-paste', 'none'] }, 'SHELF_ITEM_NOT_FOUND'],
      ['that ends before it begins', { until: '2026-01-14' }, 'INPUT_INVALID'],
      ['with a day that is none', { until: '2026-02-30' }, 'INPUT_INVALID'],
    ])('an order %s is not written', async (_what, part, code) => {
      const { as } = bench.practice();
      const order = { ...ORDER, ...part };
      await expect(saveStandingOrder(as('dentist'), { id: 'o', order, expectedVersion: 0 })).rejects.toMatchObject({ code });
    });

    test('a stop rule holds unless a dentist overrides that very rule with a reason', async () => {
      const { as } = bench.practice();
      const visitId = await newVisit();
      await saveStandingOrder(as('dentist'), { id: 'holds', order: ORDER, expectedVersion: 0 });
      const stops = ['C12'];
      const override = { ruleId: 'C12', reason: 'spoken with the physician' };
      await expect(sign('dentist', visitId, { stops })).rejects.toMatchObject({ code: 'ITEM_STOPPED' });
      await expect(sign('dentist', visitId, { stops, override: { ...override, reason: ' ' } })).rejects.toMatchObject({
        code: 'REASON_REQUIRED',
      });
      await expect(sign('dentist', visitId, { stops, override: { ...override, ruleId: 'C13' } })).rejects.toMatchObject({
        code: 'ITEM_STOPPED',
      });
      await expect(sign('dentist', visitId, { stops: ['C12', 'C13'], override })).rejects.toMatchObject({ code: 'ITEM_STOPPED' });
      await expect(sign('dentist', visitId, { override })).rejects.toMatchObject({ code: 'ITEM_STOPPED' });
      await expect(sign('hygienist', visitId, { stops, override, standingOrderId: 'holds' })).rejects.toMatchObject({
        code: 'NOT_ALLOWED',
      });
      await expect(sign('dentist', visitId, { stops, override, fixedStops: stops })).rejects.toMatchObject({ code: 'ITEM_STOPPED' });
      await expect(sign('dentist', visitId, { stops, override, standingOrderId: 'holds' })).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      expect(await courses(visitId)).toEqual([]);
      expect(await sign('dentist', visitId, { stops, override })).toMatchObject({ override });
      const { scope } = bench.practice();
      const [course] = await listCoursesOfVisit(bench.store().db, scope, visitId);
      const history = await listChangesOf(bench.store().db, scope, { table: 'course', id: course?.id ?? '' });
      expect(history).toMatchObject([{ action: 'signItem', reason: override.reason, memberId: as('dentist').actor.memberId }]);
    });

    test('an item for everyone needs no signature', async () => {
      await expect(sign('dentist', await newVisit(), { shelfItemId: 'paste' })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(sign('dentist', await newVisit(), { shelfItemId: 'unknown' })).rejects.toMatchObject({ code: 'SHELF_ITEM_NOT_FOUND' });
      await expect(sign('dentist', 'none')).rejects.toMatchObject({ code: 'VISIT_NOT_FOUND' });
    });
  });

  describe('refuseItem', () => {
    const refuse = (visitId: string, input: Partial<RefuseItemInput> = {}, role: 'dentist' | 'hygienist' = 'dentist') =>
      refuseItem(bench.practice().as(role), { visitId, shelfItemId: 'strong-paste', reason: 'kidney disease', waits: true, ...input });

    test('a dentist does not release what waits, with a reason that stays', async () => {
      const { scope } = bench.practice();
      const visitId = await newVisit();
      await expect(refuse(visitId, { reason: ' ' })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await expect(refuse(visitId, {}, 'hygienist')).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      await expect(refuse(visitId, { waits: false })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(refuse(visitId, { shelfItemId: 'unknown' })).rejects.toMatchObject({ code: 'SHELF_ITEM_NOT_FOUND' });
      const refusal = { by: 'Member dentist', at: expect.any(String), reason: 'kidney disease' };
      expect(await refuse(visitId)).toEqual({ shelfItemId: 'strong-paste', ...refusal });
      const [course] = await listCoursesOfVisit(bench.store().db, scope, visitId);
      expect(course).toMatchObject({ state: 'offered', release: 'refused', refusal, signature: null });
      const history = await listChangesOf(bench.store().db, scope, { table: 'course', id: course?.id ?? '' });
      expect(history).toMatchObject([{ action: 'refuseItem', reason: 'kidney disease' }]);
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });

    test('what was refused is covered by no standing order, and a dentist may sign it all the same', async () => {
      const { as } = bench.practice();
      const visitId = await newVisit();
      await saveStandingOrder(as('dentist'), { id: 'holds', order: ORDER, expectedVersion: 0 });
      await refuse(visitId);
      await expect(sign('hygienist', visitId, { standingOrderId: 'holds', waits: true })).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      expect(await courses(visitId)).toEqual([['strong-paste', 'offered', 'refused', null]]);
      await sign('dentist', visitId);
      expect(await courses(visitId)).toEqual([['strong-paste', 'offered', 'signed', 'Member dentist']]);
      await expect(refuse(visitId)).rejects.toMatchObject({ code: 'CONFLICT' });
    });

    test('a refused item closes as refused, and one that waits on the record is refused later', async () => {
      const visitId = await newVisit();
      await refuse(visitId);
      await close(visitId, { shelfItemId: 'strong-paste', state: 'agreed', release: 'waiting' });
      expect(await courses(visitId)).toEqual([['strong-paste', 'agreed', 'refused', null]]);
      const later = await newVisit();
      await close(later, { shelfItemId: 'strong-paste', state: 'agreed', release: 'waiting' });
      await refuse(later, { waits: false });
      expect(await courses(later)).toEqual([['strong-paste', 'agreed', 'refused', null]]);
      expect(await listWaitingCourses(bench.store().db, bench.practice().scope)).toEqual([]);
    });
  });

  describe('withdrawRelease', () => {
    const withdraw = (visitId: string, role: 'dentist' | 'hygienist' | 'assistant' = 'dentist', reason?: string) =>
      withdrawRelease(bench.practice().as(role), { visitId, shelfItemId: 'strong-paste', reason });

    test('takes a signature or a refusal back while nothing is out of the house; the item waits again', async () => {
      const { as } = bench.practice();
      const visitId = await newVisit();
      await expect(withdraw(visitId)).rejects.toMatchObject({ code: 'CONFLICT' });
      await sign('dentist', visitId);
      await withdraw(visitId);
      expect(await courses(visitId)).toEqual([['strong-paste', 'offered', 'waiting', null]]);
      await refuseItem(as('dentist'), { visitId, shelfItemId: 'strong-paste', reason: 'r' });
      await withdraw(visitId);
      expect(await courses(visitId)).toEqual([['strong-paste', 'offered', 'waiting', null]]);
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });

    test('needs a reason once the leaflet was printed, and once the visit is closed', async () => {
      const { scope, as } = bench.practice();
      const visitId = await newVisit();
      await sign('dentist', visitId);
      await logAccess(as('hygienist'), { action: 'print-leaflet', entity: { table: 'visit', id: visitId } });
      await expect(withdraw(visitId)).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await withdraw(visitId, 'dentist', 'wrong person');
      // What was printed before a signature does not hold it.
      await sign('dentist', visitId);
      await withdraw(visitId);
      await sign('dentist', visitId);
      await close(visitId, { shelfItemId: 'strong-paste', state: 'agreed', release: 'not-needed' });
      await expect(withdraw(visitId)).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await withdraw(visitId, 'dentist', 'new medicine');
      expect(await courses(visitId)).toEqual([['strong-paste', 'agreed', 'waiting', null]]);
      const [course] = await listCoursesOfVisit(bench.store().db, scope, visitId);
      const history = await listChangesOf(bench.store().db, scope, { table: 'course', id: course?.id ?? '' });
      expect(history.at(-1)).toMatchObject({ action: 'withdrawRelease', reason: 'new medicine' });
    });

    test('a hygienist takes back only a signature of her own on a standing order', async () => {
      const { as } = bench.practice();
      const visitId = await newVisit();
      await saveStandingOrder(as('dentist'), { id: 'holds', order: ORDER, expectedVersion: 0 });
      await sign('dentist', visitId);
      for (const role of ['hygienist', 'assistant'] as const)
        await expect(withdraw(visitId, role)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      await withdraw(visitId);
      await refuseItem(as('dentist'), { visitId, shelfItemId: 'strong-paste', reason: 'r' });
      await expect(withdraw(visitId, 'hygienist')).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      await withdraw(visitId);
      await sign('hygienist', visitId, { standingOrderId: 'holds', waits: true });
      await withdraw(visitId, 'hygienist');
      expect(await courses(visitId)).toEqual([['strong-paste', 'offered', 'waiting', null]]);
    });

    test('an item that the plan no longer holds when the visit closes does not wait for ever', async () => {
      const { scope, as } = bench.practice();
      const visitId = await newVisit();
      await sign('dentist', visitId);
      await withdraw(visitId);
      const { digest } = await readDraft(bench.store().db, scope, visitId);
      await closeVisit(as('hygienist'), { ...EMPTY_CLOSING, visitId, draftDigest: digest });
      expect(await listWaitingCourses(bench.store().db, scope)).toEqual([]);
      expect(await courses(visitId)).toEqual([['strong-paste', 'offered', 'waiting', null]]);
    });
  });

  describe('closing releases nothing', () => {
    test.each(['agreed', 'offered'] as const)('an unsigned item cannot be %s', async (state) => {
      for (const shelfItemId of ['strong-paste', 'varnish']) {
        for (const release of ['not-needed', 'signed'] as ClosingCourse['release'][])
          await expect(close(await newVisit(), { shelfItemId, state, release })).rejects.toMatchObject({ code: 'SIGNATURE_MISSING' });
      }
    });

    test('an item that waits keeps the word of the person, and is signed after the visit was closed', async () => {
      const { scope } = bench.practice();
      const visitId = await newVisit();
      await close(visitId, { shelfItemId: 'strong-paste', state: 'agreed', release: 'waiting' });
      expect((await listWaitingCourses(bench.store().db, scope)).map((course) => course.visitId)).toEqual([visitId]);
      await sign('dentist', visitId);
      expect(await courses(visitId)).toEqual([['strong-paste', 'agreed', 'signed', 'Member dentist']]);
      expect(await listWaitingCourses(bench.store().db, scope)).toEqual([]);
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });

    test('against a rule nothing is signed after the visit was closed: its plan is not made again', async () => {
      const visitId = await newVisit();
      await close(visitId, { shelfItemId: 'strong-paste', state: 'agreed', release: 'waiting' });
      const override = { ruleId: 'C12', reason: 'spoken with the physician' };
      await expect(sign('dentist', visitId, { stops: ['C12'], override })).rejects.toMatchObject({ code: 'VISIT_CLOSED' });
      expect(await courses(visitId)).toEqual([['strong-paste', 'agreed', 'waiting', null]]);
    });

    test.each([
      ['offered', 'waiting'],
      ['agreed', 'not-needed'],
      ['declined', 'not-needed'],
    ] as const)('a signed item that closes as %s keeps its signature', async (state, release) => {
      const visitId = await newVisit();
      await sign('dentist', visitId);
      await close(visitId, { shelfItemId: 'strong-paste', state, release });
      expect(await courses(visitId)).toEqual([['strong-paste', state, 'signed', 'Member dentist']]);
    });

    test('a declined item is not signed afterwards', async () => {
      const visitId = await newVisit();
      await close(visitId, { shelfItemId: 'strong-paste', state: 'declined', release: 'not-needed' });
      await expect(sign('dentist', visitId)).rejects.toMatchObject({ code: 'CONFLICT' });
    });

    test('only a dentist changes an item so that it no longer waits for a signature', async () => {
      const { as } = bench.practice();
      const strong = PRACTICE.shelf.find(({ id }) => id === 'strong-paste');
      if (!strong) throw new Error('no strong paste on the shelf');
      const freed = { item: { ...strong, release: 'anyone' }, expectedVersion: 1 } as const;
      for (const role of ['lead', 'hygienist'] as const)
        await expect(saveShelfItem(as(role), freed)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      expect(await saveShelfItem(as('dentist'), freed)).toEqual({ version: 2 });
    });
  });
}
