import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { logAccess } from '../../../src/actions/logAccess.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { append, CHAIN_START } from '../../../src/store/chain.ts';
import { listChangesOf, listLatestChanges } from '../../../src/store/read/changes.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { clock, countedBytes, testPractice } from '../practice.ts';

export function chainContract(bench: Bench): void {
  describe('the chain', () => {
    test('starts at 1, follows on, and hashes what it says it hashes', async () => {
      const { db } = bench.store();
      const { siteId } = bench.practice().scope;
      const changes = await db
        .selectFrom('change')
        .selectAll()
        .where('siteId', '=', siteId)
        .where('stream', '=', 'record')
        .orderBy('seq')
        .execute();
      expect(changes.map(({ seq }) => seq)).toEqual(changes.map((_, index) => index + 1));
      expect(changes.map(({ previousHash }) => previousHash)).toEqual([CHAIN_START, ...changes.slice(0, -1).map(({ hash }) => hash)]);
      // Written out once by hand, keys in alphabetical order, so that another program can check the chain too.
      const [first] = changes;
      const body = await db
        .selectFrom('changeBody')
        .selectAll()
        .where('siteId', '=', siteId)
        .where('seq', '=', 1)
        .where('stream', '=', 'record')
        .executeTakeFirstOrThrow();
      const digest = createHash('sha256').update(`${body.salt}\n${body.body}`).digest('hex');
      const text = `{"action":"createPractice","at":${JSON.stringify(first?.at)},"digest":"${digest}","entity":"site","entityId":"${siteId}","memberId":"${first?.memberId}","reason":null,"seq":1,"siteId":"${siteId}","stream":"record"}`;
      expect(first?.hash).toBe(
        createHash('sha256')
          .update(`${'0'.repeat(64)}\n${text}`)
          .digest('hex'),
      );
    });

    test('one entry for each row, with member, action and the row as it stood', async () => {
      const { scope, as, newPatient } = bench.practice();
      const patientId = await newPatient('Ana');
      const [change, ...others] = await listChangesOf(bench.store().db, scope, { table: 'patient', id: patientId });
      expect(others).toEqual([]);
      expect(change).toMatchObject({
        action: 'addPatient',
        memberId: as('lead').actor.memberId,
        body: { id: patientId, searchKey: 'ana', version: 1 },
      });
    });

    test('writers at once get one place each, and sites and streams have chains of their own', async () => {
      const { db } = bench.store();
      const { as, newPatient, scope } = bench.practice();
      const other = await testPractice(bench.store(), 'Second practice');
      const patientId = await newPatient();
      await Promise.all(
        Array.from({ length: 20 }, (_, index) =>
          index % 2 === 0
            ? addPatient((index % 4 === 0 ? bench.practice() : other).as('assistant'), { name: `Person ${index}`, birthDate: '2000-01-01' })
            : logAccess(as('dentist'), { action: 'open-record', entity: { table: 'patient', id: patientId } }),
        ),
      );
      const report = await verify(db);
      expect(report.problems).toEqual([]);
      expect(await listLatestChanges(db, scope, 'access')).toHaveLength(10);
      expect((await listLatestChanges(db, scope, 'access', 3)).map(({ seq }) => seq)).toEqual([10, 9, 8]);
      const count = await db
        .selectFrom('change')
        .select(({ fn }) => fn.countAll<number>().as('count'))
        .executeTakeFirstOrThrow();
      expect(report.checked.changes).toBe(Number(count.count));
    });

    test('an opened visit that was open already adds no entry', async () => {
      const { db } = bench.store();
      const { as, newPatient } = bench.practice();
      const visit = { patientId: await newPatient(), kind: 'chair', onDate: '2026-03-04' } as const;
      await openVisit(as('assistant'), visit);
      const before = await verify(db);
      await openVisit(as('dentist'), visit);
      expect(await verify(db)).toEqual(before);
    });

    test('any JSON body is verified as it was written', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      const change = { at: clock(), member: null, action: 'look', entity: { table: 'patient', id: 'x' }, reason: null };
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.jsonValue(), { minLength: 1, maxLength: 5 }),
          fc.option(fc.string({ unit: 'grapheme' })),
          async (bodies, reason) => {
            // PostgreSQL keeps no NUL; an action refuses it before.
            const said = reason === null ? null : reason.replaceAll('\u0000', '');
            const changes = bodies.map((body) => ({ ...change, reason: said, body }));
            await db.transaction().execute((trx) => append(trx, scope, 'access', changes, countedBytes));
          },
        ),
        { numRuns: 30 },
      );
      expect((await verify(db)).problems).toEqual([]);
    });

    test('more changes at once than one statement takes', async () => {
      const { db } = bench.store();
      const { scope } = bench.practice();
      const change = { at: clock(), member: null, action: 'look', entity: { table: 'patient', id: 'x' }, reason: null, body: {} };
      await db.transaction().execute((trx) =>
        append(
          trx,
          scope,
          'access',
          Array.from({ length: 2501 }, () => change),
          countedBytes,
        ),
      );
      const report = await verify(db);
      expect(report.problems).toEqual([]);
      expect(report.checked.changes).toBeGreaterThan(2500);
    });
  });
}
