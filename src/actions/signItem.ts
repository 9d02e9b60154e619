import { AppError } from '../api/errors.ts';
import { mayOverride, mayRelease } from '../core/regimen/mayRelease.ts';
import { packsCovered } from '../core/regimen/signatureCover.ts';
import type { ShelfItem, SignedItem } from '../core/regimen/types.ts';
import { isTurnedDown } from '../core/visit/turnedDown.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { listCoursesOfVisit } from '../store/read/courses.ts';
import { findVisitHeld, type Visit } from '../store/read/visits.ts';
import type { CourseTable, Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import type { StandingOrder } from '../store/storedJson.ts';
import { insertRows, updateRow } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';
import { countGiven, findCover, requireCovers } from './signatureCovers.ts';

export interface SignItemInput {
  readonly visitId: string;
  readonly shelfItemId: string;
  /** Ids of the rules that stop this item for this person, as the core computed them from the saved answers; empty = none. */
  readonly stops: readonly string[];
  /** Of those, the ones that no signature lifts. */
  readonly fixedStops?: readonly string[] | undefined;
  /** Ids of the rules that hold the item back until something is asked; then no standing order covers it. */
  readonly asks?: readonly string[] | undefined;
  /** The item stands in the plan and waits. A standing order covers nothing else, and an item for anyone needs a signature only then. */
  readonly waits?: boolean | undefined;
  /** Local date of the signature: a standing order must hold on it as well as on the day of the visit. Absent = the day of the visit. */
  readonly today?: string | undefined;
  /** Overrides one stop rule; only a dentist in person. */
  readonly override?: { readonly ruleId: string; readonly reason: string } | undefined;
  /** Signs on a named and dated standing order instead of in person. */
  readonly standingOrderId?: string | undefined;
  /** Packs that it covers in all, those given at the visit among them, and its last day; absent = one pack, no last day. */
  readonly packs?: number | undefined;
  readonly until?: string | undefined;
}

/**
 * Releases one item that waits for a signature. Also after the visit was closed, because the dentist may come to it later. A dentist in
 * person signs anew for more packs or to another day; the earlier signature stays in the history of the row.
 * @throws AppError NOT_ALLOWED, INPUT_INVALID with the field, ITEM_STOPPED, REASON_REQUIRED, VISIT_NOT_FOUND, SHELF_ITEM_NOT_FOUND, STANDING_ORDER_NOT_FOUND;
 * VISIT_CLOSED for an override, which needs a plan that is still made
 */
export async function signItem(context: ActionContext, input: SignItemInput): Promise<SignedItem> {
  const { scope, actor, now } = context;
  requireRight(actor, 'signItem');
  const { visitId, shelfItemId } = input;
  return inTransaction(context, 'signItem', async (trx, log) => {
    const visit = await requireVisitToSign(trx, scope, visitId);
    const item = (await findCatalogEntry(trx, scope, 'shelf-item', shelfItemId))?.body;
    if (!item) throw new AppError('SHELF_ITEM_NOT_FOUND', 'There is no such item on the shelf.');
    const order = await findOrder(trx, context, visit, input);
    const today = input.today ?? visit.onDate;
    const covers = requireCovers(input, { onDate: visit.onDate, today, order });
    const authority = order ? { standingOrder: { name: order.name, date: order.date, by: order.signedBy } } : {};
    const override = requireOverride(context, item, input);
    if (override.override && visit.state !== 'open')
      throw new AppError('VISIT_CLOSED', 'This visit is closed: its plan is not made again. Sign against a rule at the next visit.');
    const course = (await listCoursesOfVisit(trx, scope, visitId)).find((other) => other.shelfItemId === shelfItemId);
    if (course?.signature) {
      if (await stands(trx, context, course.signature, { covers, visitId, today })) return course.signature;
      await requireAnew(trx, context, course.signature, { covers, visitId, isOnOrder: order !== undefined });
    }
    if (course && isTurnedDown(course.state)) throw new AppError('CONFLICT', 'This person has declined the item.');
    if (course?.refusal && authority.standingOrder)
      throw new AppError('NOT_ALLOWED', `${course.refusal.by} did not release this item: no standing order covers it.`);

    const signed: SignedItem = { shelfItemId, by: actor.name, at: now(), ...covers, ...authority, ...override };
    const signature = JSON.stringify(signed);
    const reason = override.override?.reason ?? null;
    if (course) {
      const row = await updateRow(trx, scope, 'course', course, {
        release: 'signed',
        signature,
        refusal: null,
        fromDate: course.fromDate ?? visit.onDate,
      });
      if (!row) throw new ConflictError('This item', signed, course);
      log.row('course', row, reason);
    } else {
      log.row(
        'course',
        await addCourse(trx, context, visit, { shelfItemId, release: 'signed', signature, fromDate: visit.onDate }),
        reason,
      );
    }
    return signed;
  });
}

/** The visit, open or closed. @throws AppError VISIT_NOT_FOUND */
export async function requireVisitToSign(trx: Db, scope: SiteScope, visitId: string): Promise<Visit> {
  const visit = await findVisitHeld(trx, scope, visitId);
  if (!visit || visit.state === 'void') throw new AppError('VISIT_NOT_FOUND', 'There is no such visit in this practice.');
  return visit;
}

/** An item on which nobody has said a word yet, with where its release stands. */
export async function addCourse(
  trx: Db,
  { scope, newId }: ActionContext,
  { id: visitId, patientId }: Visit,
  course: Pick<CourseTable, 'shelfItemId' | 'release'> & Partial<Pick<CourseTable, 'signature' | 'refusal' | 'fromDate'>>,
): Promise<CourseTable> {
  const unknown = { fromDate: null, toDate: null, reason: null, adherence: null, stopReason: null, signature: null, refusal: null };
  const [row] = await insertRows(trx, scope, 'course', [{ ...unknown, id: newId(), patientId, visitId, state: 'offered', ...course }]);
  if (!row) throw new AppError('INTERNAL', 'The item was written and could not be read.');
  return row;
}

/** Whatever waits for a signature takes the right of a dentist, also an ordinary item with a caution to check. */
const NEEDS_A_DENTIST = { release: 'dentist' } as const;

interface AnewPlace {
  readonly covers: Pick<SignedItem, 'packs' | 'until'>;
  readonly visitId: string;
}

/** Asked again for what is signed already: nothing is written, unless the signature has run out or the new one says something else. */
async function stands(
  trx: Db,
  { scope }: ActionContext,
  before: SignedItem,
  { covers, visitId, today }: AnewPlace & { readonly today: string },
): Promise<boolean> {
  const isSilent = covers.packs === undefined && covers.until === undefined;
  const saysTheSame = packsCovered(covers) === packsCovered(before) && covers.until === before.until;
  if (!isSilent && !saysTheSame) return false;
  return (await findCover(trx, scope, before, { visitId, today })).over === null;
}

/** @throws AppError NOT_ALLOWED on a standing order, INPUT_INVALID where the new signature would cover nothing more */
async function requireAnew(
  trx: Db,
  { scope }: ActionContext,
  { shelfItemId, by }: SignedItem,
  { covers, visitId, isOnOrder }: AnewPlace & { readonly isOnOrder: boolean },
): Promise<void> {
  if (isOnOrder)
    throw new AppError('NOT_ALLOWED', `${by} signed this item already: for more packs or another day a dentist signs in person.`);
  const given = await countGiven(trx, scope, visitId, shelfItemId);
  if (packsCovered(covers) <= given)
    throw new AppError('INPUT_INVALID', `packs: ${given} went already, so a new signature says more than ${given} in all.`);
}

/** The standing order that stands in for the dentist; undefined for the dentist's own right. */
async function findOrder(
  trx: Db,
  { scope, actor }: ActionContext,
  { onDate }: Visit,
  { shelfItemId, standingOrderId, asks = [], waits, today = onDate }: SignItemInput,
): Promise<StandingOrder | undefined> {
  if (standingOrderId === undefined) {
    if (mayRelease(actor.roles, NEEDS_A_DENTIST)) return undefined;
    throw new AppError('NOT_ALLOWED', 'This item waits for the signature of a dentist.');
  }
  const order = (await findCatalogEntry(trx, scope, 'standing-order', standingOrderId))?.body;
  const days = [onDate, today];
  const holds =
    order && order.withdrawn !== true && days.every((day) => order.date <= day && (order.until === undefined || day <= order.until));
  if (!holds) throw new AppError('STANDING_ORDER_NOT_FOUND', 'No standing order of this name holds on the day of the visit.');
  if (!order.shelfItemIds.includes(shelfItemId))
    throw new AppError('NOT_ALLOWED', `The standing order ${order.name} does not name this item.`);
  if (asks.length > 0 || waits !== true)
    throw new AppError('NOT_ALLOWED', 'A standing order covers only what stands in the plan and waits, with nothing left to ask.');
  if (!mayRelease(actor.roles, NEEDS_A_DENTIST, { ...order, signedOn: onDate }))
    throw new AppError('NOT_ALLOWED', `The standing order ${order.name} has no name or no date that holds.`);
  return order;
}

/** A rule that stops the item needs an override that names it; an override without such a rule is a mistake. */
function requireOverride({ actor }: ActionContext, item: ShelfItem, input: SignItemInput): Pick<SignedItem, 'override'> {
  const { stops, fixedStops = [], override, standingOrderId, waits = false } = input;
  if (!override) {
    if (stops.length > 0) throw new AppError('ITEM_STOPPED', `${item.name} is stopped by rule ${stops.join(', ')} for this person.`);
    if (item.release === 'anyone' && !waits) throw new AppError('INPUT_INVALID', `${item.name} needs no signature.`);
    return {};
  }
  const reason = requireReason(override.reason);
  if (!mayOverride(actor.roles, reason) || standingOrderId !== undefined)
    throw new AppError('NOT_ALLOWED', 'Only a dentist in person may override a rule.');
  const isTheOnlyStop = stops.length === 1 && stops[0] === override.ruleId;
  if (!isTheOnlyStop)
    throw new AppError(
      'ITEM_STOPPED',
      `Rule ${override.ruleId} is not the one rule that stops ${item.name}: ${stops.join(', ') || 'none does'}.`,
    );
  if (fixedStops.includes(override.ruleId))
    throw new AppError('ITEM_STOPPED', `Rule ${override.ruleId} stops ${item.name}, and no signature lifts it.`);
  return { override: { ruleId: override.ruleId, reason } };
}
