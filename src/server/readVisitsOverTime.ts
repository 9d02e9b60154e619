import { group } from 'd3-array';
import type { ActionContext } from '../actions/context.ts';
import type { StoredVisit } from '../api/bundles.ts';
import type { Leaflet } from '../core/leaflet/types.ts';
import { columnsToFinding } from '../store/findingColumns.ts';
import { listFindingRowsOfVisits } from '../store/read/findings.ts';
import { listComputedResults, listConfirmedLevels } from '../store/read/results.ts';
import { listVisits } from '../store/read/visits.ts';

/** Every visit of one person as the page over time tells it, oldest first; three queries, however many visits there are. */
export async function readVisitsOverTime({ db, scope }: Pick<ActionContext, 'db' | 'scope'>, patientId: string): Promise<StoredVisit[]> {
  const visits = await listVisits(db, scope, patientId);
  const ids = visits.map(({ id }) => id);
  const levels = await listConfirmedLevels(db, scope, ids);
  const plans = group(await listComputedResults(db, scope, ids, 'regimen'), (result) => result.visitId);
  const findings = group(await listFindingRowsOfVisits(db, scope, ids), (row) => row.visitId);
  return visits.map(({ id, onDate, kind, state, said }) => {
    const confirmed = levels.get(id) ?? null;
    const rows = findings.get(id) ?? [];
    const plan = plans.get(id)?.at(-1)?.body as { leaflet?: Leaflet } | undefined;
    return {
      id,
      onDate,
      kind,
      state,
      confirmed,
      level: confirmed?.level ?? null,
      findings: rows.filter(({ voidReason }) => voidReason === null).map(columnsToFinding),
      voided: rows.flatMap((row) => (row.voidReason === null ? [] : [{ finding: columnsToFinding(row), reason: row.voidReason }])),
      corrections: said?.corrections ?? [],
      speaker: said?.speaker ?? null,
      goals: said?.goals ?? [],
      hasDay: said?.acidDay !== undefined,
      leaflet: plan?.leaflet ?? null,
    };
  });
}
