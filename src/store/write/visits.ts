import type { Db, VisitTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

/** The new visit, or undefined when this person has an open one already. */
export function insertOpenVisit(
  trx: Db,
  scope: SiteScope,
  visit: Pick<VisitTable, 'id' | 'patientId' | 'kind' | 'onDate'>,
): Promise<VisitTable | undefined> {
  const unknown = { answers: null, said: null, allExamined: null, closedBy: null };
  return trx
    .insertInto('visit')
    .values({ ...visit, ...unknown, siteId: scope.siteId, state: 'open', version: 1 })
    .onConflict((conflict) => conflict.doNothing())
    .returningAll()
    .executeTakeFirst();
}

/** Closes a visit that is open, or returns undefined. From here on no field can be saved to it: the row is locked. */
export function closeOpenVisit(
  trx: Db,
  scope: SiteScope,
  visitId: string,
  closing: Pick<VisitTable, 'answers' | 'said' | 'allExamined' | 'closedBy'>,
): Promise<VisitTable | undefined> {
  return trx
    .updateTable('visit')
    .set(({ eb }) => ({ ...closing, state: 'closed', version: eb('version', '+', 1) }))
    .where('siteId', '=', scope.siteId)
    .where('id', '=', visitId)
    .where('state', '=', 'open')
    .returningAll()
    .executeTakeFirst();
}
