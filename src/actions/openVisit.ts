import { AppError } from '../api/errors.ts';
import { findKeptPatient, holdPatients } from '../store/read/patients.ts';
import { findOpenVisit, findVisit, type Visit } from '../store/read/visits.ts';
import type { VisitKind } from '../store/schema.ts';
import { insertOpenVisit } from '../store/write/visits.ts';
import { requireDate } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireClock } from './readClock.ts';
import { requireRight } from './rights.ts';

export interface OpenVisitInput {
  readonly patientId: string;
  readonly kind: VisitKind;
  /** Local date, ISO. */
  readonly onDate: string;
  /** Somebody has looked at the clock, although it stands before the newest entry on record. */
  readonly clockIsRight?: boolean | undefined;
}

/** The open visit of this person: a new one, or the one that is open already (then nothing is written). */
export async function openVisit(context: ActionContext, { patientId, kind, onDate, clockIsRight = false }: OpenVisitInput): Promise<Visit> {
  const { scope, actor, newId } = context;
  requireRight(actor, 'openVisit');
  requireDate('The date of the visit', onDate);
  return inTransaction(context, 'openVisit', async (trx, log) => {
    const kept = await findKeptPatient(trx, scope, patientId);
    const [patient] = kept ? await holdPatients(trx, scope, [kept.id]) : [];
    if (patient?.state !== 'active') throw new AppError('PATIENT_NOT_FOUND', 'There is no such person in this practice.');
    // A chart that was merged into this one may still have its own visit open.
    const before = await findOpenVisit(trx, scope, patient.id);
    if (before) return before;
    if (!clockIsRight) await requireClock({ ...context, db: trx });
    const opened = await insertOpenVisit(trx, scope, { id: newId(), patientId: patient.id, kind, onDate });
    if (opened) log.row('visit', opened);
    const visit = opened ? await findVisit(trx, scope, opened.id) : await findOpenVisit(trx, scope, patient.id);
    // Only if somebody closed that visit in this very moment.
    if (!visit) throw new AppError('CONFLICT', 'The visit was closed by somebody else. Open it again.');
    return visit;
  });
}
