import fc from 'fast-check';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { addAccount } from '../../../src/actions/addAccount.ts';
import { addAppointment } from '../../../src/actions/addAppointment.ts';
import { closeVisit } from '../../../src/actions/closeVisit.ts';
import { confirmLevel } from '../../../src/actions/confirmLevel.ts';
import { dispenseItem } from '../../../src/actions/dispenseItem.ts';
import { logAccess } from '../../../src/actions/logAccess.ts';
import { openVisit } from '../../../src/actions/openVisit.ts';
import { receiveStock } from '../../../src/actions/receiveStock.ts';
import { signItem } from '../../../src/actions/signItem.ts';
import { entityIdOf, LOGGED_TABLES } from '../../../src/store/loggedTables.ts';
import { readDraft } from '../../../src/store/read/draftFields.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';
import { ASSESSED, EMPTY_CLOSING, LEVEL, RESULT } from '../practice.ts';

const CHAIN_TABLES = [
  { table: 'change', key: ['siteId', 'stream', 'seq'] },
  { table: 'changeBody', key: ['siteId', 'stream', 'seq'] },
  { table: 'chainHead', key: ['siteId', 'stream'] },
] as const;
const TABLES = [...LOGGED_TABLES.map(({ table, key, inSite }) => ({ table, key: inSite ? ['siteId', ...key] : key })), ...CHAIN_TABLES];

/** Values that a column with a fixed list of them takes. */
const LISTED = [
  'open',
  'void',
  'closed',
  'active',
  'merged',
  'chair',
  'phone',
  'exact',
  'at-most',
  'valid',
  'flagged',
  'patient',
  'control',
  'risk',
  'reading',
  'confirmed',
  'changed',
  'waiting',
  'refused',
  'offered',
  'planned',
  'missed',
  'recall',
  'check',
  'done',
  'password',
  'passkey',
  'corrected',
  'record',
  'access',
  'lot',
  'meter',
  0,
  1,
];

type Row = Record<string, string | number | null>;
interface Tampered {
  readonly table: string;
  readonly row: Row;
  readonly column: string;
  readonly value: string | number | null;
}

