import type { ControlSpan } from '../core/checks/controlSpan.ts';
import { judgeControls } from '../core/checks/judgeControls.ts';
import { listControlSpans, type StopRecords } from '../core/checks/listControlSpans.ts';
import { listMeterSpans } from '../core/checks/meterCheck.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { listControls, listOverridesOn } from '../store/read/checks.ts';
import { listMeterChecks } from '../store/read/meterChecks.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { listResolutions } from './readStops.ts';

/**
 * How each meter and lot of the practice stood over one local day, wherever that day begins and ends.
 * Undefined where no control and no check of a meter was ever taken: then nothing is known.
 */
export async function readControlSpans(db: Db, scope: SiteScope, onDate: string): Promise<readonly ControlSpan[] | undefined> {
  const until = new Date(Date.parse(`${onDate}T23:59:59.999-12:00`)).toISOString();
  const controls = await listControls(db, scope, { until });
  const checks = await listMeterChecks(db, scope, { until });
  if (controls.length === 0 && checks.length === 0) return undefined;
  const plans = (await listCatalog(db, scope, 'control-plan')).map(({ body }) => body);
  const from = new Date(Date.parse(`${onDate}T00:00:00.000+14:00`)).toISOString();
  const overrides = await listOverridesOn(db, scope, onDate);
  const records = { overrides, ...(await readStopRecords(db, scope)) };
  return [
    ...listMeterSpans(checks, from, overrides),
    ...listControlSpans(judgeControls(controls, plans, records.resolutions), from, records),
  ];
}

/** What was said of stops, whenever it was. */
export async function readStopRecords(db: Db, scope: SiteScope): Promise<Pick<StopRecords, 'resolutions' | 'questions'>> {
  return {
    resolutions: await listResolutions(db, scope),
    questions: (await listCatalog(db, scope, 'stop-readings')).map(({ body }) => body),
  };
}
