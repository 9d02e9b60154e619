import type { ControlSpan } from '../core/checks/controlSpan.ts';
import { judgeControls } from '../core/checks/judgeControls.ts';
import { listControlSpans, type StopRecords } from '../core/checks/listControlSpans.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { listControls, listOverridesOn } from '../store/read/checks.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/**
 * How each meter and lot of the practice stood over one local day, wherever that day begins and ends.
 * Undefined where no control was ever taken: then nothing is known.
 */
export async function readControlSpans(db: Db, scope: SiteScope, onDate: string): Promise<readonly ControlSpan[] | undefined> {
  const controls = await listControls(db, scope, { until: new Date(Date.parse(`${onDate}T23:59:59.999-12:00`)).toISOString() });
  if (controls.length === 0) return undefined;
  const plans = (await listCatalog(db, scope, 'control-plan')).map(({ body }) => body);
  const from = new Date(Date.parse(`${onDate}T00:00:00.000+14:00`)).toISOString();
  const overrides = await listOverridesOn(db, scope, onDate);
  return listControlSpans(judgeControls(controls, plans), from, { overrides, ...(await readStopRecords(db, scope)) });
}

/** What was said of stops, whenever it was. */
export async function readStopRecords(db: Db, scope: SiteScope): Promise<Pick<StopRecords, 'resolutions' | 'questions'>> {
  return {
    resolutions: (await listCatalog(db, scope, 'stop-resolved')).map(({ body }) => body),
    questions: (await listCatalog(db, scope, 'stop-readings')).map(({ body }) => body),
  };
}
