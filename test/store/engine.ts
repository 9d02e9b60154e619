import type { Migration } from '../../src/store/migrations/migrate.ts';
import type { Store } from '../../src/store/openStore.ts';

/** One way to keep the data. The whole contract runs on each. */
export interface Engine {
  readonly name: string;
  /** Why it cannot run here, or undefined. */
  readonly unavailable?: string | undefined;
  start(): Promise<void>;
  stop(): Promise<void>;
  /** A fresh empty place; opening it twice gives the same data. */
  newPlace(): Promise<Place>;
}

export interface Place {
  open(migrations?: readonly Migration[]): Promise<Store>;
  /** Runs statements past the foreign keys, as somebody with the key of the file could. */
  tamper(store: Store, statements: readonly string[]): Promise<void>;
}
