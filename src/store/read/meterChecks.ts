import type { MeterCheck } from '../../core/checks/meterCheck.ts';
import type { Db, ReadingTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

/** Checks of meters, void ones too, oldest first: the controls of nobody and of no lot. */
export async function listMeterChecks(
  db: Db,
  scope: SiteScope,
  { meterId, until }: { readonly meterId?: string | undefined; readonly until?: string | undefined } = {},
): Promise<MeterCheck[]> {
  let query = checkRows(db, scope).where('patientId', 'is', null).orderBy('takenAt').orderBy('id');
  if (meterId !== undefined) query = query.where('meterId', '=', meterId);
  if (until !== undefined) query = query.where('takenAt', '<=', until);
  return (await query.execute()).flatMap(toMeterCheck);
}

export async function findMeterCheck(db: Db, scope: SiteScope, id: string): Promise<MeterCheck | undefined> {
  const row = await checkRows(db, scope).where('id', '=', id).executeTakeFirst();
  return row && toMeterCheck(row)[0];
}

/** A control of swabs always has its lot; what has none is of the meter alone. */
function checkRows(db: Db, scope: SiteScope) {
  return db.selectFrom('reading').selectAll().where('siteId', '=', scope.siteId).where('use', '=', 'control').where('lotId', 'is', null);
}

function toMeterCheck({ id, meterId, operator, takenAt, rlu, bound, state, reasons, version, swab }: ReadingTable): MeterCheck[] {
  if (meterId === null || takenAt === null || swab === null) return [];
  const isVoid = state === 'void';
  const voidReasons: readonly string[] = isVoid ? JSON.parse(reasons) : [];
  const known = { id, meterId, operator, takenAt, rlu, bound: bound ?? ('exact' as const), version, note: JSON.parse(swab) };
  return [{ ...known, state: isVoid ? 'void' : 'valid', voidReason: voidReasons[0] ?? null }];
}
