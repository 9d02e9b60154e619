import type { DateOrder } from '../core/day/birthday.ts';
import type { DayRow, KnownPerson, RowVerdict } from '../core/day/dayRow.ts';
import { type JudgeInput, judgeRows, nameKeyOf } from '../core/day/judgeRows.ts';
import type { PatientProfile } from '../core/visit/patientProfile.ts';
import { ConflictError } from '../store/errors.ts';
import { listAppointmentsOfDay } from '../store/read/appointments.ts';
import { findPatient, listEveryPatient, type Patient } from '../store/read/patients.ts';
import { holdSite } from '../store/read/sites.ts';
import type { Db } from '../store/schema.ts';
import { searchKey } from '../store/searchKey.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { insertRows, updateRow } from '../store/write/rows.ts';
import { requireDate, requireText } from './checks.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { searchKeyOf, searchKeyOfChart } from './patientSearchKey.ts';
import { requireRight } from './rights.ts';

export interface ImportDayInput {
  /** Local date, ISO. */
  readonly onDate: string;
  /** Today at the practice: nobody is born after it. */
  readonly today: string;
  readonly dateOrder?: DateOrder | undefined;
  readonly rows: readonly DayRow[];
}

export interface ImportedDay {
  /** What each row did, in the order of the rows; `known` and `new` were written. */
  readonly verdicts: readonly RowVerdict[];
  readonly taken: number;
  readonly added: number;
}

/** What the rows would do, and nothing written. */
export async function previewDay(db: Db, scope: SiteScope, input: ImportDayInput): Promise<readonly RowVerdict[]> {
  return judgeRows(await judgeInput(db, scope, input));
}

/**
 * Puts the people of a list down for a day, in one transaction: right rows are taken, the others come back with what is wrong. Judged
 * anew inside the transaction, and one import waits for the other, so that the same list twice changes nothing.
 */
export async function importDay(context: ActionContext, input: ImportDayInput): Promise<ImportedDay> {
  const { scope, actor } = context;
  requireRight(actor, 'importDay');
  requireDate('The date', input.onDate);
  return inTransaction(context, 'importDay', async (trx, log) => {
    await holdSite(trx, scope);
    const verdicts = judgeRows(await judgeInput(trx, scope, input));
    const write = { trx, log, context, onDate: input.onDate };
    let [taken, added] = [0, 0];
    for (const verdict of verdicts) {
      if (verdict.kind === 'known') await putKnown(write, verdict);
      else if (verdict.kind === 'new') await putNew(write, verdict);
      else continue;
      taken += 1;
      added += verdict.kind === 'new' ? 1 : 0;
    }
    return { verdicts, taken, added };
  });
}

async function judgeInput(db: Db, scope: SiteScope, { rows, dateOrder, onDate, today }: ImportDayInput): Promise<JudgeInput> {
  const people = (await listEveryPatient(db, scope)).map(toKnownPerson);
  return { rows, dateOrder, today, people, appointments: await listAppointmentsOfDay(db, scope, onDate), wordsOf: searchKey };
}

function toKnownPerson({ id, birthDate, profile: { name, chartNumber } }: Patient): KnownPerson {
  const chartKey = chartNumber === undefined ? undefined : searchKey(chartNumber);
  return { id, name, birthDate, nameKey: nameKeyOf(name, searchKey), chartNumber, chartKey };
}

interface Write {
  readonly trx: Db;
  readonly log: ChangeLog;
  readonly context: ActionContext;
  readonly onDate: string;
}

async function putKnown(write: Write, verdict: Extract<RowVerdict, { kind: 'known' }>): Promise<void> {
  const { trx, log, context } = write;
  const { person, atTime, moves, addsChartNumber } = verdict;
  if (addsChartNumber !== undefined) await addChartNumber(write, person.id, addsChartNumber);
  if (!moves) return putDown(write, person.id, atTime);
  const version = (await listAppointmentsOfDay(trx, context.scope, write.onDate)).find(({ id }) => id === moves.id)?.version ?? 0;
  const moved = await updateRow(trx, context.scope, 'appointment', { id: moves.id, version }, { atTime });
  if (!moved) throw new ConflictError('The appointment', atTime, moves);
  log.row('appointment', moved);
}

async function putNew(write: Write, { name, birthDate, chartNumber, atTime }: Extract<RowVerdict, { kind: 'new' }>): Promise<void> {
  const { trx, log, context } = write;
  const profile = { name: requireText('The name', name), ...(chartNumber === undefined ? {} : { chartNumber: requireChart(chartNumber) }) };
  const patient = {
    id: context.newId(),
    searchKey: searchKeyOf(profile),
    birthDate,
    profile: JSON.stringify(profile satisfies PatientProfile),
    state: 'active',
    mergedInto: null,
  } as const;
  log.rows('patient', await insertRows(trx, context.scope, 'patient', [patient]));
  await putDown(write, patient.id, atTime);
}

async function putDown({ trx, log, context, onDate }: Write, patientId: string, atTime: string | null): Promise<void> {
  const appointment = { id: context.newId(), patientId, onDate, atTime, state: 'planned', note: null } as const;
  log.rows('appointment', await insertRows(trx, context.scope, 'appointment', [appointment]));
}

async function addChartNumber({ trx, log, context }: Write, patientId: string, chartNumber: string): Promise<void> {
  const patient = await findPatient(trx, context.scope, patientId);
  const profile = { ...patient?.profile, name: patient?.profile.name ?? '', chartNumber: requireChart(chartNumber) };
  const key = await searchKeyOfChart(trx, context.scope, patientId, profile);
  const patch = { profile: JSON.stringify(profile satisfies PatientProfile), searchKey: key };
  const stored = patient && (await updateRow(trx, context.scope, 'patient', patient, patch));
  if (!stored) throw new ConflictError('The person', chartNumber, patient);
  log.row('patient', stored);
}

const requireChart = (chartNumber: string): string => requireText('The chart number', chartNumber, 50);
