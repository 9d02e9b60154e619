import { type Expression, type SqlBool, sql } from 'kysely';
import type { Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

/** Rows whose `patient_id` is this chart or one that was merged into it, by way of others too. Nothing is moved when charts are merged. */
export function isOfChart({ siteId }: SiteScope, patientId: string): Expression<SqlBool> {
  return sql<SqlBool>`patient_id in (
    with recursive chart (id) as (
      select id from patient where site_id = ${siteId} and id = ${patientId}
      union select merged.id from patient merged join chart on merged.merged_into = chart.id where merged.site_id = ${siteId}
    ) select id from chart)`;
}

/** Every chart of these people, the ones merged into them included: chart id to the id of the person it belongs to. */
export async function listChartsOf(db: Db, { siteId }: SiteScope, patientIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const personOf = new Map(patientIds.map((id) => [id, id]));
  let outer = [...personOf.keys()];
  while (outer.length > 0) {
    const query = db.selectFrom('patient').select(['id', 'mergedInto']).where('siteId', '=', siteId).where('mergedInto', 'in', outer);
    const merged = (await query.execute()).filter(({ id }) => !personOf.has(id));
    for (const { id, mergedInto } of merged) personOf.set(id, personOf.get(mergedInto ?? '') ?? id);
    outer = merged.map(({ id }) => id);
  }
  return personOf;
}
