import { PairFigures } from '../api/swabChecks.ts';
import { carryTarget } from '../core/checks/carryTarget.ts';
import type { ControlPlan, ControlTarget } from '../core/checks/control.ts';
import type { Study } from '../core/checks/study.ts';
import type { SwabLot } from '../core/reading/types.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import type { ChangeLog } from './context.ts';
import { readJudged } from './readStops.ts';

/**
 * The controls of a new lot are held against the old lot's target, moved by the ratio of their comparison, so that the rules hold from
 * its first control on. Nothing where the pairs were too few to say, the meter has no plan, the old lot no target, or the new one has a target already.
 */
export async function carryToPlan(trx: Db, log: ChangeLog, scope: SiteScope, { kind, meterId, report }: Study): Promise<void> {
  const figures = kind === 'new-lot' ? PairFigures.safeParse(report?.body).data : undefined;
  const entry = await findCatalogEntry(trx, scope, 'control-plan', meterId);
  if (!figures || !entry || entry.body.targets.some(({ lotId }) => lotId === figures.newId)) return;
  const old = await findTarget(trx, scope, entry.body, figures.oldId);
  if (!old) return;
  const { pairs, ratio, low, high, verdict } = figures;
  const carried = carryTarget(old, figures.newId, { pairs, verdict, ratio: { estimate: ratio, low, high } });
  if (!carried) return;
  const plan: ControlPlan = { ...entry.body, targets: [...entry.body.targets, carried] };
  const row = await saveCatalogRow(trx, scope, { kind: 'control-plan', id: meterId, body: JSON.stringify(plan) }, entry.version);
  if (!row) throw new ConflictError('This control plan', plan, entry);
  log.row('catalog', row);
}

/** A new lot carries from then on that it was compared, with which one and what was found. */
export async function noteCompared(trx: Db, log: ChangeLog, scope: SiteScope, { id: studyId, kind, report }: Study): Promise<void> {
  const figures = kind === 'new-lot' ? PairFigures.safeParse(report?.body).data : undefined;
  const entry = figures && (await findCatalogEntry(trx, scope, 'lot', figures.newId));
  if (!figures || !entry || !report) return;
  const compared = { lotId: figures.oldId, studyId, onDate: report.onDate, verdict: figures.verdict };
  const lot: SwabLot = { ...entry.body, compared };
  const row = await saveCatalogRow(trx, scope, { kind: 'lot', id: entry.id, body: JSON.stringify(lot) }, entry.version);
  if (!row) throw new ConflictError('This lot', lot, entry);
  log.row('catalog', row);
}

/** Of the plan, or made by the lot's own first controls. */
async function findTarget(trx: Db, scope: SiteScope, plan: ControlPlan, lotId: string): Promise<ControlTarget | undefined> {
  const judged = await readJudged(trx, scope, plan.meterId);
  return plan.targets.find((target) => target.lotId === lotId) ?? judged.find((lot) => lot.lotId === lotId)?.target;
}
