import { sql } from 'kysely';
import pg from 'pg';
import { openPostgresStore } from '../../src/store/openStore.ts';
import type { Engine } from './engine.ts';
import { findPostgres, type PostgresServer, startPostgres } from './postgresServer.ts';

export function postgresEngine(): Engine {
  const binaries = findPostgres();
  let server: PostgresServer | undefined;
  let places = 0;
  const started = () => {
    if (!server) throw new Error('PostgreSQL was not started');
    return server;
  };
  return {
    name: 'PostgreSQL',
    unavailable: binaries ? undefined : 'PostgreSQL 15 or newer is not installed',
    async start() {
      if (binaries) server = await startPostgres(binaries);
    },
    async stop() {
      await server?.stop();
    },
    async newPlace() {
      places += 1;
      const name = `place_${places}`;
      const client = new pg.Client({ connectionString: started().connectionString('postgres') });
      await client.connect();
      await client.query(`create database ${name}`);
      await client.end();
      const connectionString = started().connectionString(name);
      return {
        open: (migrations) => openPostgresStore({ connectionString, ...(migrations ? { migrations } : {}) }),
        async tamper({ db }, statements) {
          await db.transaction().execute(async (trx) => {
            await sql`set local session_replication_role = replica`.execute(trx);
            for (const statement of statements) await sql.raw(statement).execute(trx);
          });
        },
      };
    },
  };
}
