import type { Db } from './schema.ts';

/**
 * Runs `work` in one transaction that every transaction begun inside it joins: all of it is written, or nothing. For making many things
 * that nobody has seen yet, such as the invented practice; an ordinary action is a transaction of its own.
 */
export function inOneTransaction<R>(db: Db, work: (joined: Db) => Promise<R>): Promise<R> {
  return db.transaction().execute((trx) => work(joinedTo(trx)));
}

function joinedTo(trx: Db): Db {
  const joining = () => ({ execute: <R>(work: (inner: Db) => Promise<R>) => work(trx) });
  return new Proxy(trx, {
    get: (target, name) => {
      if (name === 'transaction') return joining;
      const value: unknown = Reflect.get(target, name, target);
      // The builder keeps its state in private fields, which only the object itself can reach.
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
