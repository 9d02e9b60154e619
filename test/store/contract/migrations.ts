import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { StoreNewerError } from '../../../src/store/errors.ts';
import { latestVersion, type Migration, readSchemaVersion } from '../../../src/store/migrations/migrate.ts';
import { migrations } from '../../../src/store/migrations/migrations.ts';
import { listSites } from '../../../src/store/read/sites.ts';
import type { Bench } from '../contract.ts';

const LATEST = latestVersion(migrations);
const next: Migration = {
  version: LATEST + 1,
  name: 'a-colour-for-members',
  statements: ({ text, end }) => [`alter table member add column colour ${text}`, `create table swatch (id ${text} primary key ${end}`],
};
const broken: Migration = {
  version: LATEST + 1,
  name: 'broken',
  statements: ({ text, end }) => [`create table swatch (id ${text} primary key ${end}`, 'create table swatch again'],
};

export function migrationsContract(bench: Bench): void {
  describe('migrations', () => {
    test('number themselves from 1 without a gap', () => {
      expect(migrations.map(({ version }) => version)).toEqual(migrations.map((_, index) => index + 1));
    });

    test('a fresh store is at the newest version, and opening again changes nothing', async () => {
      expect(await readSchemaVersion(bench.store().db)).toBe(LATEST);
      const again = await reopen(bench);
      expect(await again.db.selectFrom('schemaVersion').select(['version', 'name']).execute()).toEqual(
        migrations.map(({ version, name }) => ({ version, name })),
      );
      await again.close();
    });

    test('a step forward keeps the rows', async () => {
      const store = await reopen(bench, [...migrations, next]);
      expect(await readSchemaVersion(store.db)).toBe(LATEST + 1);
      expect((await listSites(store.db)).map(({ siteId }) => siteId)).toEqual([bench.practice().scope.siteId]);
      expect((await sql<{ colour: null }>`select colour from member`.execute(store.db)).rows).toHaveLength(4);
      await store.close();
    });

    test('a step that fails leaves the store as it was', async () => {
      await bench.store().close();
      await expect(bench.place().open([...migrations, broken])).rejects.toThrow(/syntax error/);
      const store = await bench.place().open();
      expect(await readSchemaVersion(store.db)).toBe(LATEST);
      await expect(sql`select * from swatch`.execute(store.db)).rejects.toThrow(/swatch/);
      await store.close();
    });

    test('a store of a newer program is refused with a sentence that says so', async () => {
      await (await reopen(bench, [...migrations, next])).close();
      await expect(bench.place().open()).rejects.toThrow(StoreNewerError);
      await expect(bench.place().open()).rejects.toThrow(/newer version of Ebbline/);
      const store = await bench.place().open([...migrations, next]);
      expect(await readSchemaVersion(store.db)).toBe(LATEST + 1);
      await store.close();
    });
  });
}

async function reopen(bench: Bench, steps?: readonly Migration[]) {
  await bench.store().close();
  return bench.place().open(steps);
}
