import { randomBytes } from 'node:crypto';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { dataFileOf } from '../../src/store/files.ts';
import { openSqliteStore } from '../../src/store/openStore.ts';
import type { Engine } from './engine.ts';

export function sqliteEngine(): Engine {
  let root = '';
  return {
    name: 'SQLite',
    async start() {
      root = mkdtempSync(join(tmpdir(), 'ebbline-store-'));
    },
    async stop() {
      rmSync(root, { recursive: true, force: true });
    },
    async newPlace() {
      const folder = mkdtempSync(join(root, 'data-'));
      const key = randomBytes(32);
      return {
        open: (migrations) =>
          openSqliteStore({ folder, key, create: !existsSync(dataFileOf(folder)), ...(migrations ? { migrations } : {}) }),
        async tamper({ db }, statements) {
          await sql`pragma foreign_keys = off`.execute(db);
          try {
            for (const statement of statements) await sql.raw(statement).execute(db);
          } finally {
            await sql`pragma foreign_keys = on`.execute(db);
          }
        },
      };
    },
  };
}
