import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { findKeptPatient, findPatient, holdPatients, type Patient } from '../store/read/patients.ts';
import { findOpenVisit } from '../store/read/visits.ts';
import type { Db, PatientTable } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireBornBeforeVisits } from './changePatient.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { searchKeyOfChart } from './patientSearchKey.ts';
import { requireRight } from './rights.ts';

interface ChartVersion {
  readonly id: string;
  /** Version last seen. */
  readonly version: number;
}

export interface MergePatientsInput {
  readonly kept: ChartVersion;
  /** From now on read as a part of the one that is kept. */
  readonly merged: ChartVersion;
  readonly reason: string;
}

/**
 * Says that two charts are of one person. Nothing is moved: the one is marked, and read with the other.
 * @throws AppError PATIENT_NOT_FOUND, MERGE_REFUSED, REASON_REQUIRED, INPUT_INVALID; ConflictError
 */
export async function mergePatients(context: ActionContext, { kept, merged, reason }: MergePatientsInput): Promise<void> {
  requireRight(context.actor, 'mergePatients');
  const because = requireReason(reason);
  if (kept.id === merged.id) throw new AppError('MERGE_REFUSED', 'A chart cannot be merged with itself.');
  const { scope } = context;
  return inTransaction(context, 'mergePatients', async (trx, log) => {
    const [keptChart, mergedChart] = (await holdPatients(trx, scope, [kept.id, merged.id])).map(requireActive);
    if (!keptChart || !mergedChart) throw notFound();
    const open = [await findOpenVisit(trx, scope, kept.id), await findOpenVisit(trx, scope, merged.id)];
    if (!open.includes(undefined)) throw new AppError('MERGE_REFUSED', 'Both charts have an open visit. Close one of them first.');
    await requireBornBeforeVisits(trx, context, merged.id, keptChart.birthDate);
    log.row('patient', await markChart(trx, scope, merged, { state: 'merged', mergedInto: kept.id }), because);
    const key = await searchKeyOfChart(trx, scope, kept.id, keptChart.profile);
    log.row('patient', await markChart(trx, scope, kept, { searchKey: key }), because);
  });
}

export interface UnmergePatientInput {
  readonly merged: ChartVersion;
  readonly reason: string;
}

/**
 * Takes the mark away. Both charts are again what they were; what was written to the kept one since then stays with it.
 * @throws AppError PATIENT_NOT_FOUND, MERGE_REFUSED, REASON_REQUIRED; ConflictError
 */
export async function unmergePatient(context: ActionContext, { merged, reason }: UnmergePatientInput): Promise<void> {
  requireRight(context.actor, 'unmergePatient');
  const because = requireReason(reason);
  const { scope } = context;
  return inTransaction(context, 'unmergePatient', async (trx, log) => {
    const before = await findPatient(trx, scope, merged.id);
    const root = before && (await findKeptPatient(trx, scope, merged.id));
    if (!root) throw notFound();
    const [chart, kept] = await holdPatients(trx, scope, [merged.id, root.id]);
    if (chart?.state !== 'merged' || !kept) throw new AppError('MERGE_REFUSED', 'This chart is not merged into another.');
    log.row('patient', await markChart(trx, scope, merged, { state: 'active', mergedInto: null }), because);
    const key = await searchKeyOfChart(trx, scope, kept.id, kept.profile);
    log.row('patient', await markChart(trx, scope, kept, { searchKey: key }), because);
  });
}

/** @throws AppError PATIENT_NOT_FOUND, MERGE_REFUSED */
function requireActive(chart: Patient | undefined): Patient {
  if (!chart || chart.state === 'erased') throw notFound();
  if (chart.state === 'merged') throw new AppError('MERGE_REFUSED', `The chart of ${chart.profile.name} is merged into another already.`);
  return chart;
}

const notFound = () => new AppError('PATIENT_NOT_FOUND', 'There is no such person in this practice.');

async function markChart(trx: Db, scope: SiteScope, chart: ChartVersion, patch: Partial<PatientTable>): Promise<PatientTable> {
  const row = await updateRow(trx, scope, 'patient', chart, patch);
  if (!row) throw new ConflictError('This chart', chart.version, await findPatient(trx, scope, chart.id));
  return row;
}
