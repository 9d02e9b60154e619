import { useQuery } from '@tanstack/react-query';
import type { NewStandingOrder, PrescriptionsView, Releases, SigningView, StandingOrderView } from '../../api/signing.ts';
import { callApi } from './api.ts';

/** Everything in the practice that waits for a signature, as this member may see it. */
export function useSigning(memberId: string) {
  return useQuery({ queryKey: ['signing', memberId], queryFn: () => callApi<SigningView>('GET', '/api/signing') });
}

export function useStandingOrders() {
  return useQuery({
    queryKey: ['standing-orders'],
    queryFn: async () => (await callApi<{ orders: readonly StandingOrderView[] }>('GET', '/api/standing-orders')).orders,
  });
}

export const writeStandingOrder = (order: NewStandingOrder) => callApi<{ id: string }>('POST', '/api/standing-orders', order);

export const withdrawStandingOrder = ({ id, version }: Pick<StandingOrderView, 'id' | 'version'>) =>
  callApi<{ version: number }>('POST', `/api/standing-orders/${encodeURIComponent(id)}/withdrawal`, { version });

/** On what, besides the own right: a standing order, or a reason that lifts a rule; for how many packs, and to which day. */
export interface SignedOn {
  readonly standingOrderId?: string | undefined;
  readonly override?: { readonly ruleId: string; readonly reason: string } | undefined;
  readonly packs?: number | undefined;
  readonly until?: string | undefined;
}

export const signItem = (visitId: string, shelfItemId: string, on: SignedOn = {}) =>
  callApi<Releases>('POST', `/api/visits/${visitId}/signatures`, { shelfItemId, ...on });

export const refuseItem = (visitId: string, shelfItemId: string, reason: string) =>
  callApi<Releases>('POST', `/api/visits/${visitId}/refusals`, { shelfItemId, reason });

export const withdrawRelease = (visitId: string, shelfItemId: string, reason?: string) =>
  callApi<Releases>('POST', `/api/visits/${visitId}/withdrawals`, reason === undefined ? { shelfItemId } : { shelfItemId, reason });

export function usePrescriptions(visitId: string) {
  return useQuery({
    queryKey: ['prescriptions', visitId],
    queryFn: () => callApi<PrescriptionsView>('GET', `/api/visits/${visitId}/prescriptions`),
    gcTime: 0,
  });
}
