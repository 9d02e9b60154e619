import Sqlite from 'better-sqlite3-multiple-ciphers';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { keepStatements } from '../../src/store/keepStatements.ts';

let connection: Sqlite.Database;
beforeEach(() => {
  connection = new Sqlite(':memory:');
  connection.exec("create table boat (name text); insert into boat values ('Tern'), ('Teal')");
});
afterEach(() => connection.close());

test('a statement is prepared once, and still sees what was changed since', () => {
  const kept = keepStatements(connection);
  const names = kept.prepare('select name from boat order by name');
  expect(names.all([])).toEqual([{ name: 'Teal' }, { name: 'Tern' }]);
  kept.prepare('insert into boat values (?)').run(['Auk']);
  const again = kept.prepare('select name from boat order by name');
  expect(again).toBe(names);
  expect(again.all([])).toEqual([{ name: 'Auk' }, { name: 'Teal' }, { name: 'Tern' }]);
});

test('a table that got a column is read with it', () => {
  const kept = keepStatements(connection);
  kept.prepare('select * from boat').all([]);
  kept.prepare('alter table boat add column length_m real').run([]);
  expect(kept.prepare('select * from boat').all([])[0]).toEqual({ name: 'Tern', length_m: null });
});

test('while its rows are still being read, the same words get a statement of their own', () => {
  const kept = keepStatements(connection);
  const rows = kept.prepare('select name from boat').iterate([]);
  rows.next();
  expect(kept.prepare('select name from boat').all([])).toHaveLength(2);
  expect([...rows]).toHaveLength(1);
});
