import { type Expression, type SqlBool, sql } from 'kysely';
import type { SiteScope } from '../siteScope.ts';

/** Rows whose `patient_id` is this chart or one that was merged into it, by way of others too. Nothing is moved when charts are merged. */
export function isOfChart({ siteId }: SiteScope, patientId: string): Expression<SqlBool> {
  return sql<SqlBool>`patient_id in (
    with recursive chart (id) as (
      select id from patient where site_id = ${siteId} and id = ${patientId}
      union select merged.id from patient merged join chart on merged.merged_into = chart.id where merged.site_id = ${siteId}
    ) select id from chart)`;
}
