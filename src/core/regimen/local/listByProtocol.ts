import { findConflict } from '../candidates.ts';
import type { DraftView } from '../draftPlan.ts';
import { unliftedBars } from '../signatures.ts';
import type { Need, Plan } from '../types.ts';
import { type LocalProtocol, protocolNameOf } from './localProtocol.ts';

/**
 * Packs in stock that a dentist may choose for this person by the practice's own protocol. Nothing of it enters a plan without that
 * signature. The reading has no part in the list: a protocol for the antimicrobial need is listed whatever the reading said.
 */
export function listByProtocol(view: DraftView): NonNullable<Plan['byProtocol']> {
  const signed = view.candidates.filter((c) => c.state === 'signed');
  return view.candidates.flatMap((candidate) => {
    const { item, check, state } = candidate;
    const { localProtocol } = check;
    const isOpen =
      localProtocol !== undefined &&
      state !== 'signed' &&
      item.inStock &&
      !view.refused.some((r) => r.shelfItemId === item.id) &&
      view.needs.some((need) => isFor(localProtocol, need)) &&
      unliftedBars(check, view.signatures).length === 0 &&
      !findConflict(candidate, signed, view);
    return isOpen ? [{ shelfItemId: item.id, name: item.name, protocol: protocolNameOf(localProtocol) }] : [];
  });
}

const isFor = ({ needs }: LocalProtocol, { kind, state }: Need): boolean =>
  needs.includes(kind) && (kind === 'antimicrobial' || state === 'needed');