export function tamperContract(bench: Bench): void {
  const snake = (name: string) => name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  const literal = (value: string | number | null | undefined) =>
    value === null || value === undefined ? 'null' : typeof value === 'number' ? String(value) : `'${value.replaceAll("'", "''")}'`;
  const keyOf = (table: (typeof TABLES)[number]): readonly string[] => table.key;
  const where = (table: (typeof TABLES)[number], row: Row) =>
    table.key.map((column) => `${snake(column)} = ${literal(row[column])}`).join(' and ');

  const fillEveryTable = async () => {
    const { scope, as, newPatient } = bench.practice();
    const { db } = bench.store();
    const patientId = await newPatient();
    const { id: visitId } = await openVisit(as('assistant'), { patientId, kind: 'chair', onDate: '2026-03-04' });
    await addAppointment(as('assistant'), { patientId, onDate: '2026-03-04', atTime: '09:40' });
    await confirmLevel(as('hygienist'), { ...LEVEL, visitId, level: 'low', reason: 'because' });
    await signItem(as('dentist'), { visitId, shelfItemId: 'varnish', stops: [] });
    const { digest } = await readDraft(db, scope, visitId);
    await closeVisit(as('hygienist'), {
      ...EMPTY_CLOSING,
      visitId,
      draftDigest: digest,
      reading: { swab: { rlu: 5100, takenAt: '2026-03-04T09:36:00Z' }, assessed: ASSESSED, meterId: 'meter-a' },
      findings: [{ tooth: '36', kind: 'cavity', isNew: true }],
      results: [RESULT],
      courses: [{ shelfItemId: 'paste', state: 'declined', release: 'not-needed', reason: 'taste' }],
      tasks: [{ kind: 'recall', due: '2026-09-04' }],
    });
    await receiveStock(as('lead'), { shelfItemId: 'paste', lot: 'A', expiry: '2027-01-01', packs: 12, today: '2026-03-04' });
    const facts = { place: 'in-plan', bars: [], isForDentist: false, isTurnedDown: false } as const;
    await dispenseItem(as('assistant'), { visitId, shelfItemId: 'paste', today: '2026-03-04', facts });
    await addAccount(as('lead'), { memberId: as('hygienist').actor.memberId, login: 'hygiene', passwordHash: 'h' });
    await logAccess(as('dentist'), { action: 'open-record', entity: { table: 'patient', id: patientId } });
  };
  const rowsOf = async (table: string) => (await sql<Row>`select * from ${sql.table(table)}`.execute(bench.store().db)).rows;

  describe('verify', () => {
    test('finds nothing where nothing was touched, in a store where every table has rows', async () => {
      await fillEveryTable();
      const report = await verify(bench.store().db);
      expect(report.problems).toEqual([]);
      for (const { table } of TABLES) expect([table, (await rowsOf(table)).length > 0]).toEqual([table, true]);
      const counts = await Promise.all(LOGGED_TABLES.map(async ({ table }) => (await rowsOf(table)).length));
      expect(report.checked.rows).toBe(counts.reduce((sum, count) => sum + count, 0));
    });

    test('finds a change of any field of any table, and names the table', async () => {
      await fillEveryTable();
      const { db } = bench.store();
      const all = new Map(await Promise.all(TABLES.map(async (table) => [table, await rowsOf(table.table)] as const)));
      const seen = new Set<string>();
      const columns = TABLES.flatMap((table) => Object.keys(all.get(table)?.[0] ?? {}).map((column) => ({ table, column })));
      const cases = fc.record({
        at: fc.constantFrom(...columns),
        pick: fc.nat(),
        text: fc.oneof(fc.constantFrom('', ' ', 'A', '0'), fc.string({ unit: 'grapheme-ascii' })),
        number: fc.integer({ min: -3, max: 3 }),
      });
      const tryOne = async ({
        at: { table, column },
        pick,
        text,
        number,
      }: {
        at: (typeof columns)[number];
        pick: number;
        text: string;
        number: number;
      }) => {
        const rows = all.get(table) ?? [];
        // A key may be taken by the neighbour: then the next row is tried.
        const candidates = [...rows.slice(pick % rows.length), ...rows].flatMap((row) =>
          others(row[column], text, number).map((value) => ({ table: table.table, row, column, value })),
        );
        const tampered = await firstTaken(candidates, table);
        if (!tampered) return;
        const { row } = tampered;
        seen.add(`${table.table}.${column}`);
        const report = await verify(db);
        await putBack(tampered, table);
        expect({ ...tampered, ok: report.ok }).toMatchObject({ ok: false });
        // The chain tables depend on each other, so there any of the three may be named.
        const isChain = CHAIN_TABLES.some((chain) => chain.table === table.table);
        const named = report.problems.map((problem) => problem.table);
        expect(isChain ? ['change', 'changeBody', 'chainHead'].some((name) => named.includes(name)) : named.includes(table.table)).toBe(
          true,
        );
        if (!isChain && !keyOf(table).includes(column)) {
          const logged = LOGGED_TABLES.find((candidate) => candidate.table === table.table);
          expect(report.problems).toMatchObject([{ table: table.table, id: entityIdOf(logged?.table ?? 'site', row) }]);
        }
      };
      // Every column once, then chance.
      for (const at of columns) await tryOne({ at, pick: 0, text: 'A', number: 1 });
      await fc.assert(fc.asyncProperty(cases, tryOne), { numRuns: 60 });
      expect((await verify(db)).problems).toEqual([]);
      expect(columns.map(({ table, column }) => `${table.table}.${column}`).filter((name) => !seen.has(name))).toEqual([
        // Each site has a head for both streams, so there is no other value that is free.
        'chainHead.stream',
      ]);
    });

    test.each(['change', 'changeBody', 'chainHead'] as const)('finds that the last entry was taken out of %s', async (name) => {
      await fillEveryTable();
      for (const stream of ['record', 'access'] as const) {
        const { siteId } = bench.practice().scope;
        const isLast =
          name === 'chainHead'
            ? ''
            : ` and seq = (select max(seq) from ${snake(name)} where site_id = '${siteId}' and stream = '${stream}')`;
        await bench
          .place()
          .tamper(bench.store(), [`delete from ${snake(name)} where site_id = '${siteId}' and stream = '${stream}'${isLast}`]);
        const { problems } = await verify(bench.store().db);
        expect(problems.some(({ table, id }) => ['change', 'changeBody', 'chainHead'].includes(table) && id.startsWith(stream))).toBe(true);
      }
    });

    test('finds a text that belongs to no entry, and a log of a site that is not there', async () => {
      await fillEveryTable();
      const { siteId } = bench.practice().scope;
      await bench
        .place()
        .tamper(bench.store(), [
          `insert into change_body (site_id, stream, seq, salt, body) values ('${siteId}', 'access', 7, 'ab', '{}')`,
          `insert into chain_head (site_id, stream, seq, hash) values ('ghost', 'access', 1, 'cd')`,
        ]);
      expect((await verify(bench.store().db)).problems.map(({ table, id }) => [table, id]).sort()).toEqual([
        ['chainHead', 'access'],
        ['chainHead', 'record'],
        ['changeBody', 'access/7'],
      ]);
    });

    test('finds the last change of a row undone together with its entry and the head set back', async () => {
      await fillEveryTable();
      const { siteId } = bench.practice().scope;
      const last = await bench
        .store()
        .db.selectFrom('change')
        .selectAll()
        .where('siteId', '=', siteId)
        .where('stream', '=', 'access')
        .orderBy('seq', 'desc')
        .executeTakeFirstOrThrow();
      const inRecord = await bench
        .store()
        .db.selectFrom('change')
        .selectAll()
        .where('siteId', '=', siteId)
        .where('stream', '=', 'record')
        .orderBy('seq', 'desc')
        .executeTakeFirstOrThrow();
      expect(last.seq).toBe(1);
      const place = `site_id = '${siteId}' and stream = 'record'`;
      await bench
        .place()
        .tamper(bench.store(), [
          `delete from change where ${place} and seq = ${inRecord.seq}`,
          `delete from change_body where ${place} and seq = ${inRecord.seq}`,
          `update chain_head set seq = ${inRecord.seq - 1}, hash = '${inRecord.previousHash}' where ${place}`,
        ]);
      // The chain itself is whole now; the row that the entry spoke of gives it away.
      expect((await verify(bench.store().db)).problems).toMatchObject([{ table: inRecord.entity, id: inRecord.entityId }]);
    });

    test.each(LOGGED_TABLES.map(({ table }) => table))('finds a row taken out of %s and a row slipped into it', async (name) => {
      await fillEveryTable();
      const table = TABLES.find((candidate) => candidate.table === name);
      const [row] = await rowsOf(name);
      if (!table || !row) throw new Error(`${name} has no row`);
      const keyColumn = table.key.at(-1) ?? '';
      const slipped: Row = {
        ...row,
        [keyColumn]: 'slipped-in',
        ...(name === 'account' ? { login: 'other' } : {}),
        ...(name === 'course' ? { visitId: null } : {}),
        ...(name === 'visit' ? { state: 'void' } : {}),
      };
      const columns = Object.keys(row);
      await bench
        .place()
        .tamper(bench.store(), [
          `insert into ${snake(name)} (${columns.map(snake).join(', ')}) values (${columns.map((column) => literal(slipped[column])).join(', ')})`,
        ]);
      const added = await verify(bench.store().db);
      expect(added.problems).toContainEqual(expect.objectContaining({ table: name, says: 'This row is not in the log.' }));
      await bench
        .place()
        .tamper(bench.store(), [
          `delete from ${snake(name)} where ${where(table, slipped)}`,
          `delete from ${snake(name)} where ${where(table, row)}`,
        ]);
      const taken = await verify(bench.store().db);
      expect(taken.problems).toContainEqual(
        expect.objectContaining({ table: name, says: 'This row is in the log but no longer in its table.' }),
      );
    });
  });

  /** Other values for a field; the database may refuse some for their type or because a list of its own has them not. */
  const others = (value: string | number | null | undefined, text: string, number: number): readonly (string | number)[] =>
    [typeof value === 'number' ? value + number : text, number, ...LISTED].filter((candidate) => candidate !== value);
  /** False where the database refuses the value by its type, a check or a key. */
  const isTaken = async ({ table, row, column, value }: Tampered, of: (typeof TABLES)[number]): Promise<boolean> => {
    try {
      await bench
        .place()
        .tamper(bench.store(), [`update ${snake(table)} set ${snake(column)} = ${literal(value)} where ${where(of, row)}`]);
      return true;
    } catch (error) {
      if (/CHECK|check constraint|UNIQUE|unique|cannot store|invalid input syntax/.test(String(error))) return false;
      throw error;
    }
  };
  const firstTaken = async (candidates: readonly Tampered[], of: (typeof TABLES)[number]): Promise<Tampered | undefined> => {
    for (const candidate of candidates) if (await isTaken(candidate, of)) return candidate;
    return undefined;
  };
  const putBack = ({ row, column, value }: Tampered, of: (typeof TABLES)[number]) =>
    bench
      .place()
      .tamper(bench.store(), [
        `update ${snake(of.table)} set ${snake(column)} = ${literal(row[column])} where ${where(of, { ...row, [column]: value })}`,
      ]);
}
