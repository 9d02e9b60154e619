import type { PersonRecord } from '../../../api/bundles.ts';

const NOT_SHOWN = 'not shown here';

/** The record as the patient may see it: reasons and wishes in somebody's own words may hold anything, so all of them are left out. */
export function withoutOwnWords(record: PersonRecord): PersonRecord {
  return {
    ...record,
    visits: record.visits.map((visit) => ({
      ...visit,
      confirmed: visit.confirmed && withoutReason(visit.confirmed),
      voided: visit.voided.map((entry) => ({ ...entry, reason: NOT_SHOWN })),
      corrections: visit.corrections.map((correction) => ({ ...correction, reason: NOT_SHOWN, changes: [] })),
      goals: [],
    })),
    courses: record.courses.map((course) => ({ ...course, reason: null })),
    notTaken: record.notTaken.map((entry) => ({ ...entry, reason: NOT_SHOWN })),
  };
}

function withoutReason<T extends { readonly reason?: string | undefined }>({ reason: _, ...rest }: T): Omit<T, 'reason'> {
  return rest;
}
