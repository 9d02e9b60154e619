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
  const run = async (statement: string) => {
    const client = new pg.Client({ connectionString: started().connectionString('postgres') });
    await client.connect();
    await client.query(statement);
    await client.end();
  };
  return {
    name: 'PostgreSQL',
    unavailable: binaries ? undefined : 'PostgreSQL 15 or newer is not installed',
    async start() {
      if (!binaries) return;
      server = await startPostgres(binaries);
    },
    async stop() {
      await server?.stop();
    },
    async newPlace() {
      places += 1;
      const name = `place_${places}`;
      // A schema named like its user is where that user's tables go; making one is much quicker than making a database.
      await run(`create role ${name} superuser login; create schema authorization ${name}`);
      const connectionString = started().connectionString('postgres', name);
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
