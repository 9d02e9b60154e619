import type Sqlite from 'better-sqlite3-multiple-ciphers';
import type { SqliteDatabase } from 'kysely';

/** The actions and reads of the whole program are some hundred statements, most of them short. */
const MOST_STATEMENTS = 500;

/** The connection for a query builder that asks for each statement anew: one that was prepared before is used again. */
export function keepStatements(connection: Sqlite.Database): SqliteDatabase {
  const kept = new Map<string, Sqlite.Statement>();
  return {
    close: () => {
      kept.clear();
      connection.close();
    },
    prepare: (sql) => {
      const before = kept.get(sql);
      // A statement whose rows are still being read cannot be run a second time.
      if (before && !before.busy) return before;
      const statement = connection.prepare(sql);
      if (kept.size >= MOST_STATEMENTS) kept.clear();
      kept.set(sql, statement);
      return statement;
    },
  };
}
