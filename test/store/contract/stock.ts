import { describe, expect, test } from 'vitest';
import type { ActionContext } from '../../../src/actions/context.ts';
import { correctStock } from '../../../src/actions/correctStock.ts';
import { dispenseItem } from '../../../src/actions/dispenseItem.ts';
import type { GivingFacts } from '../../../src/actions/givingFacts.ts';
import { exportShelf, importShelf, previewShelf } from '../../../src/actions/importShelf.ts';
import { loadVisit } from '../../../src/actions/loadVisit.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { receiveStock } from '../../../src/actions/receiveStock.ts';
import { takeBackMove } from '../../../src/actions/takeBackMove.ts';
import { regimenTables } from '../../../src/content/regimenTables.ts';
import { listCountedItems, listItemUse, listMoves, listMovesOfVisit } from '../../../src/store/read/stock.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';

const TODAY = '2026-03-04';
const IN_PLAN: GivingFacts = { place: 'in-plan', bars: [], isForDentist: false, isTurnedDown: false };
const OUTSIDE: GivingFacts = { ...IN_PLAN, place: 'outside' };
const MAY = '2026-05-31';

export function stockContract(bench: Bench): void {
  const as = (role: 'assistant' | 'hygienist' | 'dentist' | 'lead'): ActionContext => bench.practice().as(role);
  const newVisit = async () => {
    const patientId = await bench.practice().newPatient();
    return (await openVisit(as('assistant'), { patientId, kind: 'chair', onDate: TODAY })).id;
  };
  const receive = (packs: number, lot: string | null, expiry: string | null, today = TODAY) =>
    receiveStock(as('assistant'), { shelfItemId: 'paste', packs, lot, expiry, today });
  const give = (visitId: string, part: Partial<Parameters<typeof dispenseItem>[1]> = {}, context = as('assistant')) =>
    dispenseItem(context, { visitId, shelfItemId: 'paste', today: TODAY, facts: IN_PLAN, ...part });
  const lotsLeft = async () => {
    const [item] = await listCountedItems(bench.store().db, bench.practice().scope);
    return item?.lots.map(({ lot, expiry, quantity }) => [lot, expiry, quantity]);
  };
  const expectSound = async () => expect((await verify(bench.store().db)).problems).toEqual([]);

  describe('the stock book', () => {
    test('packs come in by lot, and go out of the first lot to expire', async () => {
      const visitId = await newVisit();
      await receive(2, 'B', '2026-12-31');
      await receive(1, 'A', MAY);
      await receive(3, null, null);
      expect(await give(visitId, { packs: 2 })).toMatchObject([
        { lot: 'A', quantity: 1 },
        { lot: 'B', quantity: 1 },
      ]);
      expect(await lotsLeft()).toEqual([
        ['B', '2026-12-31', 1],
        [null, null, 3],
      ]);
      const given = await listMovesOfVisit(bench.store().db, bench.practice().scope, visitId);
      expect(given.map(({ lot, quantity, reason, memberId }) => [lot, quantity, reason, memberId])).toEqual(
        ['A', 'B'].map((lot) => [lot, -1, 'dispensed', as('assistant').actor.memberId]),
      );
      expect(await listItemUse(bench.store().db, bench.practice().scope, TODAY)).toEqual([
        { shelfItemId: 'paste', since: TODAY, given: 2 },
      ]);
      expect(await listItemUse(bench.store().db, bench.practice().scope, '2026-03-05')).toMatchObject([{ given: 0 }]);
      await expectSound();
    });

    test('gives nothing that is past its last day, and no more than there is; the last day itself is good', async () => {
      const visitId = await newVisit();
      await receive(5, 'OLD', '2026-01-31', '2026-01-10');
      await receive(1, 'NOW', TODAY);
      await expect(give(visitId, { lot: { lot: 'OLD', expiry: '2026-01-31' } })).rejects.toMatchObject({
        code: 'STOCK_SHORT',
        message: expect.stringMatching(/^lot: .*2026-01-31/),
      });
      await expect(give(visitId, { packs: 2 })).rejects.toMatchObject({
        code: 'STOCK_SHORT',
        message: expect.stringMatching(/^packs: 1 of .*5 more are past/),
      });
      await expect(give(visitId, { packs: 0 })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
        message: expect.stringMatching(/^packs: /),
      });
      await give(visitId);
      await expect(give(visitId)).rejects.toMatchObject({ code: 'STOCK_SHORT' });
      expect(await lotsLeft()).toEqual([['OLD', '2026-01-31', 5]]);
      await expectSound();
    });

    test('of many who give the last pack at once, one does', async () => {
      const visitId = await newVisit();
      await receive(1, 'A', MAY);
      const tries = await Promise.allSettled(Array.from({ length: 6 }, () => give(visitId)));
      expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
      expect(await lotsLeft()).toEqual([]);
      await expectSound();
    });

    test('asked twice under one id, it is written once', async () => {
      const visitId = await newVisit();
      const id = as('lead').newId();
      for (const _ of [1, 2]) await receiveStock(as('assistant'), { shelfItemId: 'paste', id, packs: 4, today: TODAY });
      const giveId = as('lead').newId();
      for (const _ of [1, 2]) await give(visitId, { id: giveId });
      expect(await lotsLeft()).toEqual([[null, null, 3]]);
      const other = { shelfItemId: 'varnish', id, packs: 4, today: TODAY };
      await expect(receiveStock(as('assistant'), other)).rejects.toMatchObject({ code: 'INPUT_INVALID' });
    });

    test('an item that is not counted gives no pack', async () => {
      await expect(give(await newVisit())).rejects.toMatchObject({ code: 'STOCK_SHORT', message: expect.stringContaining('not counted') });
    });

    test('one lot has one last day, however it is typed', async () => {
      await receive(1, 'ab 12', MAY);
      await receive(1, ' AB  12', MAY);
      for (const expiry of ['2026-06-30', null])
        await expect(receive(1, 'Ab 12', expiry)).rejects.toMatchObject({
          code: 'INPUT_INVALID',
          message: expect.stringMatching(/^expiry: lot ab 12 stands here with 2026-05-31/),
        });
      expect(await lotsLeft()).toEqual([['ab 12', MAY, 2]]);
    });

    test.each([
      [{ packs: 1.5 }, /^packs: /],
      [{ packs: 10_001 }, /^packs: /],
      [{ expiry: '2026-02-30' }, /^expiry /],
      [{ expiry: '2026-03-03' }, /^expiry: .* is past/],
      [{ lot: 'x'.repeat(61) }, /^lot /],
    ])('refuses %j by the name of its field, and writes nothing', async (part, message) => {
      await expect(receiveStock(as('lead'), { shelfItemId: 'paste', packs: 1, today: TODAY, ...part })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
        message: expect.stringMatching(message),
      });
      expect(await lotsLeft()).toBeUndefined();
    });
  });

  describe('who may give what', () => {
    test('what waits for a signature is a dentist’s to give, with a reason that stays', async () => {
      const visitId = await newVisit();
      await receive(3, 'A', MAY);
      const waits = { facts: { ...IN_PLAN, place: 'waits', isForDentist: true } } as const;
      await expect(give(visitId, { ...waits, reason: 'r' }, as('hygienist'))).rejects.toMatchObject({ code: 'SIGNATURE_MISSING' });
      await expect(give(visitId, waits, as('dentist'))).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await give(visitId, { ...waits, reason: 'signed on paper' }, as('dentist'));
      expect(await listMovesOfVisit(bench.store().db, bench.practice().scope, visitId)).toMatchObject([{ note: 'signed on paper' }]);
      await expectSound();
    });

    test.each([
      ['assistant', OUTSIDE, 'NOT_ALLOWED'],
      ['lead', OUTSIDE, 'NOT_ALLOWED'],
      ['hygienist', OUTSIDE, undefined],
      ['hygienist', { ...OUTSIDE, isForDentist: true }, 'NOT_ALLOWED'],
      ['dentist', { ...OUTSIDE, isForDentist: true }, undefined],
      ['dentist', { ...OUTSIDE, bars: ['milk allergy'] }, 'ITEM_STOPPED'],
      ['dentist', { ...IN_PLAN, isTurnedDown: true }, 'CONFLICT'],
    ] as const)('outside the plan: %s, %j gives %s', async (role, facts, code) => {
      const visitId = await newVisit();
      await receive(3, 'A', MAY);
      const given = give(visitId, { facts, reason: 'asked for it' }, as(role));
      if (code !== undefined) await expect(given).rejects.toMatchObject({ code });
      else expect(await given).toHaveLength(1);
      const withoutReason = give(visitId, { facts }, as(role));
      await expect(withoutReason).rejects.toMatchObject({ code: code ?? 'REASON_REQUIRED' });
    });
  });

  describe('put right after the fact', () => {
    test('a wrong give is taken back: at once by whoever gave it, later with a reason', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      const visitId = await newVisit();
      await receive(1, 'A', MAY);
      await give(visitId);
      const [first] = await listMovesOfVisit(db, scope, visitId);
      const moveId = first?.id ?? '';
      await expect(takeBackMove(as('hygienist'), { moveId, today: TODAY })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await expect(takeBackMove(as('assistant'), { moveId, today: '2026-03-05', reason: 'r' })).rejects.toMatchObject({
        code: 'NOT_ALLOWED',
      });
      await takeBackMove(as('assistant'), { moveId, today: TODAY });
      await takeBackMove(as('assistant'), { moveId, today: TODAY });
      expect(await lotsLeft()).toEqual([['A', MAY, 1]]);
      expect(await listMovesOfVisit(db, scope, visitId)).toMatchObject([
        { id: moveId, quantity: -1, takenBack: 'taken back the same day', version: 2 },
      ]);
      await give(visitId);
      const again = (await listMovesOfVisit(db, scope, visitId)).at(-1)?.id ?? '';
      await takeBackMove(as('hygienist'), { moveId: again, today: '2026-03-09', reason: 'wrong tube' });
      expect(await lotsLeft()).toEqual([['A', MAY, 1]]);
      await expectSound();
    });

    test('packs that have gone since cannot be taken back with their delivery; the first entry taken back, the item is not counted', async () => {
      const visitId = await newVisit();
      const { id: moveId } = await receive(2, 'A', MAY);
      await give(visitId);
      await expect(takeBackMove(as('assistant'), { moveId, today: TODAY })).rejects.toMatchObject({
        code: 'STOCK_SHORT',
        message: expect.stringMatching(/^packs: 1 of the 2 /),
      });
      const [given] = await listMovesOfVisit(bench.store().db, bench.practice().scope, visitId);
      await takeBackMove(as('assistant'), { moveId: given?.id ?? '', today: TODAY });
      await takeBackMove(as('assistant'), { moveId, today: TODAY });
      expect(await lotsLeft()).toBeUndefined();
      await expectSound();
    });

    test('a count, a misread lot, packs thrown away and packs sent back', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      await receive(10, 'A', MAY);
      const correct = (part: Partial<Parameters<typeof correctStock>[1]>) =>
        correctStock(as('hygienist'), {
          shelfItemId: 'paste',
          lot: { lot: 'A', expiry: MAY },
          as: 'corrected',
          packs: 0,
          today: TODAY,
          ...part,
        });
      await expect(correct({ packs: 8 })).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await expect(correct({ packs: 10, reason: 'r' })).rejects.toMatchObject({
        code: 'INPUT_INVALID',
        message: expect.stringMatching(/^packs: 10/),
      });
      await correct({ packs: 8, reason: 'two fell' });
      await correct({ packs: 8, reads: { lot: 'A1', expiry: '2026-06-30' }, reason: 'misread' });
      const lot = { lot: 'A1', expiry: '2026-06-30' };
      await correct({ lot, as: 'expired', packs: 1 });
      await correct({ lot, as: 'returned', packs: 2 });
      await correct({ lot, as: 'dispensed', packs: 1 });
      await expect(correct({ lot, as: 'expired', packs: 5 })).rejects.toMatchObject({
        code: 'STOCK_SHORT',
        message: expect.stringMatching(/^packs: 4 of/),
      });
      expect(await lotsLeft()).toEqual([['A1', '2026-06-30', 4]]);
      expect((await listMoves(db, scope, 'paste')).map(({ reason, quantity }) => [reason, quantity])).toEqual([
        ['received', 10],
        ['corrected', -2],
        ['corrected', -8],
        ['corrected', 8],
        ['expired', -1],
        ['returned', -2],
        ['dispensed', -1],
      ]);
      await expectSound();
    });
  });

  describe('a table of the shelf', () => {
    const read = (text: string) => ({ text, today: TODAY, tables: regimenTables, leafletNameOf: () => ({ en: 'Paste', es: 'Pasta' }) });
    const write = async (text: string) => {
      const { seen } = await previewShelf(as('lead'), read(text));
      return importShelf(as('lead'), { ...read(text), seen });
    };
    const NEW = 'id;name;kind;form;in stock;times;times per;amount;lot;last day;packs';

    test('what is given out comes back and changes nothing; a new item and its lots are written with a line of the log each', async () => {
      await receive(3, '=A 1', MAY);
      const text = await exportShelf(as('lead'));
      expect((await write(text)).items.map(({ kind }) => kind)).toEqual(['same', 'same', 'same']);
      expect(await listMoves(bench.store().db, bench.practice().scope, 'paste')).toHaveLength(1);
      await write(`${NEW}\nnew;New paste;F_PASTE_STD;paste;;2;day;a pea;B 1;2027-01;4\nnew;;;;;;;;B 2;;1\npaste;;;;;;;;=a 1;${MAY};2`);
      expect(await lotsLeft()).toEqual([
        ['B 1', '2027-01-31', 4],
        ['B 2', null, 1],
      ]);
      expect(
        (await listMoves(bench.store().db, bench.practice().scope, 'paste')).map(({ reason, quantity, note }) => [reason, quantity, note]),
      ).toEqual([
        ['received', 3, null],
        ['corrected', -1, 'counted, from a table'],
      ]);
      const { db } = bench.store();
      const logged = await db.selectFrom('change').select('entity').where('action', '=', 'importShelf').execute();
      expect(logged).toHaveLength(4);
      await expectSound();
    });

    test('one line that is wrong, or a shelf that was changed meanwhile, and nothing is written', async () => {
      const text = `${NEW}\nnew;New paste;F_PASTE_STD;paste;yes;2;day;a pea;;;\nother;Other;F_PASTE_STD;paste;;2;day;a pea;;;`;
      expect(await write(text)).toMatchObject({ problems: [{ line: 3, field: 'in stock' }] });
      const right = 'id;lot;packs\npaste;C;4';
      const { seen } = await previewShelf(as('lead'), read(right));
      await receive(1, 'C', null);
      await expect(importShelf(as('lead'), { ...read(right), seen })).rejects.toMatchObject({ code: 'CONFLICT' });
      expect(await lotsLeft()).toEqual([['C', null, 1]]);
      await expectSound();
    });
  });

  describe('the shelf of a visit', () => {
    test('is in stock by its packs once they are counted, and keeps what was given at the visit', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      const [mine, other] = [await newVisit(), await newVisit()];
      const inStock = async (visitId: string) =>
        (await loadVisit(db, scope, visitId)).input.practice.shelf.find(({ id }) => id === 'paste')?.inStock;
      await receive(1, 'OLD', '2026-01-31', '2026-01-10');
      expect(await inStock(mine)).toBe(false);
      await receive(1, 'A', MAY);
      expect(await inStock(mine)).toBe(true);
      await give(mine);
      expect([await inStock(mine), await inStock(other)]).toEqual([true, false]);
      expect((await loadVisit(db, scope, mine)).input.practice.shelf.map(({ id, inStock: is }) => [id, is])).toContainEqual([
        'varnish',
        true,
      ]);
    });
  });
}
