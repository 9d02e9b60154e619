import { PostgresAdapter } from 'kysely';
import type { Db } from './schema.ts';

export type EngineKind = 'sqlite' | 'postgres';

export function engineKindOf(db: Db): EngineKind {
  return db.getExecutor().adapter instanceof PostgresAdapter ? 'postgres' : 'sqlite';
}

/** SQL words that differ between the engines, for migrations. */
export interface SqlWords {
  readonly text: string;
  readonly integer: string;
  readonly real: string;
  /** Closes a `create table`. */
  readonly end: string;
}

/** PostgreSQL texts sort by code point, as in SQLite, whatever language the server was set up in. */
export const SQL_WORDS: Readonly<Record<EngineKind, SqlWords>> = {
  sqlite: { text: 'text', integer: 'integer', real: 'real', end: ') strict' },
  postgres: { text: 'text collate "C"', integer: 'bigint', real: 'double precision', end: ')' },
};
