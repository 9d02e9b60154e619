import type { PatientProfile } from '../core/visit/patientProfile.ts';
import { listChartsMergedInto } from '../store/read/patients.ts';
import type { Db } from '../store/schema.ts';
import { searchKey } from '../store/searchKey.ts';
import type { SiteScope } from '../store/siteScope.ts';

type Named = Pick<PatientProfile, 'name' | 'chartNumber'>;

/** The name first, since lists are sorted by it; then the chart number, then what the charts merged into it are called. */
export const searchKeyOf = (own: Named, merged: readonly Named[] = []): string =>
  searchKey([own, ...merged].flatMap(({ name, chartNumber }) => [name, chartNumber ?? '']).join(' '));

/** The key of a chart as things stand in the transaction. */
export async function searchKeyOfChart(trx: Db, scope: SiteScope, id: string, profile: Named): Promise<string> {
  return searchKeyOf(
    profile,
    (await listChartsMergedInto(trx, scope, id)).map((chart) => chart.profile),
  );
}
