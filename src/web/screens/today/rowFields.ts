import type { RowField } from '../../../core/day/dayRow.ts';

/** In the order in which a row is read. */
export const sortedFields: readonly RowField[] = ['time', 'chartNumber', 'name', 'birthday'];
