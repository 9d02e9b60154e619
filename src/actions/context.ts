import { randomBytes } from 'node:crypto';
import { append, type NewChange, type RandomBytes } from '../store/chain.ts';
import type { LoggedTableName } from '../store/loggedTables.ts';
import { entityIdOf, LOGGED_TABLES, loggedBody } from '../store/loggedTables.ts';
import type { Database, Db } from '../store/schema.ts';
import { type MemberIdentity, NO_SITE, type SiteScope } from '../store/siteScope.ts';
import type { ActionName } from './rights.ts';

/** What every action takes first. Time, ids and randomness are given, so that a test can repeat a day. */
export interface ActionContext {
  readonly db: Db;
  readonly scope: SiteScope;
  readonly actor: MemberIdentity;
  /** UTC, "2026-03-04T09:36:12.345Z". */
  readonly now: () => string;
  /** UUIDv7: ids sort in the order they were made. */
  readonly newId: () => string;
  /** Salts of the log; the system's own unless a test gives another. */
  readonly random?: RandomBytes;
}

/** Collects what an action changed; written to the end of the log in the same transaction, after the rows. */
export interface ChangeLog {
  readonly row: <T extends LoggedTableName>(table: T, row: Database[T], reason?: string | null) => void;
  readonly rows: <T extends LoggedTableName>(table: T, rows: readonly Database[T][]) => void;
}

/** All or nothing: the rows, and a log entry for each of them. `work` must use the transaction it is given and await only queries. */
export function inTransaction<R>(
  context: Pick<ActionContext, 'db' | 'scope' | 'now' | 'random'> & { readonly actor: Pick<MemberIdentity, 'memberId'> },
  action: ActionName,
  work: (trx: Db, log: ChangeLog) => Promise<R>,
): Promise<R> {
  const { db, scope, actor, now, random = randomBytes } = context;
  return db.transaction().execute(async (trx) => {
    const ofSite: NewChange[] = [];
    const ofNoSite: NewChange[] = [];
    const row: ChangeLog['row'] = (table, stored, reason = null) => {
      const isInSite = LOGGED_TABLES.some((logged) => logged.table === table && logged.inSite);
      const entity = { table, id: entityIdOf(table, stored) };
      (isInSite ? ofSite : ofNoSite).push({ at: now(), member: actor.memberId, action, entity, reason, body: loggedBody(table, stored) });
    };
    const rows: ChangeLog['rows'] = (table, list) => {
      for (const stored of list) row(table, stored);
    };
    const result = await work(trx, { row, rows });
    await append(trx, scope, 'record', ofSite, random);
    await append(trx, { siteId: NO_SITE }, 'record', ofNoSite, random);
    return result;
  });
}
