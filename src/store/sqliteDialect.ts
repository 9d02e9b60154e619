import type Sqlite from 'better-sqlite3-multiple-ciphers';
import { type DatabaseConnection, SqliteDialect, SqliteDriver } from 'kysely';
import { keepStatements } from './keepStatements.ts';

/** Kysely's dialect for SQLite, but for how a transaction ends that SQLite has ended itself. */
export function sqliteDialect(database: Sqlite.Database): SqliteDialect {
  return new (class extends SqliteDialect {
    override createDriver() {
      return new RollbackOnceDriver(database);
    }
  })({ database });
}

/**
 * On a full disk and some other faults SQLite takes the transaction back itself. A second rollback would then fail and hide the error
 * that says why.
 */
class RollbackOnceDriver extends SqliteDriver {
  readonly #database: Sqlite.Database;

  constructor(database: Sqlite.Database) {
    super({ database: keepStatements(database) });
    this.#database = database;
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}
