import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { StoreDamagedError } from './errors.ts';
import type { ChangeTable, Db, Stream } from './schema.ts';

/** What a change says; `body` is the row as it stands after the change. */
export interface NewChange {
  readonly at: string;
  readonly member: string | null;
  readonly action: string;
  readonly entity: { readonly table: string; readonly id: string };
  readonly reason: string | null;
  readonly body: unknown;
}

export type RandomBytes = (count: number) => Uint8Array;

/** The hash before the first change of a stream. */
export const CHAIN_START = '0'.repeat(64);
const SALT_BYTES = 16;
const STREAMS: readonly Stream[] = ['record', 'access'];
/** Rows per statement: SQLite and PostgreSQL both take 12 values for each of them with room to spare. */
const ROWS_PER_INSERT = 200;

/** Lays the empty streams of a new site (or of accounts, which belong to no site). */
export async function startChain(trx: Db, siteId: string): Promise<void> {
  const heads = STREAMS.map((stream) => ({ siteId, stream, seq: 0, hash: CHAIN_START }));
  await trx
    .insertInto('chainHead')
    .values(heads)
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}

/**
 * Adds changes to the end of a stream, in order. Must run in the transaction of the rows it logs, after them: the first statement
 * locks the stream's head until the transaction ends, which is what keeps two writers in line on PostgreSQL.
 */
export async function append(
  trx: Db,
  scope: { readonly siteId: string },
  stream: Stream,
  changes: readonly NewChange[],
  random: RandomBytes,
): Promise<void> {
  if (changes.length === 0) return;
  const { siteId } = scope;
  const head = await trx
    .updateTable('chainHead')
    .set(({ eb }) => ({ seq: eb('seq', '+', changes.length) }))
    .where('siteId', '=', siteId)
    .where('stream', '=', stream)
    .returning(['seq', 'hash'])
    .executeTakeFirst();
  if (!head) throw new StoreDamagedError(`The log of site ${siteId} has no head.`);

  let previousHash = head.hash;
  const firstSeq = head.seq - changes.length + 1;
  const bodies = changes.map(({ body }, index) => ({
    siteId,
    stream,
    seq: firstSeq + index,
    salt: toHex(random(SALT_BYTES)),
    body: canonicalJson(body),
  }));
  const rows = changes.map((change, index): ChangeTable => {
    const row = toRow(change, { siteId, stream, seq: firstSeq + index, digest: saltedDigest(bodies[index]), previousHash });
    previousHash = row.hash;
    return row;
  });
  for (let from = 0; from < rows.length; from += ROWS_PER_INSERT) {
    await trx
      .insertInto('change')
      .values(rows.slice(from, from + ROWS_PER_INSERT))
      .execute();
    await trx
      .insertInto('changeBody')
      .values(bodies.slice(from, from + ROWS_PER_INSERT))
      .execute();
  }
  await trx.updateTable('chainHead').set({ hash: previousHash }).where('siteId', '=', siteId).where('stream', '=', stream).execute();
}

type Place = Pick<ChangeTable, 'siteId' | 'stream' | 'seq' | 'digest' | 'previousHash'>;

function toRow({ at, member, action, entity, reason }: NewChange, place: Place): ChangeTable {
  const unhashed = { ...place, at, memberId: member, action, entity: entity.table, entityId: entity.id, reason };
  return { ...unhashed, hash: hashOfChange(unhashed) };
}

/** SHA-256 of the previous hash as text, a line feed, and every field of the change in canonical form (RFC 8785). */
export function hashOfChange({ previousHash, ...fields }: Omit<ChangeTable, 'hash'>): string {
  return sha256(`${previousHash}\n${canonicalJson(fields)}`);
}

/** SHA-256 of the salt as text, a line feed, and the canonical JSON text, which holds no line feed: nothing can move from one to the other. */
export function saltedDigest(part: { readonly salt: string; readonly body: string } | undefined): string {
  if (!part) throw new TypeError('saltedDigest needs a salt and a body');
  return sha256(`${part.salt}\n${part.body}`);
}

/** @throws TypeError for a value that JSON cannot hold */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError(`not a JSON value: ${typeof value}`);
  return text;
}

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

function toHex(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('hex');
}
