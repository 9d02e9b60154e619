import { createHash } from 'node:crypto';

/** A table whose every row-changing action logs the row, so that `verify` can compare what stands there with what was written. */
interface LoggedTable {
  readonly table:
    | 'site'
    | 'member'
    | 'patient'
    | 'visit'
    | 'appointment'
    | 'reading'
    | 'finding'
    | 'result'
    | 'course'
    | 'task'
    | 'stockMove'
    | 'catalog'
    | 'account'
    | 'credential';
  /** Columns that with the site name a row; joined by "/" they are the change's entity id. */
  readonly key: readonly string[];
  /** False for the tables that belong to no site. */
  readonly inSite: boolean;
}

/** Not here, because they are no record: draftField and draftPast (become record at closing), session, job, schemaVersion. */
export const LOGGED_TABLES = [
  { table: 'site', key: ['siteId'], inSite: true },
  { table: 'member', key: ['id'], inSite: true },
  { table: 'patient', key: ['id'], inSite: true },
  { table: 'visit', key: ['id'], inSite: true },
  { table: 'appointment', key: ['id'], inSite: true },
  { table: 'reading', key: ['id'], inSite: true },
  { table: 'finding', key: ['id'], inSite: true },
  { table: 'result', key: ['id'], inSite: true },
  { table: 'course', key: ['id'], inSite: true },
  { table: 'task', key: ['id'], inSite: true },
  { table: 'stockMove', key: ['id'], inSite: true },
  { table: 'catalog', key: ['kind', 'id'], inSite: true },
  { table: 'account', key: ['id'], inSite: false },
  { table: 'credential', key: ['id'], inSite: false },
] as const satisfies readonly LoggedTable[];

export type LoggedTableName = (typeof LOGGED_TABLES)[number]['table'];

/** The entity id under which a row of a table is logged. */
export function entityIdOf(table: LoggedTableName, row: object): string {
  const key = LOGGED_TABLES.find((logged) => logged.table === table)?.key ?? [];
  return key.map((column) => String(Reflect.get(row, column))).join('/');
}

/** What is logged of a row. A password hash must not outlive its change, so the log keeps only its digest. */
export function loggedBody(table: LoggedTableName, row: object): object {
  if (table !== 'credential' || !('secret' in row)) return row;
  return { ...row, secret: createHash('sha256').update(String(row.secret)).digest('hex') };
}
