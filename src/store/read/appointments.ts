import type { AppointmentTable, Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import { isOfChart } from './charts.ts';

export type Appointment = Omit<AppointmentTable, 'siteId'>;

export async function findAppointment(db: Db, scope: SiteScope, id: string): Promise<Appointment | undefined> {
  const query = db.selectFrom('appointment').selectAll().where('siteId', '=', scope.siteId).where('id', '=', id);
  const row = await query.executeTakeFirst();
  if (!row) return undefined;
  const { siteId: _siteId, ...appointment } = row;
  return appointment;
}

/** Of one local date, the cancelled and missed ones too, by time; those without a time last. */
export async function listAppointmentsOfDay(db: Db, scope: SiteScope, onDate: string): Promise<Appointment[]> {
  const query = db.selectFrom('appointment').selectAll().where('siteId', '=', scope.siteId).where('onDate', '=', onDate);
  const rows = await query
    .orderBy('atTime', (order) => order.asc().nullsLast())
    .orderBy('id')
    .execute();
  return rows.map(({ siteId: _siteId, ...row }) => row);
}

/** Of one person, the charts merged into this one included, by date. */
export async function listAppointments(db: Db, scope: SiteScope, patientId: string): Promise<Appointment[]> {
  const query = db.selectFrom('appointment').selectAll().where('siteId', '=', scope.siteId).where(isOfChart(scope, patientId));
  const rows = await query.orderBy('onDate').orderBy('id').execute();
  return rows.map(({ siteId: _siteId, ...row }) => row);
}
