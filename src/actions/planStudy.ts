import { AppError } from '../api/errors.ts';
import type { Study } from '../core/checks/study.ts';
import type { StudyKind } from '../core/reading/types.ts';
import { requireText } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireLot, requireMeter } from './requireSupplies.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export type PlanStudyInput = Pick<Study, 'kind' | 'meterId' | 'lotIds' | 'design' | 'runs'>;

/** A cut-off study reads the record and takes no swab of its own. */
const WITHOUT_RUNS: ReadonlySet<StudyKind> = new Set(['cutoff']);

/** Keeps a study with its run sheet, which stays as it is from then on. @throws AppError METER_NOT_FOUND, LOT_NOT_FOUND, INPUT_INVALID */
export async function planStudy(context: ActionContext, input: PlanStudyInput): Promise<{ id: string; version: number }> {
  const { db, scope, actor, now, newId } = context;
  requireRight(actor, 'planStudy');
  requireRunSheet(input);
  for (const meterId of new Set([input.meterId, ...input.runs.flatMap((run) => run.meterId ?? [])])) await requireMeter(db, scope, meterId);
  for (const lotId of new Set([...input.lotIds, ...input.runs.flatMap((run) => run.lotId ?? [])])) await requireLot(db, scope, lotId);
  const { kind, meterId, lotIds, design, runs } = input;
  const study: Study = { id: newId(), kind, meterId, lotIds, design, runs, plannedBy: actor.name, plannedAt: now(), state: 'planned' };
  const { version } = await saveCatalogEntry(context, 'planStudy', { kind: 'study', id: study.id, body: study, expectedVersion: 0 });
  return { id: study.id, version };
}

/** Swabs are numbered as they are taken, so that a reading names its swab by one number. */
function requireRunSheet({ kind, design, runs }: PlanStudyInput): void {
  if (runs.length === 0 && !WITHOUT_RUNS.has(kind)) throw new AppError('INPUT_INVALID', 'runs: a study needs its swabs');
  const misnumbered = runs.findIndex(({ index }, at) => index !== at);
  if (misnumbered >= 0) throw new AppError('INPUT_INVALID', `runs.${misnumbered}.index: must be ${misnumbered}`);
  for (const operator of design.operators) requireText('design.operators', operator);
  // A swab takes the biofilm away: nobody can be swabbed by two people, or twice, on one day.
  if (design.medium === 'people' && kind !== 'paired-days' && kind !== 'cutoff')
    throw new AppError(
      'INPUT_INVALID',
      'design.medium: a swab takes the plaque away, so hands, lots and meters are compared on a solution or coupons',
    );
  if (design.medium !== 'people' && kind === 'paired-days')
    throw new AppError('INPUT_INVALID', 'design.medium: change from day to day is measured on people who agreed');
}
