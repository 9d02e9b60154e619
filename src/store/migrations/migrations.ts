import { chairside } from './chairside.ts';
import { first } from './first.ts';
import type { Migration } from './migrate.ts';
import { stock } from './stock.ts';

/** In order of version, forward only; a released one is never edited. */
export const migrations: readonly Migration[] = [first, chairside, stock];
