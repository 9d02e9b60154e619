import type { ShelfItem, SignedItem } from './types.ts';

/**
 * Whether a member may release an item: anyone for ordinary items, only a dentist, or a standing order with a name and a date not after
 * the signature, for the rest. No other role releases anything by itself.
 * @param roles          roles of the signing member
 * @param item           its release; the stricter of shelf item and agent is the caller's to pass
 * @param standingOrder  the order that the member signs under, and the local date of the signature, ISO
 */
export function mayRelease(
  roles: readonly string[],
  item: Pick<ShelfItem, 'release'>,
  standingOrder?: { readonly name: string; readonly date: string; readonly signedOn: string } | undefined,
): boolean {
  if (item.release === 'anyone' || roles.includes('dentist')) return true;
  if (!standingOrder || roles.length === 0) return false;
  return isNamedAndDated(standingOrder) && standingOrder.date <= standingOrder.signedOn;
}

/** Whether a member may lift a stop with a reason: a dentist, in person. */
export function mayOverride(roles: readonly string[], reason: string): boolean {
  return roles.includes('dentist') && reason.trim() !== '';
}

/** A signature that a plan may rely on: it names who and when, and its standing order, if it has one, is named and dated. */
export function isSignature({ by, at, standingOrder }: SignedItem): boolean {
  return by.trim() !== '' && at.trim() !== '' && (standingOrder === undefined || isNamedAndDated(standingOrder));
}

const isNamedAndDated = ({ name, date }: { readonly name: string; readonly date: string }): boolean =>
  name.trim() !== '' && /^\d{4}-\d{2}-\d{2}$/.test(date);
