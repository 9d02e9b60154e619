import { useQuery } from '@tanstack/react-query';
import type { ShelfTableView } from '../../api/shelfTable.ts';
import type { CorrectStockBody, GiveBody, GivenView, MoveView, ReceiveBody, RefillBody, RefillView, StockView } from '../../api/stock.ts';
import { callApi } from './api.ts';

export function useStock() {
  return useQuery({ queryKey: ['stock'], queryFn: () => callApi<StockView>('GET', '/api/stock') });
}

export function useMoves(itemId: string) {
  return useQuery({
    queryKey: ['stock', 'moves', itemId],
    queryFn: async () => (await callApi<{ moves: readonly MoveView[] }>('GET', `/api/shelf/${encodeURIComponent(itemId)}/moves`)).moves,
  });
}

/** What was given at a visit. Beside `['stock']`, so that a change of the book reads it again. */
export function useGiven(visitId: string) {
  return useQuery({ queryKey: ['stock', 'given', visitId], queryFn: () => callApi<GivenView>('GET', `/api/visits/${visitId}/given`) });
}

export const receiveStock = (itemId: string, body: ReceiveBody) =>
  callApi<{ id: string }>('POST', `/api/shelf/${encodeURIComponent(itemId)}/receipts`, body);

export const correctStock = (itemId: string, body: CorrectStockBody) =>
  callApi('POST', `/api/shelf/${encodeURIComponent(itemId)}/corrections`, body);

export const takeBackMove = (moveId: string, reason?: string) =>
  callApi('POST', `/api/stock-moves/${moveId}/taken-back`, reason === undefined ? {} : { reason });

export const giveItem = (visitId: string, body: GiveBody) => callApi('POST', `/api/visits/${visitId}/given`, body);

/** What of a closed visit may be given again today. */
export function useRefills(visitId: string) {
  return useQuery({ queryKey: ['stock', 'refills', visitId], queryFn: () => callApi<RefillView>('GET', `/api/visits/${visitId}/refills`) });
}

export const refillItem = (visitId: string, body: RefillBody) => callApi('POST', `/api/visits/${visitId}/refills`, body);

export const stopRefill = (visitId: string) => callApi('POST', `/api/visits/${visitId}/refill-stops`, {});

/** What a table of the shelf would do; nothing is written. */
export const lookAtShelfTable = (text: string) => callApi<ShelfTableView>('POST', '/api/shelf/table/look', { text });

export const writeShelfTable = (text: string, seen: string) => callApi<ShelfTableView>('POST', '/api/shelf/table', { text, seen });
