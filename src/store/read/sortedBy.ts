import { type RawBuilder, sql } from 'kysely';

/**
 * A column to put the rows found in order by. SQLite keeps no statistics here and would otherwise walk the whole table in the order of
 * this column, as if a practice had ten rows, instead of taking the index on the person or the visit and sorting what it finds.
 */
export const sortedBy = (column: 'id' | 'onDate'): RawBuilder<string> => sql<string>`${sql.ref(column)} || ''`;
